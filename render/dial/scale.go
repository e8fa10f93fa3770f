package dial

import (
	"fmt"
	"math"
)

// Sweep is the arc of a dial: 270°, clockwise, open at the bottom.
const (
	From = -135.0
	To   = 135.0
)

// Part is a stretch of a scale over which equal values take equal angles.
type Part struct {
	Lo, Hi   float64 // values at its ends
	From, To float64 // their bearings, degrees clockwise from straight up
	Mark     float64 // step of the smallest marks, counted from Lo
	Mid      float64 // step of the longer marks
	Major    float64 // step of the longest marks
	Number   float64 // step of the numbers
}

// Scale is what stands on a dial.
type Scale struct {
	Parts  []Part
	Unit   string                 // on the face
	Below  string                 // unit of the part below zero, if it is another one
	Label  func(v float64) string // a number as it is written; nil: the plain number
	Ranges []Range
	from   func(v float64) float64 // from a signal to what is shown; nil: the same
}

// Range is a stretch that the face marks, with the reason it is marked.
type Range struct{ Lo, Hi float64 }

// Even is a scale of equal steps from lo to hi, marked at every division.
func Even(lo, hi, division float64, unit string) *Scale {
	major := step(hi-lo, 8)
	return &Scale{Parts: []Part{{lo, hi, From, To, division, mid(division, major), major, major}}, Unit: unit}
}

// Sparse leaves out every other number and every other small mark: for small dials, where they would
// run together.
func (s *Scale) Sparse() *Scale {
	for i := range s.Parts {
		p := &s.Parts[i]
		p.Number *= 2
		if p.Mid == 2*p.Mark && whole(p.Major/p.Mid) {
			p.Mark, p.Mid = p.Mid, mid(p.Mid, p.Major)
		}
	}
	return s
}

// mid is the step of the marks between division and major: the tens between fives, or halves.
func mid(division, major float64) float64 {
	if m := division * 2; whole(major / m) {
		return m
	}
	return major / 2
}

// Compound is a scale that reads vacuum down to low inHg (given as a positive number) below zero and
// pressure up to high psi above.
func Compound(low, high, division float64) *Scale {
	const zero = -66
	major := step(high, 8)
	s := &Scale{Parts: []Part{
		{-low, 0, From, zero, 2, 10, 10, 10},
		{0, high, zero, To, division, mid(division, major), major, 2 * major},
	}, Unit: "psi", Below: "inHg vac"}
	s.Label = func(v float64) string { return fmt.Sprintf("%.0f", math.Abs(v)) }
	s.Ranges = []Range{{-low, 0}}
	return s
}

// step is the step of 1, 2 or 5 × 10ⁿ nearest above span/n.
func step(span float64, n int) float64 {
	x := span / float64(n)
	p := math.Pow(10, math.Floor(math.Log10(x)+1e-9))
	for _, k := range []float64{1, 2, 5} {
		if k*p >= x-1e-9 {
			return k * p
		}
	}
	return 10 * p
}

// Bearing is where the needle stands at v. Beyond the ends it rests a little past the last mark.
func (s *Scale) Bearing(v float64) float64 {
	first, last := &s.Parts[0], &s.Parts[len(s.Parts)-1]
	const rest = 4
	switch {
	case math.IsNaN(v):
		return first.From - rest
	case v < first.Lo:
		return max(first.From-rest, first.From-(first.Lo-v)*perUnit(first))
	case v > last.Hi:
		return min(last.To+rest, last.To+(v-last.Hi)*perUnit(last))
	}
	for i := range s.Parts {
		if p := &s.Parts[i]; v <= p.Hi {
			return p.From + (v-p.Lo)*perUnit(p)
		}
	}
	return last.To
}

func perUnit(p *Part) float64 { return (p.To - p.From) / (p.Hi - p.Lo) }

// mark is one line of a scale.
type mark struct {
	value, bearing float64
	size           int // 0 smallest, 1 middle, 2 longest
	number         bool
}

func (s *Scale) marks() []mark {
	var all []mark
	for i := range s.Parts {
		p := &s.Parts[i]
		n := int(math.Round((p.Hi - p.Lo) / p.Mark))
		for k := range n + 1 {
			if k == 0 && i > 0 {
				continue // the part before has drawn it
			}
			v := p.Lo + float64(k)*p.Mark
			m := mark{value: v, bearing: s.Bearing(v), number: whole((v - p.Lo) / p.Number)}
			switch {
			case whole((v - p.Lo) / p.Major):
				m.size = 2
			case whole((v - p.Lo) / p.Mid):
				m.size = 1
			}
			all = append(all, m)
		}
	}
	return all
}

func whole(x float64) bool { return math.Abs(x-math.Round(x)) < 1e-6 }

func (s *Scale) label(v float64) string {
	if s.Label != nil {
		return s.Label(v)
	}
	return fmt.Sprintf("%.0f", v)
}
