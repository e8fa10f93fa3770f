package play

import (
	"fmt"
	"math"

	"steadyneedle/render/report"
	"steadyneedle/render/view"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/prompter"
	"steadyneedle/sim/scene"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// Play is one attempt as the window meets it.
type Play struct {
	a        *attempt.Attempt
	info     view.Info
	controls []world.Control
	signals  []world.Signal
	reading  world.Reading
	talk     []talker
	heard    []view.Line
	clock    int // signal of the drill's clock
	before   float64
	running  bool
	view     *scene.Scene // for looking back
	looked   bool         // the view stands at a moment, see viewAt
	viewAt   world.Tick
	stood    world.Place // where the candidate last stood
	left     world.Tick  // when they left it
	own      *report.Own
	summed   **report.Sums   // once the attempt is over
	hints    []prompter.Hint // in the units that are shown
}

// talker is one phrase or gesture whose count is watched.
type talker struct {
	control int
	signal  int // how often it was heard, or said by the candidate
	value   int // its number; −1: none
	seen    float64
}

// New wraps an attempt. under says apparatus and mode in a few words.
func New(a *attempt.Attempt, under string, rated bool) *Play {
	w := a.Scene.World
	s := w.Setup()
	p := &Play{a: a, controls: w.Controls(), signals: w.Signals(), clock: -1}
	p.info = view.Info{
		Drill: a.Drill.Name, Title: a.Drill.Title, Under: under, Objective: a.Drill.Objective,
		Street: a.Drill.Plan.Street, FireAt: a.Drill.Plan.FireAt, HydrantAt: a.Drill.Plan.HydrantAt,
		Load: load(&s.Ground.Line, s.Ground.Lay, unit.US), LineIn: s.Ground.Line.Trunk.SizeIn, Lines: s.Rig.Discharges, Gauges: s.Rig.Instruments, Rated: rated, Night: s.Ground.Night, FireAcross: s.Ground.FireAcross, People: s.Ground.People,
	}
	index := map[string]int{}
	for i := range p.signals {
		index[p.signals[i].Name] = i
	}
	if i, ok := index["clock"]; ok {
		p.clock = i
	}
	for i := range p.controls {
		c := &p.controls[i]
		if c.Kind != world.Speech && c.Kind != world.Gesture {
			continue
		}
		t := talker{control: i, signal: -1, value: -1}
		name := c.Name + "_heard"
		if c.Speaker == world.Candidate {
			name = c.Name
		}
		if k, ok := index[name]; ok {
			t.signal = k
		}
		if k, ok := index[c.Name+"_value"]; ok {
			t.value = k
		}
		if t.signal >= 0 {
			p.talk = append(p.talk, t)
		}
	}
	if a.Now() > 0 { // taken over: what was said until now keeps its time
		p.hearAgain(a.Now(), a.Scene.World.Truth().V)
	}
	p.look()
	return p
}

// Attempt is the attempt itself.
func (p *Play) Attempt() *attempt.Attempt { return p.a }

// Controls lists the controls.
func (p *Play) Controls() []world.Control { return p.controls }

// Signals lists the signals.
func (p *Play) Signals() []world.Signal { return p.signals }

// Reading is what is seen now.
func (p *Play) Reading() *world.Reading { return &p.reading }

// Heard is everything said and shown so far.
func (p *Play) Heard() []view.Line { return p.heard }

// Info is what stays the same.
func (p *Play) Info() *view.Info { return &p.info }

// Clock is the drill's clock.
func (p *Play) Clock() (float64, bool) { return p.before, p.running }

// Act does one thing as the candidate.
func (p *Play) Act(c world.ControlID, v float64) error {
	return p.a.Do(world.Action{By: world.Candidate, Control: c, Value: v})
}

// workTicks is how much of a pending test on a copy of the scene one tick may do: enough to be done
// soon, little enough that no frame stalls.
const workTicks = 60

// Tick makes one step.
func (p *Play) Tick() {
	p.a.Tick()
	if p.a.Judge.Pending() {
		p.a.Work(workTicks)
	}
	p.look()
}

// Walk is the walk under way.
func (p *Play) Walk() (from, to world.Place, share float64, ok bool) {
	w := p.a.Scene.World
	if w.Place() != world.Walking {
		return p.stood, p.stood, 0, false
	}
	whole := w.Arrives() - p.left
	if whole > 0 {
		share = min(1, float64(w.Now()-p.left)/float64(whole))
	}
	return p.stood, w.Bound(), share, true
}

// Mark notes an evaluator's remark.
func (p *Play) Mark(text string) { p.a.Mark(text) }

// Sheet is the debrief as things stand, in the units that are shown.
func (p *Play) Sheet() *report.Sheet { return p.Kept().In(p.info.Units) }

// Kept is the sheet as it is kept beside the recording: in US units, whatever is shown.
func (p *Play) Kept() *report.Sheet {
	s := report.Of(p.a, p.info.Under)
	s.Own, s.Sums = p.own, p.sums()
	return s
}

// Over reports whether the drill has ended.
func (p *Play) Over() bool { return p.a.Finished() }

// End stops the attempt.
func (p *Play) End() { p.a.Close() }

// OnUnsafe sets what an unsafe act does from now on.
func (p *Play) OnUnsafe(terms drill.OnUnsafe) { p.a.OnUnsafe(terms) }

// Undecided is the unsafe act at which the attempt stands until Decide, in the units that are shown.
func (p *Play) Undecided() *report.Finding {
	f := p.a.Undecided()
	if f == nil {
		return nil
	}
	return report.FindingOf(f).In(p.info.Units)
}

// Decide is the evaluator's word on it.
func (p *Play) Decide(goOn bool) { p.a.Decide(goOn) }

// Waive takes a finding off the score, for a reason.
func (p *Play) Waive(rule string, from world.Tick, reason string) error {
	return p.a.Waive(rule, from, reason)
}

// TakeBack takes a waiver back.
func (p *Play) TakeBack(rule string, from world.Tick) error { return p.a.TakeBack(rule, from) }

// Sign ends the evaluator's ruling with their name.
func (p *Play) Sign(name string) error { return p.a.Sign(name) }

// Halt ends the attempt on an evaluator's word.
func (p *Play) Halt(why attempt.Halt) { p.a.Halt(why) }

// look takes in what is seen and heard now.
func (p *Play) look() {
	p.a.Read(&p.reading)
	if p.reading.Place != world.Walking {
		p.stood, p.left = p.reading.Place, p.a.Now()
	}
	truth := p.a.Scene.Board.V
	if p.clock >= 0 && p.clock < len(truth) {
		p.before = truth[p.clock]
		p.running = p.before > 0 && !p.stopped()
	}
	for i := range p.talk {
		t := &p.talk[i]
		n := p.reading.V[t.signal]
		if math.IsNaN(n) || n <= t.seen {
			continue
		}
		t.seen = n
		p.heard = append(p.heard, p.line(t, truth))
	}
}

// stopped reports whether completion has been called.
func (p *Play) stopped() bool {
	for i := range p.talk {
		if p.controls[p.talk[i].control].Name == "say_complete" {
			return p.talk[i].seen > 0
		}
	}
	return false
}

func (p *Play) line(t *talker, truth []float64) view.Line {
	c := &p.controls[t.control]
	text := c.Label
	if c.Name == "objective" {
		text = p.info.Objective
	}
	if t.value >= 0 && t.value < len(truth) {
		text = fmt.Sprintf("%s %s.", text, said(p.info.Units, truth[t.value], c.Unit))
	}
	line := view.Line{At: p.reading.At, Who: view.Who(c.Speaker), Text: text, Mine: c.Speaker == world.Candidate, Shown: c.Kind == world.Gesture}
	if line.Shown {
		line.Sign = c.Name
	}
	return line
}

// Look replays the attempt to a moment and gives what was seen from a place then; nil if it can't.
func (p *Play) Look(at world.Tick, from world.Place) *world.Reading {
	if p.view == nil {
		v, err := p.a.NewView()
		if err != nil {
			return nil
		}
		p.view = v
	}
	if !p.looked || p.viewAt != at || !p.a.Finished() {
		if p.a.Look(at, p.view) != nil {
			return nil
		}
		p.looked, p.viewAt = true, at
	}
	var r world.Reading
	p.view.World.Read(from, &r)
	return &r
}

// Simulated lists the faults that were set at a moment, in words; none of a rated attempt.
func (p *Play) Simulated(at world.Tick) []string {
	if p.info.Rated || p.Look(at, world.Round) == nil {
		return nil
	}
	return view.Simulated(p.view.World, p.info.Units, nil)
}

// Stand freezes what is seen to a moment and a place, for pictures.
func (p *Play) Stand(at world.Tick, from world.Place) error {
	v, err := p.a.NewView()
	if err != nil {
		return err
	}
	if p.a.Now() > 0 {
		if err := p.a.Look(at, v); err != nil {
			return err
		}
	}
	v.World.Read(from, &p.reading)
	p.reading.Place = from
	truth := v.World.Truth().V
	if p.clock >= 0 && p.clock < len(truth) {
		p.before = truth[p.clock]
	}
	p.hearAgain(at, truth)
	p.running = p.before > 0 && !p.stopped()
	return nil
}

// hearAgain makes what was heard what had been heard before a moment.
func (p *Play) hearAgain(before world.Tick, truth []float64) {
	p.heard = p.heard[:0]
	for i := range p.talk {
		p.talk[i].seen = 0
	}
	for _, s := range p.a.Said(before) {
		for i := range p.talk {
			t := &p.talk[i]
			if p.controls[t.control].Name != p.controls[s.Control].Name || t.seen >= truth[t.signal] {
				continue
			}
			t.seen++
			line := p.line(t, truth)
			line.At = s.At
			p.heard = append(p.heard, line)
		}
	}
}
