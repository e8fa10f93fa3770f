package attempt

import (
	"fmt"

	"steadyneedle/sim/scene"
	"steadyneedle/sim/state"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// keyEvery is the number of ticks between two key frames: 10 s.
const keyEvery = 10 * world.TicksPerSecond

// key is the whole attempt at one moment.
type key struct {
	at    world.Tick
	scene []uint64
	rest  []uint64 // judge, steps, end
	log   int      // lines written before it
}

// keep takes a key frame. Its tick's hash line has just been written and belongs to it.
func (a *Attempt) keep(now world.Tick) {
	a.keys = append(a.keys, key{at: now, scene: a.Scene.Save(nil), rest: a.saveRest(), log: len(a.log)})
}

func (a *Attempt) saveRest() []uint64 {
	w := state.Saver(nil)
	a.walkRest(&w)
	return w.Saved()
}

func (a *Attempt) walkRest(w *state.Walker) {
	a.Judge.Walk(w)
	a.steps.walk(w)
	w.Floats(a.ends)
	w.Bool(&a.reached)
}

// before finds the last key frame not after a tick.
func (a *Attempt) before(at world.Tick) (key, error) {
	for i := len(a.keys) - 1; i >= 0; i-- {
		if a.keys[i].at <= at {
			return a.keys[i], nil
		}
	}
	return key{}, fmt.Errorf("no key frame at or before %.1f s", at.Seconds())
}

// NewView builds a scene for Look.
func (a *Attempt) NewView() (*scene.Scene, error) {
	return scene.New(a.Drill.Setup, a.Drill.Values, a.Drill.Cues)
}

// Look brings a scene made by NewView to how things stood before tick at. The attempt goes on as it is.
func (a *Attempt) Look(at world.Tick, into *scene.Scene) error {
	k, err := a.before(at)
	if err != nil {
		return err
	}
	if !into.Load(k.scene) {
		return fmt.Errorf("the view was made for another drill")
	}
	at = min(at, a.Now())
	due := make([]world.Action, 0, 16)
	for n := k.log; into.World.Now() < at; {
		due = due[:0]
		for ; n < len(a.log) && a.log[n].action.At <= into.World.Now(); n++ {
			if a.log[n].kind == tape.Action {
				due = append(due, a.log[n].action)
			}
		}
		into.Step(due)
	}
	return nil
}

// Rewind goes back to tick at and forgets what came after; the attempt goes on from there. An attempt
// that is being recorded elsewhere cannot be rewound: see Branch.
func (a *Attempt) Rewind(at world.Tick) error {
	if a.tape != nil {
		return fmt.Errorf("an attempt that is being recorded cannot be rewound")
	}
	at = max(0, min(at, a.Now()))
	k, err := a.before(at)
	if err != nil {
		return err
	}
	log := a.log
	a.log = append(make([]entry, 0, len(log)), log[:k.log]...)
	a.told = a.told[:0]
	for i := range a.log {
		a.hear(&a.log[i])
	}
	for len(a.keys) > 0 && a.keys[len(a.keys)-1].at > k.at {
		a.keys = a.keys[:len(a.keys)-1]
	}
	a.Series.cut(k.at)
	return a.resume(k, log, at)
}

// Branch makes a new attempt that is as this one was before tick at, and goes on from there; this one
// stays. What came before is written to the new one's recording first.
func (a *Attempt) Branch(at world.Tick, o Options) (*Attempt, error) {
	at = max(0, min(at, a.Now()))
	k, err := a.before(at)
	if err != nil {
		return nil, err
	}
	b, err := New(a.Drill, o)
	if err != nil {
		return nil, err
	}
	for i := range k.log {
		b.write(a.log[i])
	}
	for i := range a.keys {
		if o.Keys && a.keys[i].at <= k.at {
			b.keys = append(b.keys, a.keys[i])
		}
	}
	b.Series.copy(&a.Series)
	b.Series.cut(k.at)
	if err := b.resume(k, a.log, at); err != nil {
		return b, err
	}
	if b.UnsafeTerms() != o.OnUnsafe {
		b.OnUnsafe(o.OnUnsafe)
	}
	return b, nil
}

// resume goes to key frame k, whose log this attempt has, and works on by another log up to a tick.
func (a *Attempt) resume(k key, log []entry, at world.Tick) error {
	if err := a.load(k); err != nil {
		return err
	}
	coach := a.coach
	a.coach = nil // what was told then is in the log
	a.over, a.closed, a.queue, a.noted = false, false, a.queue[:0], k.at
	a.rulings = nil // they were on another end
	a.acts.forget()
	a.follow(log[k.log:], at)
	if a.coach = coach; coach != nil {
		coach.Resume(a.Now(), a.told)
	}
	return nil
}

// follow goes on to tick until as a record of the time from now says. Nobody is asked about an unsafe act
// on the way: that was done then.
func (a *Attempt) follow(log []entry, until world.Tick) {
	a.following = true
	a.heedUnsafe()
	defer func() { a.following = false }()
	for n := 0; a.Now() < until && !a.over; {
		for ; n < len(log) && log[n].action.At <= a.Now(); n++ {
			switch log[n].kind {
			case tape.Action:
				a.queue = append(a.queue, log[n].action)
			case tape.Mark, tape.Note:
				a.write(log[n])
			}
		}
		a.Tick()
	}
}

// load brings scene, judge and steps to a key frame.
func (a *Attempt) load(k key) error {
	if !a.Scene.Load(k.scene) {
		return fmt.Errorf("the key frame does not fit")
	}
	w := state.Loader(k.rest)
	a.walkRest(&w)
	if !w.OK() {
		return fmt.Errorf("the key frame does not fit")
	}
	return nil
}
