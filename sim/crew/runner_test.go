package crew

import (
	"math"
	"slices"
	"testing"

	"steadyneedle/sim/board"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

// cell is a program that reads one cell of the board.
func cell(i int) *cond.Program {
	return &cond.Program{Result: func(s, _ []float64) float64 { return s[i] }}
}

// play runs the runner for n ticks; set fills the two signals of each tick.
func play(t *testing.T, cues []Cue, seed uint64, n int, set func(tick int, v []float64)) []world.Action {
	t.Helper()
	r, err := NewRunner(cues, seed)
	if err != nil {
		t.Fatal(err)
	}
	b := board.New([]world.Signal{{Name: "a"}, {Name: "b"}}, nil)
	var all []world.Action
	v := make([]float64, 2)
	for i := range n {
		set(i, v)
		b.See(world.Tick(i), v)
		all = r.Step(world.Tick(i), b, all)
	}
	return all
}

func TestCueActsOnceOnARisingEdgeAfterItsTime(t *testing.T) {
	cues := []Cue{{ID: "open", By: world.Crew, When: cell(0), Extra: 120, Do: []Deed{{Control: 3}, {Control: 4, Value: cell(1)}}}}
	got := play(t, cues, 1, 1000, func(i int, v []float64) {
		v[0], v[1] = 0, 42
		if i >= 100 {
			v[0] = 1
		}
	})
	if len(got) != 2 {
		t.Fatalf("%d actions, want the two deeds once: %v", len(got), got)
	}
	if got[0].Control != 3 || got[0].Value != 1 || got[1].Value != 42 || got[0].By != world.Crew {
		t.Errorf("wrong deeds: %v", got)
	}
	if at := got[0].At; at < 220 || at > 226 { // seen within a beat of tick 100, then 120 ticks
		t.Errorf("done at %d, want 220 to 226", at)
	}
}

func TestCueRepeatsUntil(t *testing.T) {
	cues := []Cue{{ID: "ask", When: cell(0), Until: cell(1), Again: 100, Do: []Deed{{Control: 1}}}}
	got := play(t, cues, 1, 1000, func(i int, v []float64) {
		v[0] = 1
		if i >= 350 {
			v[1] = 1
		}
	})
	if len(got) != 4 { // at 0, 100, 200, 300
		t.Errorf("asked %d times, want 4: %v", len(got), got)
	}
}

func TestCueWithoutUntilRepeatsWhileItsReasonLasts(t *testing.T) {
	cues := []Cue{{ID: "low", When: cell(0), Again: 100, Do: []Deed{{Control: 1}}}}
	got := play(t, cues, 1, 1000, func(i int, v []float64) {
		v[0] = 0
		if i < 250 {
			v[0] = 1
		}
	})
	if len(got) != 3 {
		t.Errorf("said %d times, want 3: %v", len(got), got)
	}
}

func TestCueOnceAndAgainAtEveryEdge(t *testing.T) {
	flicker := func(i int, v []float64) { v[0] = float64(i / 60 % 2) }
	every := []Cue{{ID: "x", When: cell(0), Do: []Deed{{Control: 1}}}}
	once := []Cue{{ID: "x", When: cell(0), Once: true, Do: []Deed{{Control: 1}}}}
	if n := len(play(t, every, 1, 600, flicker)); n != 5 {
		t.Errorf("acted %d times on 5 edges", n)
	}
	if n := len(play(t, once, 1, 600, flicker)); n != 1 {
		t.Errorf("acted %d times, want once", n)
	}
}

// The law that the table stands for: log-normal, median 3 s, σ 0.35 (assumption).
func TestDelaysAreLogNormal(t *testing.T) {
	var dice state.Dice
	dice.Seed(7, "test")
	const n = 20000
	list := make([]float64, n)
	for i := range list {
		list[i] = Radio.draw(&dice)
	}
	slices.Sort(list)
	for _, p := range []struct{ share, z float64 }{{0.05, -1.6449}, {0.25, -0.6745}, {0.5, 0}, {0.75, 0.6745}, {0.95, 1.6449}} {
		want := 3 * math.Exp(0.35*p.z)
		if got := list[int(p.share*n)]; math.Abs(got-want) > 0.04*want {
			t.Errorf("quantile %.2f: %.2f s, want %.2f", p.share, got, want)
		}
	}
}

func TestEachCueHasItsOwnDice(t *testing.T) {
	a := Cue{ID: "a", When: cell(0), Delay: Task, Do: []Deed{{Control: 1}}}
	b := Cue{ID: "b", When: cell(1), Delay: Task, Do: []Deed{{Control: 2}}}
	both := func(_ int, v []float64) { v[0], v[1] = 1, 1 }
	moment := func(list []world.Action, id world.ControlID) world.Tick {
		for _, x := range list {
			if x.Control == id {
				return x.At
			}
		}
		return -1
	}
	alone := play(t, []Cue{a}, 5, 2000, both)
	together := play(t, []Cue{a, b}, 5, 2000, both)
	if moment(alone, 1) != moment(together, 1) {
		t.Error("a second cue changed the first one's delay")
	}
	if moment(together, 1) == moment(play(t, []Cue{a}, 6, 2000, both), 1) {
		t.Error("another seed gave the same delay")
	}
}

func TestRunnerResumesWhereItWasSaved(t *testing.T) {
	cues := []Cue{{ID: "ask", When: cell(0), Delay: Radio, Again: 50, Do: []Deed{{Control: 1}}}}
	run := func(r *Runner, from, to int) (out []world.Action) {
		b := board.New([]world.Signal{{Name: "a"}}, nil)
		for i := from; i < to; i++ {
			b.See(world.Tick(i), []float64{1})
			out = r.Step(world.Tick(i), b, out)
		}
		return out
	}
	a, _ := NewRunner(cues, 1)
	run(a, 0, 300)
	w := state.Saver(nil)
	a.Walk(&w)
	want := run(a, 300, 900)
	b, _ := NewRunner(cues, 99)
	l := state.Loader(w.Saved())
	b.Walk(&l)
	if !l.OK() {
		t.Fatal("the load does not fit")
	}
	if got := run(b, 300, 900); !slices.Equal(got, want) || len(want) == 0 {
		t.Errorf("resumed run differs: %v, want %v", got, want)
	}
}
