package fidelity

import (
	"fmt"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
)

// hoses are the sizes with a published coefficient, each with the length and flow it is tried at and
// the tip that lets the flow through.
var hoses = [...]struct {
	id, text         string
	size, c, ft, gpm float64
	tip              float64
	source           Source
}{
	{"0.75", "¾ in", 0.75, 1100, 100, 25, 0.375, hoseMemory},
	{"1", "1 in", 1, 150, 150, 40, 0.4375, handouts},
	{"1.25", "1¼ in", 1.25, 80, 150, 60, 0.5, hoseMemory},
	{"1.5", "1½ in", 1.5, 24, 200, 100, 0.6875, handouts},
	{"1.75", "1¾ in", 1.75, 15.5, 200, 160, 0.875, handouts},
	{"2", "2 in", 2, 8, 250, 200, 1, handouts},
	{"2.5", "2½ in", 2.5, 2, 400, 250, 1.125, handouts},
	{"3-2.5", "3 in with 2½ in couplings", 3, 0.8, 500, 350, 1.25, handouts},
	{"3", "3 in with 3 in couplings", 3, 0.677, 500, 350, 1.25, handouts},
	{"3.5", "3½ in", 3.5, 0.34, 600, 450, 1.5, handouts},
	{"4", "4 in", 4, 0.2, 800, 600, 1.75, handouts},
	{"4.5", "4½ in", 4.5, 0.1, 1000, 750, 2, handouts},
	{"5", "5 in", 5, 0.08, 1000, 900, 2.25, handouts},
	{"6", "6 in", 6, 0.05, 1000, 1000, 2.25, hoseMemory},
}

// hoseTrials pump every hose at a set flow and read what the hose takes.
func hoseTrials() []Trial {
	var list []Trial
	for _, h := range hoses {
		expected := hydraulics.FrictionLoss(h.c, unit.GPM(h.gpm), unit.Feet(h.ft))
		list = append(list, frictionTrial("hose-"+h.id, fmt.Sprintf("%g ft of %s hose at %g gpm", h.ft, h.text, h.gpm),
			hose(h.size, h.c, h.ft), h.gpm, h.tip, float64(expected), formulaPSI(), h.source))
	}
	for i, e := range [...]struct{ gpm, ft, size, c, tip, psi float64 }{
		{200, 100, 2.5, 2, 1, 8}, {100, 300, 2.5, 2, 0.75, 6}, {200, 400, 2.5, 2, 1, 32},
	} {
		list = append(list, frictionTrial(fmt.Sprintf("example-%d", i+1), fmt.Sprintf("Worked example: %g gpm through %g ft of 2½ in hose", e.gpm, e.ft),
			hose(e.size, e.c, e.ft), e.gpm, e.tip, e.psi, formulaPSI(), rohnertPark))
	}
	for _, ft := range [...]float64{-30, 30, 60} {
		list = append(list, elevationTrial(ft))
	}
	return list
}

// elevationTrial pumps up a slope and reads what the height takes.
func elevationTrial(ft float64) Trial {
	return Trial{
		initial: fmt.Sprintf("%s; 200 ft of 2½ in with a 1 in tip, %g ft above the pump", tankText, ft),
		begin: func(m Model) *bench {
			z := tip(1)
			z.RiseFt = ft
			return fromTank(m, fireground.LineDef{Trunk: hose(2.5, 2, 200), Nozzle: z})
		},
		checks: []check{{
			Test: record(fmt.Sprintf("elevation-%g", ft), Steady, fmt.Sprintf("A nozzle %g ft above the pump", ft), "Height takes the weight of the column; the field's half a psi a foot is the same on the safe side.",
				"Throttle to 120 psi behind the discharge valve; wait until steady; take the hose's friction off the difference to the nozzle.", "pressure that the height takes", "psi",
				float64(hydraulics.ElevationExact(unit.Feet(ft))), formulaPSI(), Source{Computed, "0.434 psi a foot, the weight of water"}),
			measure: func(b *bench) float64 {
				b.throttleFor(120, 0, b.gauge(0))
				return b.snap(func() float64 {
					l := &b.o.Lines[0]
					return l.ValvePSI - l.NozzlePSI[0] - float64(hydraulics.FrictionLoss(2, unit.GPM(l.NozzleGPM[0]), 200))
				})
			},
		}},
	}
}

