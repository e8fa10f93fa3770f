package world

import (
	"errors"
	"math"
	"testing"

	"steadyneedle/sim/state"
)

// Whoever does whatever, where and when they like: what can't be is refused with its reason and changes
// nothing, what can be leaves the world sound.
func TestRandomActions(t *testing.T) {
	for seed := range uint64(10) {
		var d state.Dice
		d.Seed(seed, "random actions")
		s := ferryStreet()
		s.Seed = seed
		w, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		taken := 0
		for range 60 * 60 {
			var due []Action
			if d.Pick(3) == 0 {
				a := anyAction(&d, w)
				was := w.Hash()
				err := w.Check(a)
				if w.Hash() != was {
					t.Fatalf("seed %d: checking %+v changed the world", seed, a)
				}
				if err == nil {
					due = append(due, a)
					taken++
				} else if !typed(err) {
					t.Fatalf("seed %d: %+v is refused by %v, which is of no kind", seed, a, err)
				}
			}
			w.Step(due)
			for i, v := range w.Truth().V {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("seed %d, tick %d: signal %s is %v", seed, w.Now(), w.Signals()[i].Name, v)
				}
			}
		}
		if taken < 200 {
			t.Errorf("seed %d: only %d actions were possible", seed, taken)
		}
	}
}

// What follows from hands alone is worked out only when one has moved. A twin that works it out anew every
// tick is the same to the bit, in all that can be known, whatever is done.
func TestOnlyWhatMovedIsWorkedOut(t *testing.T) {
	for seed := range uint64(6) {
		var d state.Dice
		d.Seed(seed, "twins")
		s := ferryStreet()
		s.Seed, s.Ground.Arrived = seed, seed%2 == 1
		lazy, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		eager, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		rare := 1 + d.Pick(60)
		for tick := range 40 * 60 {
			var due []Action
			if d.Pick(rare) == 0 {
				if a := anyAction(&d, lazy); lazy.Check(a) == nil {
					due = append(due, a)
				}
			}
			if tick%601 == 600 { // and across a state that was saved and loaded
				k := state.Saver(nil)
				lazy.Walk(&k)
				l := state.Loader(k.Saved())
				if lazy.Walk(&l); !l.OK() {
					t.Fatal("the snapshot doesn't fit")
				}
			}
			lazy.Step(due)
			eager.moving, eager.unsaid, eager.stale = true, true, true
			eager.Step(due)
			for i, v := range lazy.Truth().V {
				if math.Float64bits(v) != math.Float64bits(eager.Truth().V[i]) {
					t.Fatalf("seed %d, tick %d: signal %s is %v, and %v when worked out anew", seed, tick, lazy.Signals()[i].Name, v, eager.Truth().V[i])
				}
			}
			if lazy.Hash() != eager.Hash() {
				t.Fatalf("seed %d, tick %d: the states differ", seed, tick)
			}
		}
	}
}

// anyAction is mostly one that can be: by a candidate where they stand, or by somebody else.
func anyAction(d *state.Dice, w *World) Action {
	id := ControlID(d.Pick(len(w.controls)))
	c := &w.controls[id]
	a := Action{At: w.Now(), By: Source(d.Pick(int(sourceCount))), From: w.Place(), Control: id, Value: d.Between(c.Min, c.Max)}
	if d.Pick(3) > 0 {
		a.Value = math.Round(a.Value)
	}
	switch d.Pick(40) {
	case 0:
		a.At -= Tick(d.Pick(100))
	case 1:
		a.Control = ControlID(d.Pick(1 << 16))
	case 2:
		a.Value = [...]float64{math.NaN(), math.Inf(1), math.Inf(-1), -1e300, math.SmallestNonzeroFloat64}[d.Pick(5)]
	case 3:
		a.From = Place(d.Pick(int(Round) + 3))
	case 4:
		a.By = Source(d.Pick(256))
	}
	return a
}

func typed(err error) bool {
	for _, kind := range []error{ErrUnknown, ErrValue, ErrPast, ErrReach, ErrCannot, ErrNotTheir} {
		if errors.Is(err, kind) {
			return true
		}
	}
	return false
}
