package prompter

import (
	"slices"

	"steadyneedle/sim/drill"
)

// Tried is what one earlier attempt at a drill showed.
type Tried struct {
	Missed  []string // steps left out, done out of order, or found faulty
	Hinted  []string // steps that were told
	AgoDays float64  // since it ended
}

// History is all earlier attempts at one drill, oldest first. Rated attempts count as much as rehearsals.
type History []Tried

// Stage is how much help there is.
type Stage uint8

const (
	Full    Stage = iota // every next step
	Weak                 // steps missed before, after hesitation; others when asked for
	Asked                // only what is asked for
	Nothing              // none
)

// String names the stage as screens and sheets do.
func (s Stage) String() string {
	switch s {
	case Full:
		return "every step"
	case Weak:
		return "steps missed before"
	case Asked:
		return "only on asking"
	}
	return "none"
}

// Stage is how much help the next attempt gets: all of it on the first, and less with each attempt in
// which nothing was missed.
func (h History) Stage() Stage {
	n := len(h)
	switch {
	case n == 0:
		return Full
	case len(h[n-1].Missed) > 0:
		return Weak
	case n > 1 && len(h[n-2].Missed) == 0 && len(h[n-1].Hinted) == 0:
		return Nothing
	}
	return Asked
}

// unaided is how often in a row a step must be done right without help before it is no longer weak.
const unaided = 2

// Weak reports whether a step was missed before and has not been done right without help often enough since.
func (h History) Weak(step string) bool {
	clean := 0
	for i := len(h) - 1; i >= 0 && clean < unaided; i-- {
		switch {
		case slices.Contains(h[i].Missed, step):
			return true
		case !slices.Contains(h[i].Hinted, step):
			clean++
		}
	}
	return false
}

// CameBack reports whether a step was missed in at least two attempts, one of them among the last two.
func (h History) CameBack(step string) bool {
	n := h.Misses(step)
	for i := max(0, len(h)-2); i < len(h); i++ {
		if slices.Contains(h[i].Missed, step) {
			return n >= 2
		}
	}
	return false
}

// Misses is in how many attempts a step was missed.
func (h History) Misses(step string) int {
	n := 0
	for i := range h {
		if slices.Contains(h[i].Missed, step) {
			n++
		}
	}
	return n
}

// Exercise is a step that wants practice.
type Exercise struct {
	Step     drill.Step
	Misses   int     // attempts in which it was missed
	Of       int     // attempts
	CameBack bool    // see History.CameBack
	Need     float64 // 0 to 1: how likely it is to be missed again
}

// Practice lists the steps that were missed before, the likeliest to be missed again first: the next
// session begins with them. Steps never missed are not in it.
func (h History) Practice(steps []drill.Step) []Exercise {
	var list []Exercise
	for _, s := range steps {
		if n := h.Misses(s.ID); n > 0 {
			list = append(list, Exercise{s, n, len(h), h.CameBack(s.ID), h.need(s.ID)})
		}
	}
	slices.SortStableFunc(list, func(a, b Exercise) int {
		switch {
		case a.Need > b.Need:
			return -1
		case a.Need < b.Need:
			return 1
		}
		return 0
	})
	return list
}

const (
	firstDays = 1.0 // how long a step done right once is held (assumption)
	lasting   = 2.5 // each time it is done right again, it is held so much longer (assumption)
	recent    = 0.6 // an attempt counts so much against the one after it (assumption)
	aided     = 0.5 // done after a hint is half known (assumption)
)

// need is the chance that a step is missed: by its record, the recent attempts counting most, and by
// the days since it was last done, held the longer the more often it was right.
func (h History) need(step string) float64 {
	missed, all, weight := 0.0, 0.0, 1.0
	for i := len(h) - 1; i >= 0; i-- {
		all += weight
		switch {
		case slices.Contains(h[i].Missed, step):
			missed += weight
		case slices.Contains(h[i].Hinted, step):
			missed += float64(aided * weight)
		}
		weight = float64(recent * weight)
	}
	held := firstDays
	for i := range h {
		switch {
		case slices.Contains(h[i].Missed, step):
			held = firstDays
		case !slices.Contains(h[i].Hinted, step):
			held = float64(lasting * held)
		}
	}
	known := 1 - missed/all
	days := max(0, h[len(h)-1].AgoDays)
	return 1 - known/(1+days/float64(9*held)) // a power law of forgetting (Wixted and Ebbesen 1991) [M]
}
