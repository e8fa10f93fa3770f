package scenarios

import (
	"steadyneedle/scenarios/expression"
	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/drill"
)

// calculationFile is the department's calculation sheet: terms in its order, and its rounding.
type calculationFile struct {
	Stated   reader.Text `file:"stated" need:"yes"` // the phrase that states the result
	RoundPSI float64     `file:"round_psi" range:"0..50"`
	RoundKPA float64     `file:"round_kpa" range:"0..500"` // where the department reckons in SI
	Total    reader.Text `file:"total" need:"yes"`
	Terms    []termFile  `file:"terms" size:"1..12" need:"yes"`
}

type termFile = reader.At[term]

type term struct {
	ID      reader.Text `file:"id" need:"yes"`
	Title   string      `file:"title" need:"yes"`
	Unit    string      `file:"unit"`
	Adds    bool        `file:"adds"`
	Is      reader.Text `file:"is" need:"yes"`
	Working reader.Text `file:"working" need:"yes"`
	SI      reader.Text `file:"working_si"` // the working with the method's constants in SI
	Within  float64     `file:"within" range:"0..1000" need:"yes"`
}

// calculation compiles the sheet; nil where the drill has none.
func (b *builder) calculation() *drill.Calculation {
	f := b.file.Calculation
	if f == nil {
		return nil
	}
	c := &drill.Calculation{Stated: f.V.Stated.Value, RoundPSI: f.V.RoundPSI, RoundKPA: f.V.RoundKPA, Total: b.constant(f.V.Total)}
	if _, known := b.scope.control[c.Stated]; !known {
		b.at(f.V.Stated, 0, "unknown phrase %q, expected one of the candidate's", c.Stated)
	}
	seen := map[string]bool{"total": true}
	for i := range f.V.Terms {
		t := &f.V.Terms[i].V
		if seen[t.ID.Value] && t.ID.Given() {
			b.at(t.ID, 0, "term %q stands twice, or is the result's name; expected different ids", t.ID.Value)
		}
		seen[t.ID.Value] = true
		working, si := t.Working, t.SI
		if b.variant != nil {
			if other, ok := b.variant.Working[t.ID.Value]; ok {
				working, si = other, reader.Text{} // what belongs to the other working goes with it
			}
			if other, ok := b.variant.WorkingSI[t.ID.Value]; ok {
				si = other
			}
		}
		b.expected(working)
		b.expected(si)
		c.Terms = append(c.Terms, drill.Term{ID: t.ID.Value, Title: t.Title, Unit: t.Unit, Adds: t.Adds, Is: b.constant(t.Is), Working: working.Value, WorkingSI: si.Value, Within: t.Within})
	}
	if b.variant != nil {
		for _, workings := range []map[string]reader.Text{b.variant.Working, b.variant.WorkingSI} {
			for id, text := range workings {
				if !seen[id] || id == "total" {
					b.at(text, 0, "the calculation has no term %q", id)
				}
			}
		}
	}
	return c
}

// constant compiles a number without time words: it is looked at once.
func (b *builder) constant(t reader.Text) *cond.Program {
	p := b.compile(t, expression.Number, b.scope.truth)
	if p == nil {
		return expression.Constant("0", 0)
	}
	if p.Slots > 0 {
		b.at(t, 0, "time words are not for a calculation, expected what is so at the moment")
	}
	return p
}
