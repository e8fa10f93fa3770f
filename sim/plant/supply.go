package plant

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
)

const (
	handTightCv = 0.7   // gpm at 1 psi that a hand-tight coupling leaks (assumption)
	openEndCv   = 500.0 // gpm at 1 psi of a supply hose's open end (assumption)
	dryAir      = 0.15  // share of a dry supply hose that is air once it is under the hydrant's pressure
	restS       = 10.0  // s for which the intake's wheel must rest before its surge is counted anew
)

// setSupply brings hydrant, supply hose and intake to what in says.
func (p *Plant) setSupply(in *In) {
	if p.hydrant == nil {
		r, open := rig.FlowResistance(draftCv, 1)
		setLink(p.way.intake, r, open)
		r, open = rig.FlowResistance(p.setup.Rig.Intake.BleederCv, in.Bleeder)
		setLink(p.way.bleeder, r, open) // it lets air in there
		return
	}
	s := &in.Supply
	atEngine, atPlug := s.AtEngine > 0, s.AtHydrant > 0
	p.hydrant.Set(in.Hydrant.Open, in.Hydrant.CapOff && !(atPlug && s.LengthFt > 0), bound.AtMost(in.Shock.StaticDropPSI, p.setup.Hydrant.StaticPSI))
	p.laySupply(s, atEngine, atPlug)

	kink := s.Kink
	if !atPlug {
		kink = 1
	}
	p.supply.Kink(kink)
	p.supply.Hole(s.Burst, 0)
	p.ventSupply(s, atEngine, atPlug)

	r, open := rig.FlowResistance(p.setup.Rig.Intake.BleederCv, in.Bleeder)
	setLink(p.way.bleeder, r, open && atEngine)
	r, open = p.intake.Resistance(in.Intake)
	setLink(p.way.intake, r, open && atEngine && s.LengthFt > 0)
}

// letAir says how a suction hose gives its air to the pump: alone while the water rises in it, first later.
func (p *Plant) letAir() {
	if p.hydrant != nil {
		return
	}
	p.way.intake.Carry = risesFirst
	if p.supply.Filling() {
		p.way.intake.Carry = airAlone
	}
}

// laySupply lays the hose out, dry, when it is brought, changed or uncoupled at either end.
func (p *Plant) laySupply(s *Supply, atEngine, atPlug bool) {
	was := &p.was
	loose := was.atEngine && !atEngine || was.atPlug && !atPlug
	if s.LengthFt == was.supply.LengthFt && s.SizeIn == was.supply.SizeIn && s.LossC == was.supply.LossC && !loose {
		was.atEngine, was.atPlug = atEngine, atPlug
		return
	}
	*was = laid{supply: *s, atEngine: atEngine, atPlug: atPlug}
	def := p.setup.Supply
	if s.SizeIn > 0 {
		def.SizeIn = s.SizeIn
	}
	if s.LossC > 0 {
		def.LossC = s.LossC
	}
	static := float64(p.setup.Hydrant.StaticPSI * unit.PaPerPSI)
	air := float64(dryAir*(static+p.patm)) / p.patm
	p.supply.Lay(p.net, def, s.LengthFt, -p.setup.Hydrant.ElevationFt, bound.AtMost(air, 0.97))
	p.supply.Radiate()
}

// ventSupply opens the hose to the air where it has an open end or a coupling that is not tight.
func (p *Plant) ventSupply(s *Supply, atEngine, atPlug bool) {
	cv := 0.0
	if s.LengthFt > 0 {
		if !atEngine || !atPlug {
			cv += openEndCv
		}
		cv += float64(handTightCv * (looseness(s.AtEngine) + looseness(s.AtHydrant)))
	}
	r, open := rig.FlowResistance(cv, 1)
	setLink(p.way.vent, r, open)
}

// looseness is how open a coupling is: 1 hand-tight (0.5), 0 tight (1) or off (0).
func looseness(tight float64) float64 {
	if tight <= 0 {
		return 0
	}
	return bound.Within(2-float64(2*tight), 0, 1)
}

// watchIntake follows the surge that opening or shutting the intake makes, on either side of its valve: a
// valve that is opened lets the column strike the pump, one that is shut stops it in the hose.
func (p *Plant) watchIntake(in *In) {
	if in.Intake == p.lastIntake {
		p.valveStill += tick
	} else {
		if opens := p.lastIntake <= 0.02 && in.Intake > p.lastIntake; opens || p.valveStill >= restS {
			p.surge = 0
		}
		p.valveStill, p.lastIntake = 0, in.Intake
	}
	over := bound.AtLeast(p.at.eye.P, p.supply.End.P)/unit.PaPerPSI - p.setup.Hydrant.StaticPSI
	if p.valveStill < restS {
		p.surge = bound.AtLeast(p.surge, over)
	}
}
