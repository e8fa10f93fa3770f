package report

import (
	"math"

	"steadyneedle/sim/unit"
)

// In writes the sheet in a system of units and returns it. A sheet is drawn up in US units, and turned
// once.
func (s *Sheet) In(sys unit.System) *Sheet {
	if sys == unit.US {
		return s
	}
	s.Title = sys.Prose(s.Title)
	s.Sums = s.Sums.In(sys)
	for i := range s.Findings {
		s.Findings[i].In(sys)
	}
	if s.Ruling != nil {
		r := *s.Ruling
		r.Waived = append([]Waived(nil), r.Waived...)
		for i := range r.Waived {
			r.Waived[i].Title = sys.Prose(r.Waived[i].Title)
		}
		s.Ruling = &r
	}
	for i := range s.Decisions {
		d := &s.Decisions[i]
		d.Title, d.Was = sys.Prose(d.Title), sys.Prose(d.Was)
	}
	for i := range s.Steps {
		s.Steps[i].Text = sys.Prose(s.Steps[i].Text)
	}
	for i := range s.Hints {
		s.Hints[i].Text = sys.Prose(s.Hints[i].Text)
	}
	for i := range s.Series {
		r := &s.Series[i]
		for k, v := range r.V {
			if r.Unit == "psi" && !math.IsNaN(v) {
				r.V[k], _ = sys.Compound(v)
			} else {
				r.V[k] = sys.From(v, r.Unit)
			}
		}
		r.Unit = sys.Unit(r.Unit)
	}
	if b := s.Band; b != nil {
		b.Lo, b.Hi = sys.From(b.Lo, "psi"), sys.From(b.Hi, "psi")
	}
	for i := range s.Facts {
		s.Facts[i][1] = sys.Prose(s.Facts[i][1])
	}
	return s
}

// In writes one finding in a system of units and returns it.
func (f *Finding) In(sys unit.System) *Finding {
	for _, text := range []*string{&f.Title, &f.Expected, &f.Measured, &f.Why} {
		*text = sys.Prose(*text)
	}
	for k := range f.Follows {
		f.Follows[k] = sys.Prose(f.Follows[k])
	}
	return f
}
