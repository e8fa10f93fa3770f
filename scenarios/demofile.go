package scenarios

import (
	"fmt"

	"steadyneedle/scenarios/expression"
	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/demo"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/operator"
	engine "steadyneedle/sim/rig"
	"steadyneedle/sim/world"
)

// demoFile is demonstrations/NAME.yaml as it is written.
type demoFile struct {
	Name      reader.Text    `file:"name" need:"yes"`
	Title     string         `file:"title" need:"yes"`
	Teaches   string         `file:"teaches" need:"yes"`
	Caution   string         `file:"caution" need:"yes"` // what is not to be reproduced on apparatus
	Apparatus reader.Text    `file:"apparatus" need:"yes"`
	Relief    bool           `file:"with_relief_valve"` // beside a governor, to compare them: as on the apparatus that others are described by
	Ground    *reader.Node   `file:"ground" need:"yes"`
	Start     *reader.Node   `file:"start"`
	Values    []valueFile    `file:"values" size:"0..200"`
	Crew      []cueFile      `file:"crew" size:"0..200"`
	Plot      reader.Words   `file:"plot"`                  // signals that are plotted against time, five at most
	Below     reader.Text    `file:"below"`                 // what stands below that plot: curve, suction or both; curve unless given
	Prepare   []moveFile     `file:"prepare" size:"0..100"` // before the curtain, at once
	Steps     []demoStepFile `file:"steps" size:"1..100" need:"yes"`

	node *reader.Node
}

type (
	demoStepFile = reader.At[demoStep]
	keepFile     = reader.At[keep]
	claimFile    = reader.At[claim]
)

type demoStep struct {
	ID      reader.Text `file:"id" need:"yes"`
	Caption string      `file:"caption" need:"yes"`
	Ask     *askFile    `file:"ask"`
	Moves   []moveFile  `file:"moves" size:"0..100" need:"yes"`
	Keep    []keepFile  `file:"keep" size:"0..20"`
	Claims  []claimFile `file:"claims" size:"0..20"`
	Limit   *limitFile  `file:"limit"`
	Stop    bool        `file:"stop"`
}

type keep struct {
	Name reader.Text `file:"name" need:"yes"`
	Unit string      `file:"unit"`
	Is   reader.Text `file:"is" need:"yes"`
}

type claim struct {
	Text     string      `file:"text" need:"yes"`
	Measured reader.Text `file:"measured" need:"yes"`
	Unit     string      `file:"unit"`
	Span     bool        `file:"span"` // the number is a difference of temperatures
	Holds    reader.Text `file:"holds" need:"yes"`
}

// limitFile is a level that is drawn into the plot, by kept numbers.
type limitFile struct {
	Name string      `file:"name" need:"yes"`
	Unit string      `file:"unit" need:"yes"`
	Is   reader.Text `file:"is" need:"yes"`
}

type askFile struct {
	Question string       `file:"question" need:"yes"`
	Options  []string     `file:"options" size:"2..6" need:"yes"`
	Right    int          `file:"right" range:"1..6" need:"yes"`
	Because  string       `file:"because" need:"yes"`
	Holds    reader.Text  `file:"holds" need:"yes"` // what makes the right option right, asked when the step has been done
	Hide     reader.Words `file:"hide"`
}

// demonstrationFile reads a demonstration's file.
func (l *loading) demonstrationFile(name string) (*demoFile, error) {
	n, err := l.named("demonstration", "demonstrations", name, nil)
	if n == nil {
		return nil, err
	}
	f := &demoFile{node: n}
	l.take(n.Decode(f))
	l.itsName(f.Name, name)
	return f, nil
}

// Demonstration makes a demonstration ready to play. An unknown name wraps ErrUnknown; a faulty file
// gives reader.Faults.
func (s *Shelf) Demonstration(name string) (*demo.Demonstration, error) {
	l := s.loading()
	d, err := l.demonstration(name)
	if err == nil {
		err = l.faults.Err()
	}
	if err != nil {
		return nil, err
	}
	return d, nil
}

