package attempt

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strings"
	"testing"

	"steadyneedle/sim/cond"
	"steadyneedle/sim/crew"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/judge"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// The exercise of these tests, on the real world: put the pump in gear, bring the pump's gauge to 120
// psi with tank water running round, call completion. One of the crew talks; one rule is broken.

func setup() world.Setup {
	return world.Setup{
		Rig:  rig.Default(),
		Seed: 1,
		Ground: world.Ground{
			Hydrant:      fireground.HydrantDef{StaticPSI: 65, ResidualPSI: 45, FlowGPM: 1000},
			Supply:       fireground.HoseDef{SizeIn: 4, LossC: 0.2},
			FireToPlugFt: 575, PlugSetback: 16, Discharge: 1, AirF: 68, WaterF: 60,
			Line: fireground.LineDef{
				Trunk:  fireground.HoseDef{SizeIn: 2.5, LossC: 2},
				Nozzle: &fireground.NozzleDef{TipIn: 1.125, RatedPSI: 50, People: 2},
			},
		},
		Start: map[string]float64{"tank_to_pump": 1},
	}
}

// names resolves controls and signals of that world.
type names struct {
	t        testing.TB
	controls map[string]world.ControlID
	signals  map[string]int
}

func newNames(t testing.TB, s world.Setup) names {
	n := names{t, map[string]world.ControlID{}, map[string]int{}}
	for i, c := range world.ControlsOf(&s) {
		n.controls[c.Name] = world.ControlID(i)
	}
	for i, c := range world.SignalsOf(&s) {
		n.signals[c.Name] = i
	}
	return n
}

func (n names) control(name string) world.ControlID {
	id, ok := n.controls[name]
	if !ok {
		n.t.Fatalf("no control %q", name)
	}
	return id
}

// above is a condition: the signal is greater than v.
func (n names) above(name string, v float64) *cond.Program {
	cell, ok := n.signals[name]
	if !ok {
		n.t.Fatalf("no signal %q", name)
	}
	return &cond.Program{Text: fmt.Sprintf("%s > %g", name, v), Result: func(s, _ []float64) float64 {
		if s[cell] > v {
			return 1
		}
		return 0
	}}
}

func (n names) signal(name string) *cond.Program {
	cell := n.signals[name]
	return &cond.Program{Text: name, Result: func(s, _ []float64) float64 { return s[cell] }}
}

func fixed(v float64) *cond.Program {
	return &cond.Program{Text: fmt.Sprint(v), Result: func([]float64, []float64) float64 { return v }}
}

func exercise(t testing.TB) (*drill.Drill, *operator.Script) {
	s := setup()
	n := newNames(t, s)
	d := &drill.Drill{
		Name: "gear", Apparatus: "default", Setup: s, GraceS: 120,
		Values: []drill.Value{{Name: "calculated", Unit: "psi", Is: fixed(120)}},
		Steps: []drill.Step{
			{ID: "shift", Done: n.above("pump_engaged", 0)},
			{ID: "complete", Done: n.above("say_complete", 0), After: []string{"shift"}},
		},
		Rules: []judge.Rule{
			{ID: "chocks", Kind: judge.Guard, Severity: judge.Unsafe, Title: "No chocks", When: n.above("engine_rpm", 900),
				Need: n.above("chocks_set", 1), For: 60, Once: true, Show: n.signal("engine_rpm"), Expected: "chocks before {calculated}"},
			{ID: "never", Kind: judge.Never, Severity: judge.Error, When: n.above("discharge_psi", 400)},
		},
		Cues: []crew.Cue{{ID: "ask", By: world.Crew, When: n.above("pump_engaged", 0), Until: n.above("say_wait", 0),
			Delay: crew.Radio, Again: 600, Do: []crew.Deed{{Control: n.control("crew_wants_water")}}}},
		Scale: drill.Scale{Full: 100, Unsafe: 25, Error: 5, Minor: 1, Pass: 80, UnsafeFails: true},
		Ends:  n.above("say_complete", 0),
	}
	move := func(verb operator.Verb, control string, to float64) operator.Move {
		return operator.Move{Verb: verb, Control: n.control(control), To: fixed(to)}
	}
	bring := move(operator.Bring, "throttle", 120)
	bring.Watch, bring.Within, bring.OverS = n.signal("discharge_gauge"), 3, 30
	fill := move(operator.Set, "tank_fill", 0.4)
	fill.OverS = 4
	script := &operator.Script{Name: "test", Steps: []operator.Step{
		{ID: "shift", Moves: []operator.Move{
			move(operator.Set, "pump_shift", 1),
			{Verb: operator.Wait, Until: n.above("pump_engaged", 0)},
			move(operator.Set, "transmission", 1),
			{Verb: operator.Wait, WaitS: 2},
		}},
		{ID: "pressure", After: []string{"shift"}, Moves: []operator.Move{
			{Verb: operator.Go, Place: world.Panel}, fill, bring,
			{Verb: operator.Tell, Control: n.control("say_complete")},
		}},
	}}
	return d, script
}

