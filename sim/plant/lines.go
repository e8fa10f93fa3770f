package plant

import (
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
)

const (
	leakAt      = 10     // √100 psi: leaks are given at 100 psi
	softGive    = 2000.0 // Pa below atmosphere at which the hose behind the valve lies flat (assumption)
	nearShare   = 0.36   // of a hose's elasticity sits at the end the water comes from
	usualWave   = 600.0  // ft/s, as package fireground takes it
	mostDamping = 0.2    // s (assumption)
	softPart    = 0.05   // share of the hose's content that can be drawn out behind a shut valve (assumption)
)

// setLine brings one discharge, and what hangs on it, to what in says.
func (p *Plant) setLine(in *In, i int) {
	s := &p.slots[i]
	l := &in.Lines[i]
	d := &p.setup.Rig.Discharges[i]
	r, open := s.valve.Resistance(in.Discharge[i])
	setLink(p.net.Link(s.way), r, open)

	if l.Attached != s.attached || l.Attached && l.LengthFt != s.lengthFt {
		p.layLine(s, l)
	}
	s.shares = [3]float64{float64(d.DrainCv * max(0, min(1, in.Drain[i])))}
	if l.Attached {
		s.shares[2] = float64(handTightCv*looseness(l.Tight)) + l.Leak/leakAt
	} else if l.CapOff {
		s.shares[1] = float64(30 * float64(d.Valve.SizeIn*d.Valve.SizeIn)) // an open outlet, as a nozzle of its size
	}
	r, open = rig.FlowResistance(s.shares[0]+s.shares[1]+s.shares[2], 1)
	setLink(p.net.Link(s.vent), r, open)
	if !s.attached {
		return
	}
	s.trunk.Kink(l.Kink)
	for k, z := range s.nozzles {
		z.Set(p.net, l.Nozzle[k])
	}
}

// layLine lays the slot's hoses out, dry, or takes them away.
func (p *Plant) layLine(s *slot, l *Line) {
	s.attached, s.lengthFt = l.Attached, l.LengthFt
	def := &p.setup.Line
	length, rise := 0.0, 0.0
	if l.Attached {
		length = max(1, l.LengthFt)
	} else {
		for _, z := range s.nozzles {
			z.Set(p.net, 0)
		}
	}
	if def.Nozzle != nil {
		rise = def.Nozzle.RiseFt
	}
	s.trunk.Lay(p.net, def.Trunk, length, rise, 0)
	p.soften(s)
	for k, h := range s.branches {
		b := &def.Branches[k]
		length = 0
		if l.Attached {
			length = b.Hose.LengthFt
		}
		h.Lay(p.net, b.Hose, length, b.Nozzle.RiseFt, 0)
	}
}

// soften lets the hose's first part go flat behind the valve: shut with the nozzle open, the column
// runs on and draws it empty. Were it stiff there, the column would part and strike back.
func (p *Plant) soften(s *slot) {
	n := p.net.Node(s.head)
	n.Volume, n.Soft, n.Tau = headVolume, flownet.SoftWall{}, 0
	if s.attached {
		n.Tau = p.waveDamping(s)
		n.Volume += s.trunk.Lend(p.net, softPart)
		n.Soft = flownet.SoftWall{Give: softGive, Flat: min(0.9, headVolume/n.Volume), Floor: float64(0.05 * n.Stretch)}
	}
	p.net.SetWater(s.head, 0)
	p.net.SetAir(s.head, headVolume)
}

// waveDamping is the damping of the elasticity at the hose's near end, s. It lies behind the hose's
// wave impedance ρa/A: resistance times elasticity is its share of the time a wave takes along the
// hose. Lumped without it, it would swing with the supply's column and make a relief valve hunt.
func (p *Plant) waveDamping(s *slot) float64 {
	wave := p.setup.Line.Trunk.WaveFtS
	if wave <= 0 {
		wave = usualWave
	}
	return max(flownet.DefaultTau, min(mostDamping, float64(nearShare*(s.lengthFt/wave))))
}

// update brings the hoses' coefficients up to their filling.
func (s *slot) update(net *flownet.Net) {
	if !s.attached {
		return
	}
	s.trunk.Update(net)
	for _, h := range s.branches {
		h.Update(net)
	}
}

// fill is the water in the slot's hoses over their content.
func (s *slot) fill(net *flownet.Net) float64 {
	if !s.attached {
		return 0
	}
	water, content := net.Node(s.trunk.End).Water, s.trunk.Content()
	for _, h := range s.branches {
		water += net.Node(h.End).Water
		content += h.Content()
	}
	return max(0, min(1, water/content))
}

// vented is what leaves at share k (0 drain, 1 open outlet, 2 leak) of the slot's vent, gpm of water.
func (s *slot) vented(net *flownet.Net, k int) float64 {
	all := s.shares[0] + s.shares[1] + s.shares[2]
	if all <= 0 {
		return 0
	}
	return float64(max(0, net.Link(s.vent).WaterFlow()/unit.M3SPerGPM) * (s.shares[k] / all))
}
