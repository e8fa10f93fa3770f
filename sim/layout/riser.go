package layout

import (
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/flownet"
)

const (
	airFirst  = 40     // air stands at the top of a riser, or in a suction hose that rises, and leaves before the water (assumption)
	steelWave = 4000.0 // ft/s, of water in a steel pipe (assumption)
	floorFt   = 12     // of pipe to a floor whose height is given as pressure (assumption)
)

// addRiser adds the pipe of a standpipe: a hose that is hard, and leads its air out at the top.
func (q *laidPart) addRiser(b *flownet.Builder, p *Part, from mouth, air *flownet.Node) {
	d := p.Riser
	def := fireground.HoseDef{SizeIn: d.SizeIn, LossC: d.LossC, LengthFt: float64(d.Floors * floorFt), WaveFtS: steelWave, Hard: true}
	up := Part{ID: p.ID, RisePSI: float64(d.Floors * d.FloorPSI)}
	if d.FloorFt > 0 {
		def.LengthFt = float64(d.Floors * d.FloorFt)
		up.RiseFt, up.RisePSI = def.LengthFt, 0
	}
	h := q.addHose(b, &up, from, def, air)
	h.full = d.Wet
	q.last.airFirst = true
}
