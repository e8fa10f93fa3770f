package scenarios_test

import (
	"bytes"
	"errors"
	"io"
	"testing"

	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/scene"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

const (
	momentsEvery = 17 * world.TicksPerSecond // between two snapshots
	runsFor      = 30 * world.TicksPerSecond
)

// worked is a drill with what the clean operator did in it, by tick.
type worked struct {
	t     *testing.T
	d     *drill.Drill
	did   map[world.Tick][]world.Action
	ends  world.Tick
	final uint64
}

func workClean(t *testing.T, name string) *worked {
	t.Helper()
	s := scenarios.Open(nil)
	d, err := s.Drill(name, scenarios.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	script, err := s.Script(d, "clean")
	if err != nil {
		t.Fatal(err)
	}
	var text bytes.Buffer
	a, err := attempt.New(d, attempt.Options{Record: &text})
	if err != nil {
		t.Fatal(err)
	}
	o, err := a.Operator(script, operator.Hands{Speed: 1, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	if err := a.Run("clean", o); err != nil {
		t.Fatal(err)
	}
	w := &worked{t: t, d: d, did: map[world.Tick][]world.Action{}, ends: a.Now(), final: a.Hash()}
	names := map[string]world.ControlID{}
	for i, c := range a.Scene.World.Controls() {
		names[c.Name] = world.ControlID(i)
	}
	r, err := tape.NewReader(&text)
	if err != nil {
		t.Fatal(err)
	}
	for {
		l, err := r.Next()
		if errors.Is(err, io.EOF) {
			return w
		}
		if err != nil {
			t.Fatal(err)
		}
		if l.Kind == tape.Action {
			w.did[l.At] = append(w.did[l.At], world.Action{At: l.At, By: l.By, From: l.From, Control: names[l.Control], Value: l.Value})
		}
	}
}

func (w *worked) scene() *scene.Scene {
	w.t.Helper()
	s, err := scene.New(w.d.Setup, w.d.Values, w.d.Cues)
	if err != nil {
		w.t.Fatal(err)
	}
	return s
}

func (w *worked) hash(s *scene.Scene) uint64 {
	w.t.Helper()
	h, ok := s.Hash()
	if !ok {
		w.t.Fatalf("at %.1f s a number is not one", s.World.Now().Seconds())
	}
	return h
}

// run works on for half a minute and gives every second's hash.
func (w *worked) run(s *scene.Scene) []uint64 {
	var hashes []uint64
	for until := min(s.World.Now()+runsFor, w.ends); s.World.Now() < until; {
		s.Step(w.did[s.World.Now()])
		if s.World.Now()%world.TicksPerSecond == 0 {
			hashes = append(hashes, w.hash(s))
		}
	}
	return hashes
}

func (w *worked) same(what string, at world.Tick, want, got []uint64) {
	w.t.Helper()
	for i := range want {
		if i >= len(got) || want[i] != got[i] {
			w.t.Fatalf("%s at %.0f s: another state after second %d", what, at.Seconds(), i+1)
		}
	}
}

// TestSnapshotsOfEveryDrill: from many moments of every shipped drill, half a minute is worked, the moment
// is restored, and the same half minute is worked again, in the same scene and in another one. Whatever
// becomes of copies in between changes nothing.
func TestSnapshotsOfEveryDrill(t *testing.T) {
	list, err := scenarios.Open(nil).List()
	if err != nil {
		t.Fatal(err)
	}
	for _, item := range list.Drills {
		t.Run(item.Name, func(t *testing.T) {
			w := workClean(t, item.Name)
			s, other, astray := w.scene(), w.scene(), w.scene()
			moments := 0
			for s.World.Now() < w.ends {
				at := s.World.Now()
				if at%momentsEvery == 0 {
					saved := s.Save(nil)
					first := w.run(s)
					w.fork(s, astray)
					if !s.Load(saved) || !other.Load(saved) {
						t.Fatalf("the state of %.0f s does not fit", at.Seconds())
					}
					w.same("in the same scene", at, first, w.run(s))
					w.same("in another scene", at, first, w.run(other))
					s.Load(saved)
					moments++
				}
				s.Step(w.did[at])
			}
			if got := w.hash(s); got != w.final || moments < 5 {
				t.Errorf("%d moments later the final state is %016x, recorded %016x", moments, got, w.final)
			}
		})
	}
}

// fork lets copies of a scene go their own ways; the scene must not notice.
func (w *worked) fork(s, astray *scene.Scene) {
	w.t.Helper()
	was := w.hash(s)
	if !s.Fork(astray) {
		w.t.Fatal("the copy does not fit")
	}
	bench, err := s.Bench()
	if err != nil {
		w.t.Fatal(err)
	}
	for range 2 * world.TicksPerSecond {
		astray.Step(nil)
		bench.Step(nil)
	}
	if w.hash(s) != was {
		w.t.Fatal("what became of a copy shows in the scene")
	}
}
