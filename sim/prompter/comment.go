package prompter

import (
	"steadyneedle/sim/judge"
	"steadyneedle/sim/world"
)

// comments explains findings: unsafe acts at once, others when their phase is over. Who needs no more
// than an answer on asking hears of unsafe acts only; who needs none reads the sheet.
func (p *Prompter) comments(now world.Tick, w Work) []Hint {
	if n := w.Found(); n != p.found {
		p.found = n
		p.collect(w.Findings())
	}
	var say []Hint
	rest := p.held[:0]
	for _, f := range p.held {
		switch {
		case f.Severity == judge.Unsafe && p.stage < Nothing:
			say = append(say, explain(now, Danger, f))
		case p.stage >= Asked:
		case p.over(f.From, w):
			say = append(say, explain(now, Comment, f))
		default:
			rest = append(rest, f)
		}
	}
	p.held = rest
	return say
}

// collect keeps the findings that have not been spoken of.
func (p *Prompter) collect(all []judge.Finding) {
	seen := map[string]int{}
	for _, f := range all {
		seen[f.Rule]++
		if seen[f.Rule] > p.told[f.Rule] {
			p.told[f.Rule]++
			p.held = append(p.held, f)
		}
	}
}

// over reports whether the phase in which something happened has ended: all of its steps are past, or
// work two phases on has begun.
func (p *Prompter) over(at world.Tick, w Work) bool {
	phase := p.phaseAt(at, w)
	for i := range p.steps {
		if p.done[i] && p.phase[i] >= phase+2 {
			return true
		}
	}
	for i := range p.steps {
		if p.phase[i] == phase && !p.past[i] {
			return false
		}
	}
	return true
}

// phaseAt is the phase under way at a moment: that of the first step done from then on, or the last one.
func (p *Prompter) phaseAt(at world.Tick, w Work) int {
	best, first := p.phases-1, world.Tick(-1)
	for i := range p.steps {
		if t, done := w.StepDone(i); done && t >= at && (first < 0 || t < first) {
			best, first = p.phase[i], t
		}
	}
	if first < 0 && len(p.now) > 0 {
		return p.phase[p.now[0]]
	}
	return best
}

// explain puts a finding into a few sentences.
func explain(now world.Tick, c Cause, f judge.Finding) Hint {
	text := f.Title + "."
	if f.Expected != "" {
		text += " Expected: " + f.Expected + "."
	}
	return Hint{now, c, f.Rule, text + " " + f.Why}
}
