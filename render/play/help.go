package play

import (
	"steadyneedle/render/report"
	"steadyneedle/sim/prompter"
	"steadyneedle/sim/world"
)

// Help is how much help there is in this attempt: 0 none, more otherwise.
func (p *Play) Help() int {
	c := p.a.Prompter()
	if c == nil {
		return 0
	}
	return int(prompter.Nothing) - int(c.Stage())
}

// Prompt is the step that was told and is not done yet; empty if there is none.
func (p *Play) Prompt() string {
	c := p.a.Prompter()
	if c == nil {
		return ""
	}
	for _, i := range c.Open() {
		if c.Given(i) {
			return p.info.Units.Prose(p.a.Drill.Steps[i].Hint)
		}
	}
	return ""
}

// Hints is everything that the prompter has said, in the units that are shown.
func (p *Play) Hints() []prompter.Hint {
	all := p.a.Hints()
	for len(p.hints) > len(all) {
		p.hints = p.hints[:len(all)]
	}
	for _, h := range all[len(p.hints):] {
		h.Text = p.info.Units.Prose(h.Text)
		p.hints = append(p.hints, h)
	}
	return p.hints
}

// Ask asks the prompter for the next step.
func (p *Play) Ask() (string, bool) {
	h, ok := p.a.Ask()
	return p.info.Units.Prose(h.Text), ok
}

// SetOwn notes how the candidates marked themselves.
func (p *Play) SetOwn(own *report.Own) { p.own = own }

// Stood is where the candidate was at a moment.
func (p *Play) Stood(at world.Tick) world.Place {
	if p.Look(at, world.Walking) == nil {
		return world.Walking
	}
	return p.view.World.Place()
}

// Again tells an attempt that was opened from what is kept how the candidates marked themselves.
func (p *Play) Again(s *report.Sheet) {
	if s != nil {
		p.own = s.Own
		if s.Sums != nil { // proved when it was kept
			p.summed = &s.Sums
		}
	}
}
