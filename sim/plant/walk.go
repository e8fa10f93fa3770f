package plant

import "steadyneedle/sim/state"

// Walk visits everything that a later tick depends on. After loading, Out is what it was.
func (p *Plant) Walk(w *state.Walker) {
	p.net.Walk(w)
	p.supply.Walk(w)
	for i := range p.slots {
		p.slots[i].walk(w)
	}
	p.engine.Walk(w)
	p.drive.Walk(w)
	p.pump.Walk(w)
	p.control.walk(w)
	p.tank.Walk(w)
	p.primer.Walk(w)
	p.cooling.Walk(w)
	p.casing.Walk(w)
	p.needles.walk(w)
	p.pulse.Walk(w)
	p.was.walk(w)
	p.laid.Walk(w)
	for _, x := range [...]*float64{&p.wetness, &p.heat, &p.valveStill, &p.lastIntake, &p.surge, &p.asked} {
		w.Float(x)
	}
	p.out.walk(w)
	if w.Loading() {
		p.warm()
	}
}

func (l *laid) walk(w *state.Walker) {
	for _, x := range [...]*float64{&l.supply.LengthFt, &l.supply.SizeIn, &l.supply.LossC} {
		w.Float(x)
	}
	w.Bool(&l.atEngine)
	w.Bool(&l.atPlug)
}

func (s *slot) walk(w *state.Walker) {
	w.Bool(&s.attached)
	w.Float(&s.lengthFt)
	w.Float(&s.sizeIn)
	w.Float(&s.lossC)
	w.Floats(s.shares[:])
	if s.trunk == nil {
		return
	}
	s.trunk.Walk(w)
	for _, h := range s.branches {
		h.Walk(w)
	}
}
