package scenarios

import (
	"path"

	"steadyneedle/scenarios/reader"
)

// operatorFile is operators/DRILL/NAME.yaml as it is written: a full script, or edits of another one.
type operatorFile struct {
	Name    reader.Text  `file:"name" need:"yes"`
	Drill   reader.Text  `file:"drill" need:"yes"`
	Breaks  reader.Text  `file:"breaks"`   // the rule that is meant to be broken
	Onset   reader.Text  `file:"onset"`    // holds from the moment when the rule is broken; of truth
	Apart   reader.Words `file:"apart"`    // operators whose mistake leaves no room for this one
	BasedOn reader.Text  `file:"based_on"` // another operator of the same drill
	Steps   []workFile   `file:"steps" size:"1..200"`
	Edits   []editFile   `file:"edits" size:"0..100"`
	Seed    uint64       `file:"seed" range:"1..18446744073709551615"`
	Variant reader.Text  `file:"variant"`
	Start   *reader.Node `file:"start"` // a planted fault

	node *reader.Node
}

type (
	workFile = reader.At[work]
	editFile = reader.At[edit]
	moveFile = reader.At[move]
)

// work is what is done for one step of the drill.
type work struct {
	Step  reader.Text `file:"step" need:"yes"`
	Moves []moveFile  `file:"moves" size:"0..100" need:"yes"`

	OnlyWith reader.Text `file:"only_with"` // a part: without it the drill has no such step
}

// edit changes a script in one place. One of the first three, or shift with before or after; before and
// after without shift add moves to a step.
type edit struct {
	Skip    reader.Text `file:"skip"`
	Replace reader.Text `file:"replace"`
	Shift   reader.Text `file:"shift"`
	Before  reader.Text `file:"before"`
	After   reader.Text `file:"after"`
	Moves   []moveFile  `file:"moves" size:"1..100"`
}

// move is one thing done. One of the first eight names it.
type move struct {
	Go     reader.Text `file:"go"`
	Set    reader.Text `file:"set"`
	Turn   reader.Text `file:"turn"`
	Bring  reader.Text `file:"bring"`
	Wait   reader.Text `file:"wait"`
	PauseS float64     `file:"pause_s" range:"0.1..3600"`
	Say    reader.Text `file:"say"`
	Press  reader.Text `file:"press"`

	To      reader.Text `file:"to"`
	Until   reader.Text `file:"until"`
	Watch   reader.Text `file:"watch"`
	Value   reader.Text `file:"value"`
	Within  float64     `file:"within" range:"0.01..1000"`
	OverS   float64     `file:"over_s" range:"0.1..3600"`
	GiveUpS float64     `file:"give_up_s" range:"1..7200"`
	If      reader.Text `file:"if"`

	OnlyWith reader.Text `file:"only_with"` // a part: without it the move is left out
}

// operatorFile reads an operator's file.
func (l *loading) operatorFile(drill, name string, at *reader.Node) (*operatorFile, error) {
	n, err := l.named("operator", path.Join("operators", drill), name, at)
	if n == nil {
		return nil, err
	}
	f := &operatorFile{node: n}
	l.take(n.Decode(f))
	l.itsName(f.Name, name)
	if f.Drill.Given() && f.Drill.Value != drill {
		l.at(f.Drill, 0, "drill: found %q, expected %q, as the folder is called", f.Drill.Value, drill)
	}
	switch {
	case f.BasedOn.Given() && len(f.Steps) > 0:
		l.fail(f.Steps[0].Node, "steps: an operator that is based on another has edits, expected no steps")
	case !f.BasedOn.Given() && len(f.Edits) > 0:
		l.fail(f.Edits[0].Node, "edits: there is nothing to edit, expected based_on")
	case !f.BasedOn.Given() && len(f.Steps) == 0:
		l.fail(n, "an operator needs steps with their moves, expected steps, or based_on with edits")
	}
	return f, nil
}
