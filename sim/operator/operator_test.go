package operator

import (
	"math"
	"strings"
	"testing"

	"steadyneedle/sim/cond"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

// The bench of these tests: a walk, a throttle, a switch, a phrase, and one needle that answers the
// throttle by a law of the test's choosing, with the lag of a gauge.
const (
	ctlWalk = iota
	ctlThrottle
	ctlSwitch
	ctlSay
)

const (
	sigPlace = iota
	sigNeedle
	sigThrottle
	sigSwitch
	sigHeard
)

func known(division float64) Known {
	return Known{
		Controls: []world.Control{
			{Name: "walk", Kind: world.Walk, Max: 7},
			{Name: "throttle", Kind: world.Knob, Max: 1, TravelS: 2.5},
			{Name: "switch", Kind: world.Switch, Max: 1},
			{Name: "say_set", Kind: world.Speech, Max: 400, Unit: "psi"},
		},
		Signals:   []world.Signal{{Name: "place"}, {Name: "needle", Unit: "psi"}, {Name: "throttle"}, {Name: "switch"}, {Name: "heard"}},
		Divisions: map[string]float64{"needle": division},
	}
}

type bench struct {
	t        *testing.T
	o        *Operator
	law      func(throttle float64) float64
	now      world.Tick
	hand     float64
	at       float64
	psi      float64 // behind the needle
	speed    float64 // of the needle
	needle   float64
	toggle   float64
	place    world.Place
	arrive   world.Tick
	goal     world.Place
	heard    bool
	actions  []world.Action
	reading  world.Reading
	disturb  func(now world.Tick) float64
	watching func()
}

func newBench(t *testing.T, h Hands, law func(float64) float64, moves ...Move) *bench {
	t.Helper()
	return withScript(t, h, law, &Script{Name: "test", Steps: []Step{{ID: "one", Moves: moves}}})
}

func withScript(t *testing.T, h Hands, law func(float64) float64, s *Script) *bench {
	t.Helper()
	o, err := New(s, h, known(5))
	if err != nil {
		t.Fatal(err)
	}
	b := &bench{t: t, o: o, law: law, place: world.Panel}
	b.psi = law(0)
	b.needle = b.psi
	return b
}

// run lets the operator work for at most so many seconds.
func (b *bench) run(seconds float64) {
	for end := b.now + world.TicksIn(seconds); b.now < end && !b.o.Done(); {
		place := float64(b.place)
		b.reading = world.Reading{At: b.now, Place: b.place, V: []float64{place, b.needle, b.at, b.toggle, flag(b.heard)}}
		if b.place != world.Panel {
			b.reading.V[sigNeedle], b.reading.V[sigThrottle] = math.NaN(), math.NaN()
		}
		n := len(b.actions)
		b.actions = b.o.Step(b.now, &b.reading, b.actions)
		for _, a := range b.actions[n:] {
			b.act(a)
		}
		b.step()
		if b.watching != nil {
			b.watching()
		}
	}
}

func flag(x bool) float64 {
	if x {
		return 1
	}
	return 0
}

func (b *bench) act(a world.Action) {
	switch a.Control {
	case ctlWalk:
		b.goal, b.arrive, b.place = world.Place(a.Value), b.now+240, world.Walking
	case ctlThrottle:
		b.hand = a.Value
	case ctlSwitch:
		b.toggle = a.Value
	}
}

func (b *bench) step() {
	b.now++
	if b.place == world.Walking && b.now >= b.arrive {
		b.place = b.goal
	}
	most := 1 / (2.5 * 60)
	b.at += max(-most, min(most, b.hand-b.at))
	want := b.law(b.at)
	if b.disturb != nil {
		want += b.disturb(b.now)
	}
	b.psi += (want - b.psi) * 0.03 // half a second: engine and water
	// the needle: second order, 4 rad/s, damping 0.7 (the design's instruments)
	b.speed += (16*(b.psi-b.needle) - 5.6*b.speed) / 60
	b.needle += b.speed / 60
}

func num(f func(v []float64) float64) *cond.Program {
	return &cond.Program{Text: "test", Result: func(s, _ []float64) float64 { return f(s) }}
}
func fixed(x float64) *cond.Program { return num(func([]float64) float64 { return x }) }
func cell(i int) *cond.Program      { return num(func(v []float64) float64 { return v[i] }) }
func when(f func(v []float64) bool) *cond.Program {
	return num(func(v []float64) float64 { return flag(f(v)) })
}

// pump is the design's pump at idle 700 to 2150 rpm on a 65 psi hydrant.
func pump(throttle float64) float64 {
	w := (700 + 1450*throttle) / 1520
	return 195*w*w + 62
}

func TestBringSettlesOnMonotonePlants(t *testing.T) {
	plants := []struct {
		name string
		law  func(float64) float64
		to   float64
	}{
		{"pump, near idle", pump, 134.8},
		{"pump, far up", pump, 220},
		{"linear", func(x float64) float64 { return 300 * x }, 150},
		{"dead for the first fifth", func(x float64) float64 { return 100 + 200*max(0, x-0.2) }, 160},
		{"a valve: steep, then flat", func(x float64) float64 { return 150 * x / (0.05 + x) }, 110},
		{"answers the other way", func(x float64) float64 { return 200 - 120*x }, 140},
	}
	for _, p := range plants {
		for _, h := range []Hands{{Speed: 1}, {Speed: 0.5, PauseS: 2}, {Speed: 2, Overturn: 0.5}, {Speed: 1, Overturn: 0.3, Seed: 9}} {
			b := newBench(t, h, p.law, Move{Verb: Bring, Control: ctlThrottle, To: fixed(p.to), Watch: cell(sigNeedle), Within: 2, OverS: 30})
			b.run(120)
			if why, _ := b.o.Stuck(); !b.o.Done() || why != "" {
				t.Errorf("%s, %+v: not done after 120 s: %s, needle %.1f", p.name, h, why, b.needle)
				continue
			}
			// 2 asked for, and half of half a division of 5 psi for the eyes
			if math.Abs(b.needle-p.to) > 2+1.25 {
				t.Errorf("%s, %+v: left at %.1f, want %.1f", p.name, h, b.needle, p.to)
			}
			if s := b.now.Seconds(); s > 60 {
				t.Errorf("%s, %+v: took %.0f s", p.name, h, s)
			}
		}
	}
}

func TestBringLivesWithUnrest(t *testing.T) {
	b := newBench(t, Hands{}, pump, Move{Verb: Bring, Control: ctlThrottle, To: fixed(150), Watch: cell(sigNeedle), Within: 2, OverS: 30})
	b.disturb = func(now world.Tick) float64 { return 3 * math.Sin(float64(now)/5) }
	b.run(120)
	if why, _ := b.o.Stuck(); !b.o.Done() || why != "" {
		t.Fatalf("not done: %s", why)
	}
	if math.Abs(b.psi-150) > 6 {
		t.Errorf("left at %.1f", b.psi)
	}
}

func TestBringGivesUp(t *testing.T) {
	b := newBench(t, Hands{}, pump, Move{Verb: Bring, Control: ctlThrottle, To: fixed(900), Watch: cell(sigNeedle), Within: 2, OverS: 10, Line: 17, GiveUpS: 60})
	b.run(300)
	why, line := b.o.Stuck()
	if !strings.Contains(why, "900") || line != 17 {
		t.Errorf("stuck %q at line %d", why, line)
	}
}

func TestOverturnGoesTooFarAndComesBack(t *testing.T) {
	highest := func(h Hands) float64 {
		top := 0.0
		b := newBench(t, h, pump, Move{Verb: Bring, Control: ctlThrottle, To: fixed(150), Watch: cell(sigNeedle), Within: 2, OverS: 30})
		b.watching = func() { top = max(top, b.needle) }
		b.run(120)
		return top
	}
	if calm, rash := highest(Hands{}), highest(Hands{Overturn: 0.6}); rash < calm+4 || calm > 156 {
		t.Errorf("highest %.1f, with excess %.1f", calm, rash)
	}
}

func TestSetMovesAtHumanSpeed(t *testing.T) {
	length := func(h Hands, over float64) (seconds float64, steps int) {
		b := newBench(t, h, pump, Move{Verb: Set, Control: ctlThrottle, To: fixed(1), OverS: over})
		b.run(60)
		n := len(b.actions)
		return (b.actions[n-1].At - b.actions[0].At + 1).Seconds(), n
	}
	for _, c := range []struct{ speed, over, want float64 }{
		{1, 10, 10}, {2, 10, 5}, {0.5, 10, 20},
		{2, 6, quickestS}, // a rule governs: not hurried
		{2, 2, 2},         // its own pace
		{0.5, 2, 2},
	} {
		got, steps := length(Hands{Speed: c.speed}, c.over)
		if math.Abs(got-c.want) > 0.05 || steps < int(59*got) {
			t.Errorf("speed %g, over %g s: took %.2f s in %d moves, want %g s", c.speed, c.over, got, steps, c.want)
		}
	}
	b := newBench(t, Hands{}, pump, Move{Verb: Set, Control: ctlSwitch, To: fixed(1)})
	b.run(10)
	if len(b.actions) != 1 || b.toggle != 1 {
		t.Errorf("a switch took %d actions", len(b.actions))
	}
}

func TestTurnUntil(t *testing.T) {
	b := newBench(t, Hands{}, pump, Move{Verb: Turn, Control: ctlThrottle, To: fixed(1), OverS: 60,
		Until: when(func(v []float64) bool { return v[sigNeedle] >= 120 })})
	b.run(60)
	if math.Abs(b.needle-120) > 6 || b.hand > 0.5 {
		t.Errorf("stopped with the needle at %.1f, hand at %.2f", b.needle, b.hand)
	}
}

func TestWalkWaitTellPress(t *testing.T) {
	b := newBench(t, Hands{}, pump,
		Move{Verb: Go, Place: world.Panel}, // is there
		Move{Verb: Go, Place: world.Hydrant},
		Move{Verb: Wait, WaitS: 2},
		Move{Verb: Wait, Until: cell(sigHeard)},
		Move{Verb: Tell, Control: ctlSay, To: cell(sigNeedle)},
		Move{Verb: Set, Control: ctlSwitch, To: fixed(1), If: when(func(v []float64) bool { return v[sigNeedle] > 1000 })},
		Move{Verb: Press, Control: ctlSwitch, OverS: 1})
	b.run(10)
	if b.o.Done() || b.place != world.Hydrant {
		t.Fatal("did not wait to be called")
	}
	b.heard = true
	b.run(10)
	if !b.o.Done() {
		t.Fatal("not done")
	}
	if len(b.actions) != 4 {
		t.Fatalf("%d actions: %+v", len(b.actions), b.actions)
	}
	walk, tell, press, release := b.actions[0], b.actions[1], b.actions[2], b.actions[3]
	if walk.Control != ctlWalk || walk.Value != float64(world.Hydrant) || walk.From != world.Panel {
		t.Errorf("walk: %+v", walk)
	}
	// the needle is out of sight: said as last read, pump(0) = 103.4 to half a division of 5
	if tell.Value != 102.5 || tell.From != world.Hydrant {
		t.Errorf("said %+v, want the needle as last read, 102.5", tell)
	}
	if press.Value != 1 || release.Value != 0 || math.Abs((release.At-press.At).Seconds()-1) > 0.05 {
		t.Errorf("pressed %+v, released %+v", press, release)
	}
}

func TestWaitGivesUpWithTheLine(t *testing.T) {
	b := newBench(t, Hands{}, pump, Move{Verb: Wait, Until: cell(sigHeard), GiveUpS: 5, Line: 42})
	b.run(60)
	why, line := b.o.Stuck()
	if line != 42 || !strings.Contains(why, "step one") || !strings.Contains(why, "waited 5 s for: test") {
		t.Errorf("stuck %q at line %d", why, line)
	}
}

func TestShuffleKeepsTheOrderThatMatters(t *testing.T) {
	say := func(v float64) []Move { return []Move{{Verb: Tell, Control: ctlSay, To: fixed(v)}} }
	script := &Script{Name: "test", Steps: []Step{
		{ID: "a", Moves: say(1)},
		{ID: "b", Moves: say(2), After: []string{"a"}},
		{ID: "c", Moves: say(3)},
		{ID: "d", Moves: say(4), After: []string{"b", "c"}},
		{ID: "e", Moves: say(5)},
	}}
	orders := map[string]bool{}
	for seed := range uint64(40) {
		b := withScript(t, Hands{Shuffle: true, Seed: seed}, pump, script)
		b.run(60)
		when, name := map[float64]int{}, ""
		for i, a := range b.actions {
			when[a.Value] = i
			name += string(rune('a' + int(a.Value) - 1))
		}
		orders[name] = true
		if len(name) != 5 || when[1] > when[2] || when[2] > when[4] || when[3] > when[4] {
			t.Errorf("seed %d: %s", seed, name)
		}
	}
	if len(orders) < 10 { // there are 15
		t.Errorf("only %d orders in 40 shuffles", len(orders))
	}
	b := withScript(t, Hands{}, pump, script)
	b.run(60)
	for i, a := range b.actions {
		if a.Value != float64(i+1) {
			t.Errorf("without shuffling step %d was number %g", i+1, a.Value)
		}
	}
}

func TestEyes(t *testing.T) {
	k := known(5)
	for _, c := range []struct{ needle, error, want float64 }{{101, 0, 100}, {101.3, 0, 102.5}, {101.3, 1, 105}, {101.3, -1, 100}} {
		e := newEyes(&k, c.error)
		e.look(&world.Reading{At: 6, V: []float64{2, c.needle, 0, 0, 0}})
		if got := e.board.V[sigNeedle]; got != c.want {
			t.Errorf("needle at %g with error %g read as %g, want %g", c.needle, c.error, got, c.want)
		}
	}
}

func TestBadScripts(t *testing.T) {
	for _, s := range []Script{
		{Steps: []Step{{ID: "a", After: []string{"z"}}}},
		{Steps: []Step{{ID: "a", After: []string{"b"}}, {ID: "b", After: []string{"a"}}}},
		{Steps: []Step{{ID: "a", Moves: []Move{{Verb: Set, Control: ctlThrottle}}}}},
		{Steps: []Step{{ID: "a", Moves: []Move{{Verb: Tell, Control: 99}}}}},
		{Steps: []Step{{ID: "a", Moves: []Move{{Verb: Wait}}}}},
	} {
		if _, err := New(&s, Hands{}, known(5)); err == nil {
			t.Errorf("%+v was taken", s)
		}
	}
}

func TestResume(t *testing.T) {
	moves := []Move{
		{Verb: Wait, WaitS: 1},
		{Verb: Bring, Control: ctlThrottle, To: fixed(150), Watch: cell(sigNeedle), Within: 2, OverS: 30},
		{Verb: Tell, Control: ctlSay, To: cell(sigNeedle)},
	}
	a := newBench(t, Hands{PauseS: 2}, pump, moves...)
	a.run(8)
	w := state.Saver(nil)
	a.o.Walk(&w)
	b := newBench(t, Hands{PauseS: 2}, pump, moves...)
	l := state.Loader(w.Saved())
	b.o.Walk(&l)
	if !l.OK() {
		t.Fatal("the load does not fit")
	}
	o := b.o
	*b = *a
	b.o, b.actions = o, nil
	n := len(a.actions)
	a.run(100)
	b.run(100)
	if len(b.actions) == 0 || len(b.actions) != len(a.actions)-n {
		t.Fatalf("%d actions, want %d", len(b.actions), len(a.actions)-n)
	}
	for i := range b.actions {
		if b.actions[i] != a.actions[n+i] {
			t.Fatalf("action %d: %+v, want %+v", i, b.actions[i], a.actions[n+i])
		}
	}
}

func TestStepDoesNotAllocate(t *testing.T) {
	b := newBench(t, Hands{}, pump, Move{Verb: Turn, Control: ctlThrottle, To: fixed(1), OverS: 600, Until: cell(sigHeard), GiveUpS: 1e6})
	r := world.Reading{Place: world.Panel, V: make([]float64, 5)}
	out := make([]world.Action, 0, 8)
	if n := testing.AllocsPerRun(1000, func() {
		out = b.o.Step(r.At, &r, out[:0])
		r.At++
	}); n != 0 {
		t.Errorf("%g allocations a tick", n)
	}
}