// worked runs the script to the end.
func worked(t *testing.T, o Options) *Attempt {
	t.Helper()
	d, script := exercise(t)
	a, err := New(d, o)
	if err != nil {
		t.Fatal(err)
	}
	op, err := a.Operator(script, operator.Hands{PauseS: 1, Seed: 3})
	if err != nil {
		t.Fatal(err)
	}
	if err := a.Run("test", op); err != nil {
		t.Fatal(err)
	}
	return a
}

func TestRunIsJudgedAndRecorded(t *testing.T) {
	var rec bytes.Buffer
	a := worked(t, Options{Record: &rec, Header: tape.Header{Build: "b"}})
	s := a.Sheet()
	if len(s.Findings) != 1 || s.Findings[0].Rule != "chocks" || s.Passed || s.Score != 75 {
		t.Fatalf("sheet %+v", s)
	}
	f := s.Findings[0]
	if f.Expected != "chocks before 120 psi" || !strings.HasSuffix(f.Measured, " rpm") || f.Place != world.Panel {
		t.Errorf("finding %+v", f)
	}
	if at, done := a.StepDone(0); !done || at == 0 {
		t.Error("the first step was not noticed")
	}
	if psi := channel(t, a, "discharge_gauge"); psi < 115 || psi > 125 {
		t.Errorf("the operator left the gauge at %.1f, want about 120", psi)
	}
	var again bytes.Buffer
	if err := a.WriteTape(&again); err != nil || !bytes.Equal(rec.Bytes(), again.Bytes()) {
		t.Error("the tape written at the end is not the one written meanwhile")
	}
	if b := worked(t, Options{}); b.Hash() != a.Hash() || !reflect.DeepEqual(b.Sheet(), s) {
		t.Error("the same run came to another end")
	}
}

// channel is a series' last value.
func channel(t *testing.T, a *Attempt, name string) float64 {
	t.Helper()
	for _, c := range a.Series.Channels {
		if c.Name == name && len(c.V) == len(a.Series.At) && len(c.V) > 100 {
			return c.V[len(c.V)-1]
		}
	}
	t.Fatalf("no series of %s", name)
	return 0
}

func replayed(t *testing.T, text string) (*Attempt, error) {
	t.Helper()
	r, err := tape.NewReader(strings.NewReader(text))
	if err != nil {
		return nil, err
	}
	d, _ := exercise(t)
	return Replay(r, d, Options{})
}

func TestReplayProvesTheRecording(t *testing.T) {
	var rec bytes.Buffer
	a := worked(t, Options{Record: &rec})
	b, err := replayed(t, rec.String())
	if err != nil {
		t.Fatal(err)
	}
	if b.Hash() != a.Hash() || b.Now() != a.Now() || !reflect.DeepEqual(b.Sheet(), a.Sheet()) {
		t.Errorf("replay ended at %d with %x and %+v, want %d, %x, %+v", b.Now(), b.Hash(), b.Sheet(), a.Now(), a.Hash(), a.Sheet())
	}
}

