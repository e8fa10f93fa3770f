package judge

import (
	"slices"
	"strings"

	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// Scale turns findings into a score.
type Scale struct {
	Full                 float64
	Minor, Error, Unsafe float64 // taken off for each
	Pass                 float64
	UnsafeFails          bool
}

// Sheet is what came of an attempt, by onset.
type Sheet struct {
	Findings     []Finding
	Consequences []Consequence // what was found but followed from another finding; it takes nothing off
	Score, Full  float64
	Passed       bool
}

// Consequence is a finding that another one explains.
type Consequence struct {
	Finding
	Of string // rule of the finding that explains it
}

// absorbTicks is how far apart in onset cause and consequence may lie unless the rule says (assumption).
const absorbTicks = 60 * world.TicksPerSecond

// Sheet draws up the sheet as things stand.
func (j *Judge) Sheet() *Sheet {
	s := &Sheet{Full: j.scale.Full}
	order := j.byOnset()
	for _, n := range order {
		f := j.finding(&j.records[n])
		if by := j.absorber(n, order); by >= 0 {
			s.Consequences = append(s.Consequences, Consequence{f, j.rule(j.root(by, order)).ID})
			continue
		}
		s.Findings = append(s.Findings, f)
	}
	s.Score, s.Passed = j.scale.Rate(s.Findings)
	return s
}

// Rate is the score that findings leave, and whether it passes.
func (c *Scale) Rate(list []Finding) (score float64, passed bool) {
	score = c.Full
	unsafe := false
	for i := range list {
		switch list[i].Severity {
		case Minor:
			score -= c.Minor
		case Error:
			score -= c.Error
		default:
			score -= c.Unsafe
			unsafe = true
		}
	}
	score = max(0, score)
	return score, score >= c.Pass && !(unsafe && c.UnsafeFails)
}

// Found is the number of findings so far, consequences included; a window asks it every frame.
func (j *Judge) Found() int { return len(j.records) }

func (j *Judge) rule(record int) *Rule { return j.watches[j.records[record].rule].rule }

// byOnset lists the records by onset, and those of one moment in the order of the rules.
func (j *Judge) byOnset() []int {
	order := make([]int, len(j.records))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		ra, rb := &j.records[a], &j.records[b]
		if ra.from != rb.from {
			return int(ra.from - rb.from)
		}
		return ra.rule - rb.rule
	})
	return order
}

// root finds the record that stands on the sheet for a record that explains others, and may itself be
// explained.
func (j *Judge) root(n int, order []int) int {
	for range order { // no longer than there are records, should they explain one another in a circle
		by := j.absorber(n, order)
		if by < 0 {
			return n
		}
		n = by
	}
	return n
}

// absorber finds the record that explains record n, or −1. Of two that claim each other the earlier
// stands.
func (j *Judge) absorber(n int, order []int) int {
	before := true // whether m comes before n
	for _, m := range order {
		if m == n {
			before = false
			continue
		}
		if j.absorbs(m, n) && (before || !j.absorbs(n, m)) {
			return m
		}
	}
	return -1
}

// absorbs reports whether record m's rule names record n's as a consequence, and n is near enough.
func (j *Judge) absorbs(m, n int) bool {
	r := j.rule(m)
	if !slices.Contains(r.Absorbs, j.rule(n).ID) {
		return false
	}
	within := r.AbsorbFor
	if within == 0 {
		within = absorbTicks
	}
	apart := j.records[n].from - j.records[m].from
	return apart <= within && apart >= -within
}

// finding puts a record into words.
func (j *Judge) finding(r *record) Finding {
	w := &j.watches[r.rule]
	amiss := w.amiss(r)
	f := Finding{
		Rule: w.rule.ID, Severity: w.rule.Severity, From: r.from, Seen: r.seen, Mended: r.mended, Place: r.place,
		Title: w.rule.Title, Why: w.rule.Why,
		Expected: w.expected.fill(r.names[:]), Amiss: len(amiss) > 0, Measured: w.measured(amiss, r),
	}
	if r.mended > 0 {
		f.Severity = Minor
		if f.Measured != "" {
			f.Measured += "; "
		}
		f.Measured += "put right at " + unit.Clock(r.mended.Seconds())
	}
	return f
}

// amiss lists in words which of the things that can break the rule were so.
func (w *watch) amiss(r *record) []string {
	var list []string
	for i := range w.rule.Found {
		if r.amiss>>i&1 != 0 {
			list = append(list, w.rule.Found[i].Say)
		}
	}
	return list
}

// measured says what was found instead: what was amiss, and the number.
func (w *watch) measured(amiss []string, r *record) string {
	list := amiss
	if number := w.reading(r); number != "" {
		list = append(list, number)
	}
	return strings.Join(list, "; ")
}

// reading says what was measured.
func (w *watch) reading(r *record) string {
	unit := w.rule.ShowUnit
	if unit == "" {
		unit = w.unit
	}
	switch r.how {
	case nothing:
		return ""
	case number:
		if w.rule.Kind == Rate && !r.shown {
			return Number(r.measured, "s") + " for full travel"
		}
		return Number(r.measured, unit)
	case notSaid:
		return "not said"
	}
	return trialWords(r.how, r.measured)
}
