package fireground

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/unit"
)

const (
	carryHose  = 0.05   // slip of air in a hose: pockets stay until the flow sweeps them out (assumption)
	flatShare  = 0.02   // of its volume that a flat hose keeps (assumption)
	giveSoft   = 2000.0 // Pa at which a soft hose is round (assumption)
	hysteresis = 0.06   // of the period over 2π, time constant of the fabric's damping (assumption)
	floorStiff = 20.0   // times stiffer than full, once flat (assumption)
)

// Lay lays out lengthFt of the hose, dry, rising by riseFt to its far end; air is the share of its
// volume that is air at first besides what a flat hose keeps (0 where the water drives it out of an
// open nozzle before it). A length of 0 takes the hose away: its link is shut and its end is empty.
func (h *Hose) Lay(net *flownet.Net, def HoseDef, lengthFt, riseFt, air float64) {
	near, end, run := h.near, h.End, h.Run
	h.enough = math.Inf(1)
	near.Stretch -= h.given
	h.given, h.delay = 0, 0
	h.hole.SetShut(true)
	run.SetShut(lengthFt <= 0)
	if run.Shut() {
		h.length, h.content, h.filling = 0, 0, false
		net.SetWater(h.End, 0)
		return
	}
	d := float64(def.SizeIn * unit.MPerIn)
	h.length = float64(lengthFt * unit.MPerFt)
	h.area = float64(float64(quarterPi*d) * d)
	h.content = float64(h.area * h.length)
	h.r = frictionR(def.LossC, lengthFt)
	h.inertance = float64(waterDensity*h.length) / h.area
	h.rise = float64(float64(gravityPa*riseFt) * unit.MPerFt)
	h.soft, h.filling, h.kink = !def.Hard, true, 0
	wave := def.WaveFtS
	if wave <= 0 {
		wave = defaultWaveFtS
	}
	wave = float64(wave * unit.MPerFt)
	h.delay = h.length / wave
	h.stretch = h.content / float64(float64(waterDensity*wave)*wave)
	h.given = float64(valveShare * h.stretch)
	near.Stretch += h.given
	end.Volume = h.content
	end.Stretch = float64(nozzleShare * h.stretch)
	end.Tau = bound.AtLeast(float64(hysteresis*math.Sqrt(float64(h.inertance*end.Stretch))), flownet.DefaultTau)
	end.Soft = flownet.SoftWall{}
	empty := h.content
	if h.soft {
		end.Soft = flownet.SoftWall{Give: giveSoft, Flat: flatShare, Floor: h.stretch / floorStiff}
		empty = float64(h.content * (flatShare + air))
	}
	net.SetAir(h.End, empty)
	net.SetWater(h.End, 0)
	h.Update(net)
}

// frictionR is a hose's loss coefficient in Pa/(m³/s)² from FL = C (Q/100)² L/100 in psi, gpm, ft.
func frictionR(c, lengthFt float64) float64 {
	psiPerGPM2 := float64(c*lengthFt) / 1e6
	return float64(psiPerGPM2 * rUnit)
}

// rUnit is one psi/gpm² in Pa/(m³/s)².
const rUnit = unit.PaPerPSI / unit.M3SPerGPM / unit.M3SPerGPM
