package prompter

import (
	"steadyneedle/sim/drill"
	"steadyneedle/sim/judge"
	"steadyneedle/sim/world"
)

// hesitates is how long a candidate does nothing before a weak step is told.
const hesitates = 8 * world.TicksPerSecond

// Cause is why something is said.
type Cause uint8

const (
	Told     Cause = iota // a next step on the first attempt
	Hesitant              // a step missed before, after hesitation
	Question              // the candidate asked
	Danger                // an unsafe act, explained at once
	Comment               // another finding, at the end of its phase
)

var causeWords = [...]string{Told: "told", Hesitant: "hesitated", Question: "asked", Danger: "unsafe", Comment: "comment"}

// String is the cause as recordings and sheets write it.
func (c Cause) String() string { return causeWords[c] }

// CauseNamed finds a cause by its word.
func CauseNamed(word string) (Cause, bool) {
	for i, w := range causeWords {
		if w == word {
			return Cause(i), true
		}
	}
	return 0, false
}

// Hint is one thing said.
type Hint struct {
	At    world.Tick
	Cause Cause
	About string // the step's ID; of Danger and Comment the rule's
	Text  string
}

// Work is the attempt as the prompter sees it.
type Work interface {
	StepDone(i int) (at world.Tick, done bool)
	Place() world.Place
	Found() int                // grows when there are new findings
	Findings() []judge.Finding // all so far, by onset
}

// Prompter helps through one attempt. Make it with New.
type Prompter struct {
	steps  []drill.Step
	before [][]int // steps that each one directly waits for
	phase  []int   // number of each step's phase
	phases int
	stage  Stage
	weak   []bool

	done  []bool
	past  []bool // done, or a later step has been
	acted world.Tick
	given []bool // steps told
	asked []bool // steps asked for
	found int    // findings seen
	told  map[string]int
	held  []judge.Finding // wait for the end of their phase
	now   []int           // open steps, the likeliest next first
}

// New readies help through an attempt at a drill, by what was tried before.
func New(steps []drill.Step, h History) *Prompter {
	p := &Prompter{steps: steps, stage: h.Stage(), weak: make([]bool, len(steps)), done: make([]bool, len(steps)), past: make([]bool, len(steps)),
		given: make([]bool, len(steps)), asked: make([]bool, len(steps)), told: map[string]int{}, now: make([]int, 0, len(steps)), phase: make([]int, len(steps))}
	index := map[string]int{}
	names := map[string]int{}
	for i, s := range steps {
		var waits []int
		for _, a := range s.After {
			if j, ok := index[a]; ok {
				waits = append(waits, j)
			}
		}
		p.before = append(p.before, waits)
		index[s.ID] = i
		p.weak[i] = h.Weak(s.ID)
		if _, ok := names[s.Phase]; !ok {
			names[s.Phase] = len(names)
		}
		p.phase[i] = names[s.Phase]
	}
	p.phases = len(names)
	return p
}

// Stage is how much help this attempt gets.
func (p *Prompter) Stage() Stage { return p.stage }

// Acted notes that the candidate has done something.
func (p *Prompter) Acted(now world.Tick) { p.acted = now }

// Resume takes up help again at a moment to which the attempt has been brought, with what was said until then.
func (p *Prompter) Resume(now world.Tick, said []Hint) {
	p.acted, p.found, p.held = now, 0, nil
	clear(p.told)
	clear(p.given)
	clear(p.asked)
	for _, h := range said {
		switch h.Cause {
		case Danger, Comment:
			p.told[h.About]++
			continue
		}
		for i := range p.steps {
			if p.steps[i].ID == h.About {
				p.given[i] = true
			}
		}
	}
}

// Look is called about ten times a second; it gives what is to be said now, if anything.
func (p *Prompter) Look(now world.Tick, w Work) []Hint {
	p.see(w)
	if w.Place() == world.Walking { // on the way is not hesitant
		p.acted = now
	}
	say := p.comments(now, w)
	if len(p.now) == 0 {
		return say
	}
	next := p.now[0]
	switch {
	case p.given[next] || p.stage > Weak:
	case p.stage == Full:
		say = append(say, p.hint(now, next, Told))
	case p.weak[next] && now-p.acted >= hesitates:
		say = append(say, p.hint(now, next, Hesitant))
	}
	return say
}

// Ask answers a candidate who asks for the next step. ok is false where there is no help left, or nothing to do.
func (p *Prompter) Ask(now world.Tick, w Work) (h Hint, ok bool) {
	p.see(w)
	if p.stage == Nothing || len(p.now) == 0 {
		return Hint{}, false
	}
	h = p.hint(now, p.now[0], Question)
	p.asked[p.now[0]] = true
	return h, true
}

// Open lists the steps that can be done now, the likeliest next first. It is good until the next Look.
func (p *Prompter) Open() []int { return p.now }

// Given reports whether a step has been told, so that it may stay on the screen until it is done.
func (p *Prompter) Given(step int) bool { return p.given[step] }

func (p *Prompter) hint(now world.Tick, step int, c Cause) Hint {
	p.given[step] = true
	return Hint{now, c, p.steps[step].ID, p.steps[step].Hint}
}

// see brings the open steps up to date. A step is past when it is done or when one that waits for it
// is: what has been left out is for the sheet.
func (p *Prompter) see(w Work) {
	for i := range p.steps {
		_, p.done[i] = w.StepDone(i)
		p.past[i] = p.done[i]
	}
	for i := len(p.steps) - 1; i >= 0; i-- { // the file's order is a legal one
		if p.done[i] {
			for _, j := range p.before[i] {
				p.past[j] = true
			}
		}
	}
	p.now = p.now[:0]
	for i := range p.steps {
		if !p.past[i] && p.ready(i) {
			p.now = append(p.now, i)
		}
	}
	p.rank(w.Place())
}

func (p *Prompter) ready(i int) bool {
	for _, j := range p.before[i] {
		if !p.past[j] {
			return false
		}
	}
	return true
}

// rank brings the likeliest next step to the front: one with a deadline, one where the candidate
// stands, the first in the drill.
func (p *Prompter) rank(at world.Place) {
	best, worth := -1, 0
	for n, i := range p.now {
		s := &p.steps[i]
		k := 1
		if s.Soon {
			k += 4
		}
		if s.Place == at || s.Place == world.Walking || at == world.Walking {
			k += 2
		}
		if k > worth {
			best, worth = n, k
		}
	}
	if best > 0 {
		first := p.now[best]
		copy(p.now[1:best+1], p.now[:best])
		p.now[0] = first
	}
}
