package attempt

import (
	"fmt"

	"steadyneedle/sim/world"
)

// Strand is what happened after a moment that the attempt went back to. It is kept, to be laid over
// what comes instead, and can be returned to.
type Strand struct {
	From, To world.Tick
	Series   Series // samples after From
	log      []entry
}

// Leave goes back to tick at like Rewind, and gives what came after it.
func (a *Attempt) Leave(at world.Tick) (Strand, error) {
	at = max(0, min(at, a.Now()))
	s := Strand{From: at, To: a.Now(), Series: a.Series.after(at)}
	for i := range a.log {
		if a.log[i].action.At >= at {
			s.log = append(s.log, a.log[i])
		}
	}
	return s, a.Rewind(at)
}

// Return leaves the present for a strand that was left before: the attempt stands at that strand's end.
// What it leaves is given, to be kept in its place. A strand holds only in the attempt it was left in,
// while the time before it is still the same.
func (a *Attempt) Return(s *Strand) (Strand, error) {
	if s.From > a.Now() {
		return Strand{}, fmt.Errorf("the strand begins at %.1f s, and the attempt stands at %.1f s", s.From.Seconds(), a.Now().Seconds())
	}
	left, err := a.Leave(s.From)
	if err != nil {
		return Strand{}, err
	}
	a.follow(s.log, s.To)
	return left, nil
}
