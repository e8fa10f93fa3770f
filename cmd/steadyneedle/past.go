package main

import (
	"fmt"
	"strings"
	"time"

	"steadyneedle/cmd/internal/recorded"
	"steadyneedle/render/app"
	"steadyneedle/render/play"
	"steadyneedle/render/report"
	"steadyneedle/render/view"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/prompter"
	"steadyneedle/sim/world"
)

// sheets are those of a drill's attempts, oldest first.
func (f *front) sheets(name string) ([]*report.Sheet, error) {
	if f.store == nil {
		return nil, nil
	}
	list, err := f.store.List()
	var sheets []*report.Sheet
	for _, it := range list {
		if it.Sheet != nil && it.Sheet.Drill == name {
			sheets = append(sheets, it.Sheet)
		}
	}
	return sheets, err
}

// prompter helps at a drill as little as what was tried before lets it. What cannot be read of that is
// told of by the list of attempts.
func (f *front) prompter(d *drill.Drill) *prompter.Prompter {
	sheets, _ := f.sheets(d.Name)
	return prompter.New(d.Steps, report.History(sheets, time.Now()))
}

// Kept lists what is kept of a drill, oldest first; of all drills where the name is empty.
func (f *front) Kept(name string) ([]app.Kept, error) {
	list, err := f.store.List()
	var kept []app.Kept
	for _, it := range list {
		k := app.Kept{ID: it.ID, When: when(it.ID)}
		switch {
		case it.Sheet != nil && (name == "" || it.Sheet.Drill == name):
			k.Title, k.Sheet = it.Sheet.Title, it.Sheet.In(f.units)
			if it.Sheet.Mode != "" {
				k.When += ", " + it.Sheet.Mode
			}
		case it.Unfinished && name == "":
			k.Title, k.Resumable = f.cutOff(it.ID)
		default:
			continue
		}
		kept = append(kept, k)
	}
	return kept, err
}

// cutOff is the title of an attempt that was cut off, and whether it may be gone on with: a rated one
// may not.
func (f *front) cutOff(id string) (title string, resumable bool) {
	o, err := recorded.Open(f.store, id)
	if err != nil {
		return "An attempt that cannot be read", false
	}
	title = o.Header.Drill
	if list, err := f.shelf.List(); err == nil {
		for _, d := range list.Drills {
			if d.Name == o.Header.Drill {
				title = f.units.Prose(d.Title)
			}
		}
	}
	return title, o.Header.Mode != rated
}

// when is the date and time in an attempt's ID, for people.
func when(id string) string {
	if len(id) > 15 {
		if t, err := time.ParseInLocation("20060102-150405", id[:15], time.Local); err == nil {
			return t.Format("Monday, January 2, 2006, 3:04 PM")
		}
	}
	return id
}

// Weak lists the steps that were missed before, the likeliest to be missed again first.
func (f *front) Weak(name string) []app.Weakness {
	sheets, _ := f.sheets(name)
	var list []app.Weakness
	for _, e := range report.History(sheets, time.Now()).Practice(report.StepsOf(sheets)) {
		list = append(list, app.Weakness{Step: e.Step.ID, Text: f.units.Prose(e.Step.Hint), Phase: e.Step.Phase, Misses: e.Misses, Of: e.Of, CameBack: e.CameBack})
	}
	return list
}

// SetOwn keeps how the candidates marked themselves.
func (f *front) SetOwn(at view.Attempt, own *report.Own) error {
	p, _ := at.(*play.Play)
	id, kept := f.ids[p]
	if !kept {
		return nil
	}
	return f.store.SetOwn(id, own)
}

// Rule keeps the evaluator's ruling.
func (f *front) Rule(at view.Attempt) error {
	p, _ := at.(*play.Play)
	id, kept := f.ids[p]
	if !kept {
		return nil
	}
	return f.store.Rule(id, report.RulingOf(p.Attempt()), p.Attempt().WriteRuling)
}

// An attempt is opened in slices of so many ticks, for so long in one frame: the bar moves on, and little
// time goes into drawing it.
const (
	sliceTicks = 60
	sliceFor   = 30 * time.Millisecond
)

// opening is an attempt that is being opened for the window.
type opening struct {
	*recorded.Opening
	front *front
}

// Work opens on for a slice.
func (o opening) Work() bool {
	for begun := time.Now(); time.Since(begun) < sliceFor; {
		if o.Opening.Work(sliceTicks) {
			return true
		}
	}
	return false
}

// Attempt is what has been opened, as the window meets it.
func (o opening) Attempt() (view.Attempt, error) {
	a, err := o.Opening.Attempt()
	if a == nil {
		return nil, err
	}
	if o.ID != "" && recorded.Whole(err) {
		err = nil
	}
	words := o.Header.Mode
	if o.Header.Operator != "" {
		words = "operator " + o.Header.Operator
	}
	p := play.New(a, strings.TrimSuffix(o.front.title(a.Drill.Apparatus)+" · "+words, " · "), o.Header.Mode == rated).In(o.front.units)
	if o.ID != "" {
		o.front.ids[p] = o.ID
		if sheet, bad := o.front.store.Sheet(o.ID); bad == nil { // one that was cut off has none
			p.Again(sheet)
		}
	}
	return p, err
}

// Open opens what is kept, or what was left of an attempt that was cut off.
func (f *front) Open(id string) (app.Opening, error) {
	o, err := recorded.Open(f.store, id)
	if err != nil {
		return nil, err
	}
	return opening{o, f}, nil
}

// Settle keeps an attempt that was cut off as it stands.
func (f *front) Settle(id string, at view.Attempt) error {
	p, ok := at.(*play.Play)
	if !ok {
		return nil
	}
	return f.store.Settle(id, p.Kept())
}

// Drop throws away what was left of an attempt that was cut off.
func (f *front) Drop(id string) error { return f.store.Remove(id) }

// TakeOver begins a rehearsal that goes on from a moment of an attempt.
func (f *front) TakeOver(at view.Attempt, moment world.Tick) (view.Attempt, error) {
	p, ok := at.(*play.Play)
	if !ok {
		return nil, fmt.Errorf("this attempt cannot be taken over")
	}
	return f.branch(p.Attempt(), moment)
}

// Practice opens the newest attempt in which a step was missed; from is the moment at which its turn came.
func (f *front) Practice(name, step string) (app.Opening, func(view.Attempt) world.Tick, error) {
	list, err := f.store.List()
	if err != nil {
		return nil, nil, err
	}
	for i := len(list) - 1; i >= 0; i-- {
		s := list[i].Sheet
		if s == nil || s.Drill != name {
			continue
		}
		for _, missed := range s.Missed() {
			if missed == step {
				o, err := f.Open(list[i].ID)
				return o, func(at view.Attempt) world.Tick { return turn(at, step) }, err
			}
		}
	}
	return nil, nil, fmt.Errorf("no attempt missed step %s", step)
}

// turn is the moment at which a step's turn came: when the last of the steps that it waits for was done,
// less a little to find one's way.
func turn(at view.Attempt, step string) world.Tick {
	p, ok := at.(*play.Play)
	if !ok {
		return 0
	}
	a := p.Attempt()
	came := world.Tick(0)
	for i := range a.Drill.Steps {
		if a.Drill.Steps[i].ID != step {
			continue
		}
		for _, before := range a.Drill.Steps[i].After {
			for j := range a.Drill.Steps {
				if when, done := a.StepDone(j); done && a.Drill.Steps[j].ID == before {
					came = max(came, when)
				}
			}
		}
	}
	return max(0, came-3*world.TicksPerSecond)
}
