package attempt

import (
	"fmt"

	"steadyneedle/sim/world"
)

// Branch is what happened after a moment that the attempt went back to. It is kept, to be laid over
// what comes instead, and can be returned to.
type Branch struct {
	From, To world.Tick
	Series   Series // samples after From
	log      []entry
}

// Leave goes back to tick at like Rewind, and gives what came after it.
func (a *Attempt) Leave(at world.Tick) (Branch, error) {
	at = max(0, min(at, a.Now()))
	b := Branch{From: at, To: a.Now(), Series: a.Series.after(at)}
	for i := range a.log {
		if a.log[i].action.At >= at {
			b.log = append(b.log, a.log[i])
		}
	}
	return b, a.Rewind(at)
}

// Return leaves the present for a branch that was left before: the attempt stands at that branch's end.
// What it leaves is given, to be kept in its place. A branch holds only in the attempt it was left in,
// while the time before it is still the same.
func (a *Attempt) Return(b *Branch) (Branch, error) {
	if b.From > a.Now() {
		return Branch{}, fmt.Errorf("the branch begins at %.1f s, and the attempt stands at %.1f s", b.From.Seconds(), a.Now().Seconds())
	}
	left, err := a.Leave(b.From)
	if err != nil {
		return Branch{}, err
	}
	a.follow(b.log, b.To)
	return left, nil
}