// frictionTrial pumps gpm through a hose and reads its loss.
func frictionTrial(id, title string, h fireground.HoseDef, gpm, size, psi float64, tol Tolerance, source Source) Trial {
	return Trial{
		initial: fmt.Sprintf("%s; %g ft of hose of %s in, C = %g, with a tip of %g in", tankText, h.LengthFt, inches(h.SizeIn), h.LossC, size),
		begin: func(m Model) *bench {
			return fromTank(m, fireground.LineDef{Trunk: h, Nozzle: tip(size)})
		},
		checks: []check{{
			Test: Test{
				ID: id, Area: Steady, Title: title, Objective: "Friction loss follows C (Q/100)² L/100.",
				Steps:    fmt.Sprintf("Throttle until %g gpm flow; wait until steady; read pressure at the discharge's gauge tap and at the nozzle.", gpm),
				Compared: "pressure behind the discharge valve less nozzle pressure", Unit: "psi", Expected: psi, Tolerance: tol, Source: source,
			},
			measure: func(b *bench) float64 {
				b.throttleFor(gpm, 0, b.gpm(0))
				return b.snap(func() float64 { return b.o.Lines[0].ValvePSI - b.o.Lines[0].NozzlePSI[0] })
			},
		}},
	}
}

// contentTrials fill a hose with its nozzle open and count the water that stays in it.
func contentTrials() []Trial {
	var list []Trial
	perFoot := Source{Computed, "4.08 d² gal per 100 ft"}
	for _, c := range [...]struct {
		size, loss, ft, tip, gal float64
		source                   Source
		tol                      Tolerance
	}{
		{1.5, 24, 100, 0.5, 9.2, nwcgContent, formula(0.02)},
		{1, 150, 100, 0.375, 4.1, nwcgContent, formula(0.02)},
		{1.75, 15.5, 200, 0.9375, 25, perFoot, statedShare(0.03)},
		{2.5, 2, 400, 1.125, 102, perFoot, statedShare(0.03)},
		{2.5, 2, 600, 1.125, 153, perFoot, statedShare(0.03)},
	} {
		with := func(m Model, ft float64) *bench {
			s := street()
			s.Line = fireground.LineDef{Trunk: hose(c.size, c.loss, ft), Nozzle: tip(c.tip)}
			return onStreet(m, s, 0)
		}
		list = append(list, Trial{
			initial: fmt.Sprintf("Engine 41 in gear at idle on the hydrant; %g ft of %s in hose laid dry, nozzle open", c.ft, inches(c.size)),
			begin:   func(m Model) *bench { return with(m, c.ft+stubFt) },
			checks: []check{{
				Test: Test{
					ID: fmt.Sprintf("content-%g-%g", c.size, c.ft), Area: Steady, Title: fmt.Sprintf("Content of %g ft of %s in hose", c.ft, inches(c.size)),
					Objective: "A hose holds its volume of water.",
					Steps:     "Open the discharge in 4 s; let it fill and run 30 s; count what went in less what left at the nozzle. Do the same with a stub of 10 ft, and take that off: what is left is hose alone.",
					Compared:  "water that went in less water that came out", Unit: "gal", Expected: c.gal, Tolerance: c.tol, Source: c.source,
				},
				measure: func(b *bench) float64 { return b.fillsWith() - with(b.model, stubFt).fillsWith() },
			}},
		})
	}
	return list
}

// stubFt is a length of hose that is tried beside the hose in question.
const stubFt = 10

// fillsWith opens the dry line on discharge 1 and returns the water, gal, that stays in it.
func (b *bench) fillsWith() float64 {
	held := 0.0
	b.watch = func() {
		held += float64((b.o.Lines[0].GPM - b.o.Lines[0].NozzleGPM[0]) * (tick / 60))
	}
	b.line(0)
	b.run(30)
	return held
}