func (l *loading) demonstration(name string) (*demo.Demonstration, error) {
	f, err := l.demonstrationFile(name)
	if f == nil || err != nil {
		return nil, err
	}
	if f.Ground == nil || !f.Apparatus.Given() {
		return nil, nil // faulted already
	}
	rig, err := l.apparatus(f.Apparatus.Value, f.Apparatus.Node())
	if err != nil {
		return nil, err
	}
	if f.Relief {
		rig.Relief = engine.Default().Relief
	}
	rig.Instruments = rig.Instruments.True() // they stand beside the truth, and the class would ask
	b := builder{loading: l, rig: rig, file: &drillFile{Ground: f.Ground, Start: f.Start, Values: f.Values, Crew: f.Crew, node: f.node}}
	d := &drill.Drill{Name: f.Name.Value, Title: f.Title, Apparatus: f.Apparatus.Value, Scale: drill.Scale{Full: 1}}
	d.Setup = world.Setup{Rig: rig, Ground: b.ground(), Seed: 1, Start: map[string]float64{}}
	b.scope = newScope(&d.Setup)
	b.start(d.Setup.Seed, d.Setup.Start)
	d.Values = b.values()
	out := &demo.Demonstration{Drill: d, Teaches: f.Teaches, Caution: f.Caution}
	kept := b.kept(f)
	d.Values = append(d.Values, kept...)
	out.Kept = len(kept)
	d.Cues = b.cues()
	w := writer{loading: l, drill: d, scope: b.scope, allSeeing: true}
	out.Prepare = w.stageScript(name, "prepare", f.Prepare)
	for i := range f.Steps {
		out.Steps = append(out.Steps, w.stageStep(name, &f.Steps[i].V))
	}
	out.Plot = w.plotted(f.Plot)
	if f.Below.Given() {
		var ok bool
		if out.Below, ok = demo.BelowNamed(f.Below.Value); !ok {
			w.at(f.Below, 0, "below: found %q, expected curve, suction or both", f.Below.Value)
		}
	}
	l.twice(f)
	return out, nil
}

// kept makes room in the table for the numbers that steps keep.
func (b *builder) kept(f *demoFile) []drill.Value {
	var list []drill.Value
	for i := range f.Steps {
		for k := range f.Steps[i].V.Keep {
			x := &f.Steps[i].V.Keep[k].V
			if !b.newName(x.Name) {
				continue
			}
			v := drill.Value{Name: x.Name.Value, Unit: x.Unit, Is: expression.Constant("0", 0)}
			b.scope.add(v)
			list = append(list, v)
		}
	}
	return list
}

// newName reports whether a name can be given to a new number, and faults it if not.
func (b *builder) newName(t reader.Text) bool {
	_, taken := b.scope.signal[t.Value]
	switch {
	case !t.Given():
		return false
	case !identifier.MatchString(t.Value):
		b.at(t, 0, "name %q, expected small letters, digits and _", t.Value)
		return false
	case taken || t.Value == valueName || expression.Reserved(t.Value):
		b.at(t, 0, "the name %q is taken, expected a new one", t.Value)
		return false
	}
	return true
}

// stageScript is a script of one step.
func (w *writer) stageScript(demonstration, id string, moves []moveFile) operator.Script {
	s := operator.Script{Name: id, Drill: demonstration, Steps: []operator.Step{{ID: id, Moves: w.moves(moves)}}}
	for k := range s.Steps[0].Moves {
		s.Slots += slots(&s.Steps[0].Moves[k])
	}
	return s
}

