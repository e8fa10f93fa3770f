package demo

import (
	"fmt"

	"steadyneedle/sim/attempt"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

// key is where the script stood at a whole second. The world's own key frames are the attempt's.
type key struct {
	at    world.Tick
	step  int
	words []uint64
}

// keep takes a key at every whole second.
func (p *Player) keep() {
	now := p.Attempt.Now()
	if now%world.TicksPerSecond != 0 || len(p.keys) > 0 && p.keys[len(p.keys)-1].at >= now || p.step < 0 {
		return
	}
	if p.claims.v == nil {
		return // before the first look there is nothing to go back to
	}
	w := state.Saver(nil)
	p.walk(&w)
	p.keys = append(p.keys, key{now, p.step, w.Saved()})
}

func (p *Player) walk(w *state.Walker) {
	phase, before := int(p.phase), int(p.before)
	w.Int(&phase)
	w.Int(&before)
	p.phase, p.before = Phase(phase), Phase(before)
	w.Int64((*int64)(&p.began))
	w.Bool(&p.touched)
	p.claims.walk(w)
	p.hand.Walk(w)
}

// Strand is what was left by going back in time, with where the script stood in it.
type Strand struct {
	attempt.Strand
	keys  []key
	end   key
	armed []armed // as it stood when the strand was left
	err   error
}

// Earliest is the first moment that can be gone back to.
func (p *Player) Earliest() world.Tick {
	if len(p.keys) == 0 {
		return p.Attempt.Now()
	}
	return p.keys[0].at
}

// Rewind goes back to the whole second at or before a tick, script and all, and gives what it leaves.
func (p *Player) Rewind(at world.Tick) (Strand, error) {
	n := len(p.keys)
	for n > 0 && p.keys[n-1].at > at {
		n--
	}
	if n == 0 {
		return Strand{}, fmt.Errorf("%.1f s is before the demonstration begins", at.Seconds())
	}
	b := Strand{keys: append([]key(nil), p.keys[n:]...), end: p.here(), armed: append([]armed(nil), p.armed...), err: p.err}
	k := p.keys[n-1]
	left, err := p.Attempt.Leave(k.at)
	if err != nil {
		return Strand{}, err
	}
	b.Strand = left
	p.keys = p.keys[:n]
	p.rearm()
	return b, p.stand(k)
}

// Return goes to the end of a strand that was left before, and gives what it leaves for it.
func (p *Player) Return(b *Strand) (Strand, error) {
	left := Strand{end: p.here(), armed: append([]armed(nil), p.armed...), err: p.err}
	n := len(p.keys)
	for n > 0 && p.keys[n-1].at > b.From {
		n--
	}
	left.keys = append([]key(nil), p.keys[n:]...)
	was, err := p.Attempt.Return(&b.Strand)
	if err != nil {
		return Strand{}, err
	}
	left.Strand = was
	p.keys = append(p.keys[:n], b.keys...)
	err = p.stand(b.end)
	p.err, p.armed = b.err, append([]armed(nil), b.armed...)
	return left, err
}

func (p *Player) here() key {
	w := state.Saver(nil)
	p.walk(&w)
	return key{p.Attempt.Now(), p.step, w.Saved()}
}

// stand brings the script to where a key has it.
func (p *Player) stand(k key) error {
	p.step, p.err = k.step, nil
	if err := p.take(&p.Demonstration.Steps[k.step].Moves); err != nil {
		return err
	}
	w := state.Loader(k.words)
	p.walk(&w)
	if !w.OK() {
		return fmt.Errorf("demonstration %s: the key frame does not fit", p.Demonstration.Drill.Name)
	}
	return nil
}