func TestReplayFindsWhatWasEdited(t *testing.T) {
	var rec bytes.Buffer
	worked(t, Options{Record: &rec})
	good := rec.String()
	lines := strings.SplitAfter(good, "\n")
	find := func(part string) int {
		for i, l := range lines {
			if strings.Contains(l, part) {
				return i
			}
		}
		t.Fatalf("no line has %q", part)
		return 0
	}
	edit := func(n int, line string) string {
		return strings.Join(lines[:n], "") + line + strings.Join(lines[n+1:], "")
	}
	throttle, asked, shift := find(" throttle "), find("d "), find(" pump_shift ")
	for _, c := range []struct {
		what string
		text string
		is   error
	}{
		{"a value", edit(throttle, strings.Replace(lines[throttle], " throttle 0.0", " throttle 0.1", 1)), tape.ErrEdited},
		{"an action taken out", edit(shift, ""), tape.ErrEdited},
		{"what the crew did taken out", edit(asked, ""), tape.ErrEdited},
		{"words put in the crew's mouth", edit(asked, lines[asked]+strings.Replace(lines[asked], "crew_wants_water", "crew_good", 1)), tape.ErrEdited},
		{"a hash", edit(find("h 120 "), "h 120 0000000000000000\n"), tape.ErrEdited},
		{"the end", edit(len(lines)-2, fmt.Sprintf("end %d 0000000000000000\n", 1<<40)), tape.ErrEdited},
		{"an unknown control", edit(throttle, strings.Replace(lines[throttle], "throttle", "thrtle", 1)), tape.ErrControl},
		{"an impossible value", edit(throttle, strings.Replace(lines[throttle], " throttle 0.", " throttle 7.", 1)), tape.ErrRefused},
		{"the seed", strings.Replace(good, `"seed":1`, `"seed":2`, 1), tape.ErrFile},
		{"the physics", strings.Replace(good, `"physics":`, `"physics":9`, 1), tape.ErrVersion},
		{"broken off", strings.Join(lines[:len(lines)/2], ""), tape.ErrTruncated},
	} {
		if c.text == good {
			t.Fatalf("%s: nothing was edited", c.what)
		}
		_, err := replayed(t, c.text)
		if !errors.Is(err, c.is) {
			t.Errorf("%s: got %v, want %v", c.what, err, c.is)
		}
	}
	at := lines[shift]
	_, err := replayed(t, edit(shift, ""))
	var m *tape.Mismatch
	if !errors.As(err, &m) || m.At > 60 {
		t.Errorf("without %q the first second that differs is %v, want the first", at, err)
	}
}

func TestLookAndRewind(t *testing.T) {
	a := worked(t, Options{Keys: true})
	var want bytes.Buffer
	if err := a.WriteTape(&want); err != nil {
		t.Fatal(err)
	}
	view, err := a.NewView()
	if err != nil {
		t.Fatal(err)
	}
	hashes := map[world.Tick]uint64{}
	for _, e := range a.log {
		if e.kind == tape.Hash {
			hashes[e.action.At] = e.hash
		}
	}
	for _, at := range []world.Tick{900, 60, 1260, 0, 600} {
		if err := a.Look(at, view); err != nil {
			t.Fatal(err)
		}
		if hash, _ := view.Hash(); view.World.Now() != at || hash != hashes[at] {
			t.Errorf("the look at tick %d is not what was there", at)
		}
	}

	sheet, end, hash := a.Sheet(), a.Now(), a.Hash()
	log := append([]entry(nil), a.log...)
	samples := len(a.Series.At)
	if err := a.Rewind(750); err != nil {
		t.Fatal(err)
	}
	if a.Now() != 750 || a.Finished() || len(a.Sheet().Findings) != 0 {
		t.Fatalf("rewound to %d, finished %v, %d findings", a.Now(), a.Finished(), len(a.Sheet().Findings))
	}
	again(t, a, log)
	var got bytes.Buffer
	if err := a.WriteTape(&got); err != nil {
		t.Fatal(err)
	}
	if a.Now() != end || a.Hash() != hash || !reflect.DeepEqual(a.Sheet(), sheet) || len(a.Series.At) != samples {
		t.Error("the same actions after a rewind came to another end")
	}
	if !bytes.Equal(got.Bytes(), want.Bytes()) {
		t.Error("the recording after a rewind is not the same")
	}
}

