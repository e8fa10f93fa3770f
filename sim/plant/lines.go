package plant

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
)

const leakAt = 10 // √100 psi: leaks are given at 100 psi

// setLine brings one discharge, and what hangs on it, to what in says.
func (p *Plant) setLine(in *In, i int) {
	s := &p.slots[i]
	l := &in.Lines[i]
	d := &p.setup.Rig.Discharges[i]
	r, open := s.valve.Resistance(in.Discharge[i])
	setLink(s.way, r, open)

	wants := l.Attached && s.trunk != nil
	if wants != s.attached || wants && (l.LengthFt != s.lengthFt || l.SizeIn != s.sizeIn || l.LossC != s.lossC) {
		p.layLine(s, l)
	}
	s.shares = [3]float64{float64(d.DrainCv * bound.Within(in.Drain[i], 0, 1))}
	if wants {
		s.shares[2] = float64(handTightCv*looseness(l.Tight)) + l.Leak/leakAt
	} else if l.CapOff && !s.taken {
		s.shares[1] = float64(30 * float64(d.Valve.SizeIn*d.Valve.SizeIn)) // an open outlet, as a nozzle of its size
	}
	r, open = rig.FlowResistance(s.shares[0]+s.shares[1]+s.shares[2], 1)
	setLink(s.vent, r, open)
	if !s.attached {
		return
	}
	s.trunk.Kink(l.Kink)
	s.trunk.Hole(l.Burst, float64(fireground.SecondLineGPM*l.Second))
	for k, z := range s.nozzles {
		z.Set(l.Nozzle[k])
	}
}

// layLine lays the slot's hoses out, dry, or takes them away.
func (p *Plant) layLine(s *slot, l *Line) {
	s.attached, s.lengthFt, s.sizeIn, s.lossC = l.Attached, l.LengthFt, l.SizeIn, l.LossC
	def := &p.setup.Line
	length, rise := 0.0, 0.0
	if l.Attached {
		length = bound.AtLeast(l.LengthFt, 1)
	} else {
		for _, z := range s.nozzles {
			z.Set(0)
		}
	}
	if def.Nozzle != nil {
		rise = def.Nozzle.RiseFt
	}
	trunk := def.Trunk
	if l.SizeIn > 0 {
		trunk.SizeIn = l.SizeIn
	}
	if l.LossC > 0 {
		trunk.LossC = l.LossC
	}
	s.trunk.Lay(p.net, trunk, length, rise, 0)
	s.trunk.Soften(p.net, headVolume)
	for k, h := range s.branches {
		b := &def.Branches[k]
		length = 0
		if l.Attached {
			length = b.Hose.LengthFt
		}
		h.Lay(p.net, b.Hose, length, b.Nozzle.RiseFt, 0)
	}
}

// findHoses lists the hoses that lie: they follow their filling before every step of the network.
func (p *Plant) findHoses() {
	p.hoses = append(p.hoses[:0], p.supply)
	for i := range p.slots {
		if s := &p.slots[i]; s.attached {
			p.hoses = append(append(p.hoses, s.trunk), s.branches...)
		}
	}
}

// fill is the water in the slot's hoses over their content.
func (s *slot) fill() float64 {
	if !s.attached {
		return 0
	}
	water, content := s.trunk.End.Water, s.trunk.Content()
	for _, h := range s.branches {
		water += h.End.Water
		content += h.Content()
	}
	return bound.Within(water/content, 0, 1)
}

// leaks is what the slot's line loses at its coupling, through a burst and to a second line, gpm.
func (s *slot) leaks() float64 {
	if !s.attached {
		return 0
	}
	return s.vented(2) + s.trunk.LossGPM()
}

// vented is what leaves at share k (0 drain, 1 open outlet, 2 leak) of the slot's vent, gpm of water.
func (s *slot) vented(k int) float64 {
	all := s.shares[0] + s.shares[1] + s.shares[2]
	if all <= 0 {
		return 0
	}
	return float64(bound.AtLeast(s.vent.WaterFlow()/unit.M3SPerGPM, 0) * (s.shares[k] / all))
}
