package prompter

import (
	"strings"
	"testing"

	"steadyneedle/sim/drill"
	"steadyneedle/sim/judge"
	"steadyneedle/sim/world"
)

// play is an attempt as a test tells it.
type play struct {
	done  map[int]world.Tick
	place world.Place
	found []judge.Finding
}

func (p *play) StepDone(i int) (world.Tick, bool) { at, ok := p.done[i]; return at, ok }
func (p *play) Place() world.Place                { return p.place }
func (p *play) Found() int                        { return len(p.found) }
func (p *play) Findings() []judge.Finding         { return p.found }

func said(list []Hint) string {
	var words []string
	for _, h := range list {
		words = append(words, h.Cause.String()+" "+h.About)
	}
	return strings.Join(words, ", ")
}

func expect(t *testing.T, got []Hint, want string) {
	t.Helper()
	if s := said(got); s != want {
		t.Errorf("said %q, want %q", s, want)
	}
}

func sec(s float64) world.Tick { return world.TicksIn(s) }

// On the first attempt each step is told once, as soon as it is next.
func TestFirstAttempt(t *testing.T) {
	w := &play{done: map[int]world.Tick{}, place: world.Panel}
	p := New(steps(4), nil)
	expect(t, p.Look(sec(1), w), "told s0")
	expect(t, p.Look(sec(2), w), "")
	w.done[0] = sec(3)
	expect(t, p.Look(sec(3), w), "told s1")
	w.done[1], w.done[2] = sec(4), sec(4)
	expect(t, p.Look(sec(4), w), "told s3")
	w.done[3] = sec(5)
	expect(t, p.Look(sec(5), w), "")
	if _, ok := p.Ask(sec(6), w); ok {
		t.Error("there is nothing left to ask for")
	}
}

// Later a step that was missed before is told, after eight seconds in which nothing was done; no other
// is, but any may be asked for.
func TestHesitation(t *testing.T) {
	w := &play{done: map[int]world.Tick{}, place: world.Panel}
	p := New(steps(4), History{{Missed: []string{"s1"}}})
	expect(t, p.Look(sec(60), w), "")
	if h, ok := p.Ask(sec(61), w); !ok || h.About != "s0" || h.Cause != Question {
		t.Errorf("%+v, %v", h, ok)
	}
	w.done[0] = sec(62)
	p.Acted(sec(62))
	expect(t, p.Look(sec(69.9), w), "")
	expect(t, p.Look(sec(70), w), "hesitated s1")
	expect(t, p.Look(sec(90), w), "")

	p = New(steps(4), History{{Missed: []string{"s0"}}})
	w = &play{done: map[int]world.Tick{}, place: world.Walking}
	expect(t, p.Look(sec(20), w), "")
	w.place = world.Panel
	expect(t, p.Look(sec(27), w), "")
	expect(t, p.Look(sec(28), w), "hesitated s0")
}

func TestNoHelp(t *testing.T) {
	w := &play{done: map[int]world.Tick{}, found: []judge.Finding{{Rule: "r", Severity: judge.Unsafe}}}
	p := New(steps(4), History{{}, {}})
	expect(t, p.Look(sec(60), w), "")
	if _, ok := p.Ask(sec(61), w); ok {
		t.Error("no help means none")
	}
}

// Unsafe acts are explained at once, others when their phase is over, each once.
func TestComments(t *testing.T) {
	w := &play{done: map[int]world.Tick{}}
	p := New(steps(8), History{{Missed: []string{"s7"}}})
	w.done[0] = sec(1)
	w.found = []judge.Finding{{Rule: "small", Severity: judge.Error, From: sec(1), Title: "Small", Expected: "more", Why: "It adds up."}}
	expect(t, p.Look(sec(2), w), "")
	w.found = append(w.found, judge.Finding{Rule: "grave", Severity: judge.Unsafe, From: sec(3)})
	expect(t, p.Look(sec(3), w), "unsafe grave")
	w.done[1], w.done[2], w.done[3] = sec(4), sec(5), sec(6)
	got := p.Look(sec(6), w)
	expect(t, got, "comment small")
	if len(got) == 1 && got[0].Text != "Small. Expected: more. It adds up." {
		t.Errorf("%q", got[0].Text)
	}
	expect(t, p.Look(sec(7), w), "")
	w.found = append(w.found, judge.Finding{Rule: "small", Severity: judge.Error, From: sec(8)})
	w.done[4], w.done[5], w.done[6], w.done[7] = sec(9), sec(9), sec(9), sec(9)
	expect(t, p.Look(sec(9), w), "comment small")
}

// A step that was passed over does not hold up the ones after it, and of several open steps the one with
// a deadline comes first, then the one where the candidate stands.
func TestWhatIsNext(t *testing.T) {
	list := []drill.Step{
		{ID: "a", Phase: "p"}, {ID: "b", Phase: "p", After: []string{"a"}}, {ID: "c", Phase: "p", After: []string{"b"}},
		{ID: "cab", Phase: "p", Place: world.Cab, After: []string{"c"}}, {ID: "panel", Phase: "p", Place: world.Panel, After: []string{"c"}},
		{ID: "urgent", Phase: "p", Place: world.Cab, Soon: true, After: []string{"panel"}},
	}
	w := &play{done: map[int]world.Tick{0: 1, 2: 3}, place: world.Panel}
	p := New(list, nil)
	expect(t, p.Look(sec(1), w), "told panel")
	w.place = world.Cab
	expect(t, p.Look(sec(2), w), "told cab")
	w.done[4], w.place = sec(3), world.Panel
	expect(t, p.Look(sec(3), w), "told urgent")
}

// After a rewind nothing is said twice.
func TestResume(t *testing.T) {
	w := &play{done: map[int]world.Tick{0: 1}, found: []judge.Finding{{Rule: "grave", Severity: judge.Unsafe}}}
	p := New(steps(4), nil)
	said := p.Look(sec(1), w)
	expect(t, said, "unsafe grave, told s1")
	p.Resume(sec(1), said)
	expect(t, p.Look(sec(2), w), "")
}
