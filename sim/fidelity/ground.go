package fidelity

import (
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/plant"
	"steadyneedle/sim/rig"
)

// engine41 is the apparatus on trial, with gauges that read true: their bias has tests of its own.
func engine41() rig.Def {
	d := rig.Default()
	d.Instruments = d.Instruments.True()
	return d
}

// hose is a make of hose.
func hose(size, c, ft float64) fireground.HoseDef {
	return fireground.HoseDef{SizeIn: size, LossC: c, LengthFt: ft}
}

// tip is a smooth-bore tip.
func tip(size float64) *fireground.NozzleDef {
	np := 50.0
	if size > 1.25 {
		np = 80
	}
	return &fireground.NozzleDef{TipIn: size, RatedPSI: np}
}

// fog is a fog nozzle of fixed orifice.
func fog(gpm, psi float64) *fireground.NozzleDef {
	return &fireground.NozzleDef{RatedGPM: gpm, RatedPSI: psi}
}

// street is the lay that the twenty numbers belong to: a hydrant of 65 psi static and 45 residual at
// 1000 gpm, 25 ft of 4 in, 600 ft of 2½ with a 1⅛ tip.
func street() plant.Setup {
	return plant.Setup{
		Rig:     engine41(),
		Hydrant: fireground.HydrantDef{StaticPSI: 65, ResidualPSI: 45, FlowGPM: 1000},
		Supply:  hose(4, 0.2, 0),
		Line:    fireground.LineDef{Trunk: hose(2.5, 2, 600), Nozzle: tip(1.125)},
	}
}

const streetText = "Engine 41 in pump gear; hydrant 65 psi static, 45 psi at 1000 gpm; 25 ft of 4 in supply hose, bled; 600 ft of 2½ in hose with a 1⅛ in tip on discharge 1"

// onStreet has one or no line flowing from the street's hydrant.
func onStreet(m Model, s plant.Setup, lines int) *bench {
	b := set(m, s)
	b.reliefOut()
	b.inGear()
	b.onHydrant(25)
	for i := range lines {
		b.line(i)
	}
	return b
}

// pumpingLay has the street's line steady at its calculated pressure.
func pumpingLay(m Model) *bench {
	b := onStreet(m, street(), 1)
	b.throttleFor(lay, 0, b.gauge(0))
	b.settle()
	return b
}

// largeTank is a tank that a test does not empty: its level holds still.
const largeTank = 20000

// fromTank has one line flowing from a large tank.
func fromTank(m Model, line fireground.LineDef) *bench {
	s := street()
	s.Rig.Tank.Gallons = largeTank
	s.Rig.Tank.StartFraction = 0.9
	s.Line = line
	b := set(m, s)
	b.reliefOut()
	b.inGear()
	b.onTank()
	b.line(0)
	return b
}

const tankText = "Engine 41 in pump gear, pumping from a tank too large to fall (20,000 gal)"

// pond says how the water lies at draft, and with what it is primed.
type pond struct {
	lift, elevation float64 // ft
	waterF          float64
	primer          float64 // L/s; the apparatus's own when 0
	strong          bool    // the primer is large and reaches 29 inHg, and the pump is tight
	tip             float64 // in, on each line; 1¾ when 0
}

// atPond stands at open water with the pump in gear, dry: 20 ft of 6 in suction hose, and three short
// lines of large hose whose nozzles make any flow.
func atPond(m Model, w pond) *bench {
	s := street()
	s.Draft = &fireground.DraftDef{LiftFt: w.lift, SuctionFt: 20, SuctionIn: 6, ElevationFt: w.elevation}
	s.WaterF, s.AirF = w.waterF, 70
	s.Line = fireground.LineDef{Trunk: hose(4, 0.2, 25), Nozzle: tip(1.75)}
	if w.tip > 0 {
		s.Line.Nozzle.TipIn = w.tip
	}
	if w.primer > 0 {
		s.Rig.Primer.AirLS = w.primer
	}
	if w.strong {
		s.Rig.Primer.AirLS, s.Rig.Primer.MaxInHg, s.Rig.Pump.LeakInGPM = 60, 29, 0
	}
	b := set(m, s)
	b.reliefOut()
	b.inGear()
	return b
}

// rated pumps gpm at net psi from draft under the conditions of the rating: 10 ft of lift, 2000 ft above
// sea level, water of 60 °F.
func rated(m Model, gpm, net float64) *bench {
	b := atPond(m, pond{lift: 10, elevation: 2000, waterF: 60})
	b.primedLines()
	b.pumpAt(gpm, net)
	return b
}

const ratedText = "Engine 41 at draft: 10 ft of lift, 20 ft of 6 in suction hose, 2000 ft above sea level, water 60 °F; three short lines whose nozzles set the flow; relief valve wound in"

// primedLines primes the pump and lets a little water through three lines.
func (b *bench) primedLines() {
	b.prime()
	for i := range 3 {
		b.in.Lines[i].Attached = true
		b.nozzles(i, 0.1)
		b.turn(&b.in.Discharge[i], 1, 4)
	}
	b.run(15)
}