func (w *writer) stageStep(demonstration string, f *demoStep) demo.Step {
	out := demo.Step{ID: f.ID.Value, Caption: f.Caption, Stop: f.Stop, Moves: w.stageScript(demonstration, f.ID.Value, f.Moves)}
	if f.Ask != nil {
		out.Ask = w.ask(f)
	}
	need := func(p *cond.Program) *cond.Program {
		if p == nil {
			return expression.Constant("0", 0) // faulted already
		}
		return p
	}
	for i := range f.Keep {
		k := &f.Keep[i].V
		cell := w.scope.signal[k.Name.Value]
		out.Keep = append(out.Keep, demo.Keep{Name: k.Name.Value, Unit: k.Unit, Cell: cell, Is: need(w.compile(k.Is, expression.Number, w.scope.truth))})
	}
	for i := range f.Claims {
		c := &f.Claims[i].V
		out.Claims = append(out.Claims, demo.Claim{Text: c.Text, Unit: c.Unit, Span: c.Span,
			Measured: need(w.compile(c.Measured, expression.Number, w.scope.truth)),
			Holds:    need(w.compile(c.Holds, expression.Condition, w.scope.truth))})
	}
	if a := f.Ask; a != nil && out.Ask.Right >= 0 && out.Ask.Right < len(a.Options) {
		out.Claims = append(out.Claims, demo.Claim{Text: "The answer: " + a.Options[out.Ask.Right] + ".", Answer: true,
			Measured: expression.Constant("1", 1), Holds: need(w.compile(a.Holds, expression.Condition, w.scope.truth))})
	}
	if l := f.Limit; l != nil {
		out.Limit = &demo.Limit{Name: l.Name, Unit: l.Unit, Is: need(w.compile(l.Is, expression.Number, w.scope.truth))}
		if out.Limit.Is.Slots > 0 { // it is asked when it is drawn, and remembers nothing
			w.at(l.Is, 0, "limit: looks back over time, expected a level by the numbers that were kept")
		}
	}
	return out
}

func (w *writer) ask(step *demoStep) *demo.Question {
	f := step.Ask
	q := &demo.Question{Text: f.Question, Options: f.Options, Right: f.Right - 1, Because: f.Because}
	if f.Right > len(f.Options) {
		w.at(step.ID, 0, "right: found %d, expected 1 to %d: there are no more options", f.Right, len(f.Options))
	}
	for _, t := range f.Hide {
		i, ok := w.scope.signal[t.Value]
		if !ok || i >= len(w.scope.signals) {
			w.at(t, 0, "hide: unknown signal %q, %s", t.Value, reader.DidYouMean(t.Value, w.scope.names))
			continue
		}
		q.Hide = append(q.Hide, t.Value)
	}
	return q
}

// mostPlotted is how many lines one plot can tell apart.
const mostPlotted = 5

// plotted looks up what is to be plotted; engine speed and the pump's two pressures unless given.
func (w *writer) plotted(names reader.Words) []string {
	list := []string{}
	for i, t := range names {
		if _, ok := w.scope.signal[t.Value]; !ok {
			w.at(t, 0, "plot: unknown name %q, %s", t.Value, reader.DidYouMean(t.Value, w.scope.names))
		}
		if i == mostPlotted {
			w.at(t, 0, "plot: more than %d lines, expected fewer", mostPlotted)
		}
		list = append(list, t.Value)
	}
	if len(list) == 0 {
		list = []string{"engine_rpm", "discharge_psi", "intake_psi"}
	}
	return list
}

// twice faults steps that share an id.
func (l *loading) twice(f *demoFile) {
	line := map[string]int{}
	for i := range f.Steps {
		id := f.Steps[i].V.ID
		if at, known := line[id.Value]; known && id.Given() {
			l.at(id, 0, "step %q stands twice, expected different ids (the first is on line %d)", id.Value, at)
		}
		line[id.Value] = f.Steps[i].Node.Line
	}
}

// checkDemonstration says what is wrong with a demonstration, its world included.
func (l *loading) checkDemonstration(name string) error {
	d, err := l.demonstration(name)
	if d == nil || err != nil || len(l.faults) > 0 {
		return err
	}
	if _, err := world.New(d.Drill.Setup); err != nil {
		l.faults = append(l.faults, l.nodes["demonstrations/"+name+".yaml"].Fault("%v", fmt.Errorf("ground: %w", err)))
	}
	return nil
}