func TestActionsAreRefused(t *testing.T) {
	d, _ := exercise(t)
	a, err := New(d, Options{Record: io.Discard, Keys: true})
	if err != nil {
		t.Fatal(err)
	}
	n := newNames(t, d.Setup)
	if err := a.Do(world.Action{Control: n.control("throttle"), Value: 0.5}); !errors.Is(err, world.ErrReach) {
		t.Errorf("throttle from the cab: %v", err)
	}
	if err := a.Do(world.Action{Control: 9999}); !errors.Is(err, world.ErrUnknown) {
		t.Errorf("an unknown control: %v", err)
	}
	a.Mark("seen")
	for range 70 {
		a.Tick()
	}
	if err := a.Rewind(10); err == nil {
		t.Error("a recorded attempt was rewound")
	}
	if m := a.Marks(); len(m) != 1 || m[0].Text != "seen" {
		t.Errorf("marks %v", m)
	}
	if err := a.Close(); err != nil {
		t.Error(err)
	}
	at := a.Now()
	a.Tick()
	if a.Now() != at || a.Do(world.Action{Control: n.control("clothing"), Value: 1}) == nil {
		t.Error("an attempt that is over goes on")
	}
}

func TestStuckOperatorIsTold(t *testing.T) {
	d, script := exercise(t)
	script.Steps[0].Moves[1] = operator.Move{Verb: operator.Wait, Until: fixed(0), GiveUpS: 5, Line: 12}
	a, err := New(d, Options{})
	if err != nil {
		t.Fatal(err)
	}
	op, err := a.Operator(script, operator.Hands{})
	if err != nil {
		t.Fatal(err)
	}
	var stuck *Stuck
	if err := a.Run("test", op); !errors.As(err, &stuck) || stuck.Line != 12 || !a.Finished() {
		t.Errorf("got %v", err)
	}
}

// busy is an attempt with the pump working and a hand on the throttle.
func busy(t testing.TB) (a *Attempt, throttle world.ControlID) {
	d, script := exercise(t)
	d.Ends, d.Rules = nil, d.Rules[1:]
	a, err := New(d, Options{Record: io.Discard, LongestS: 1e9})
	if err != nil {
		t.Fatal(err)
	}
	script.Steps[1].Moves = script.Steps[1].Moves[:3]
	op, err := a.Operator(script, operator.Hands{})
	if err != nil {
		t.Fatal(err)
	}
	var r world.Reading
	acts := make([]world.Action, 0, 16)
	for !op.Done() && !a.Finished() {
		acts = a.Hand(op, &r, acts)
		a.Tick()
	}
	return a, newNames(t, d.Setup).control("throttle")
}

func TestTickDoesNotAllocate(t *testing.T) {
	a, throttle := busy(t)
	a.log = append(make([]entry, 0, 1<<16), a.log...) // the log grows now and then; a tick as such does not
	a.Series.grow(1 << 12)
	x := 0.5
	if n := testing.AllocsPerRun(3000, func() {
		x = 1 - x
		if err := a.Do(world.Action{Control: throttle, Value: x}); err != nil {
			t.Fatal(err)
		}
		a.Tick()
	}); n != 0 {
		t.Errorf("%g allocations a tick", n)
	}
}

// BenchmarkTick is the whole tick with world, crew, judge and recording; 1,000 times real time is
// 16.7 µs.
func BenchmarkTick(b *testing.B) {
	a, _ := busy(b)
	b.ReportAllocs()
	for b.Loop() {
		a.Tick()
		if len(a.log) == cap(a.log) {
			a.log = a.log[:0]
		}
	}
}
