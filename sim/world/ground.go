package world

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/plant"
)

// what the hose does where it lies badly (assumptions).
const (
	carelessKink = 0.3  // of the supply hose's way, where nobody straightened it
	slackLimitFt = 25.0 // supply hose beyond this cannot be laid out without a kink
	looseSlackFt = 3.0  // less slack than this cannot kink
	sectionFt    = 50.0
	chockGapIn   = 1.0 // in, farthest from the tire that still holds
	chockSkew    = 5.0 // degrees off square
	bedFt        = 200 // hose left in the bed, where its end is connected by mistake
)

// coupled maps a coupling's choice (off, hand-tight, tight) to what the plant takes.
func coupled(choice float64) float64 { return float64(choice * 0.5) }

func (w *World) feedSupply() {
	s := &w.in.Supply
	hose := w.taken()
	s.SizeIn, s.LossC, s.LengthFt = hose.sizeIn, hose.lossC, hose.lengthFt
	s.AtEngine = coupled(math.Floor(w.at[supplyAtEngine]))
	s.AtHydrant = coupled(math.Floor(w.at[supplyAtHydrant]))
	s.Kink = w.supplyKink()
	s.Burst = w.at[supplyBurst]
}

// feedLine connects the laid line to the discharge that it was coupled to.
func (w *World) feedLine(i int) {
	l := &w.in.Lines[i]
	l.Attached = int(w.at[lineTo]) == i+1 && w.at[lineTo] == math.Floor(w.at[lineTo]) && w.at[lineCoupling] >= 1
	if !l.Attached {
		*l = plant.Line{Nozzle: l.Nozzle, CapOff: w.at[w.cap(i)] < 1}
		clear(l.Nozzle)
		return
	}
	l.CapOff = false
	l.Tight = coupled(math.Floor(w.at[lineCoupling]))
	hose := w.load()
	l.SizeIn, l.LossC = hose.SizeIn, hose.LossC
	if w.at[lineEnd] == 1 { // the hose in the bed: no crew, no nozzle open
		l.LengthFt, l.Kink, l.Leak, l.Burst, l.Second = bedFt, 0, 0, 0, 0
		clear(l.Nozzle)
		return
	}
	l.LengthFt = w.laidFt()
	l.Kink = w.lineKink()
	l.Burst = w.at[lineBurst]
	l.Second = w.at[secondLine]
	l.Leak = 0
	if w.leaking() {
		l.Leak = w.at[lineLeak]
	}
	for n := range l.Nozzle {
		l.Nozzle[n] = w.at[w.nozzleControl(n)]
	}
}

// sectionsLaid is how many sections lie between the hose bed and the fire: the line is parted at the
// next coupling in the bed.
func (w *World) sectionsLaid() float64 {
	if w.body.stage < laying {
		return 0
	}
	return -math.Floor(-w.body.travelled() / w.section()) // rounded up
}

func (w *World) section() float64 {
	if s := w.setup.Ground.Line.SectionFt; s > 0 {
		return s
	}
	return sectionFt
}

func (w *World) laidFt() float64 {
	n := w.sectionsLaid()
	if w.at[lineBreak] == 2 { // pulled on into the next section
		n++
	}
	return bound.AtLeast(float64(n*w.section()), 1)
}

func (w *World) supplyReach() float64 {
	along, out := w.at[stopAtHydrant], w.setup.Ground.PlugSetback
	return math.Sqrt(float64(along*along) + float64(out*out))
}

func (w *World) supplySlack() float64 {
	return w.taken().lengthFt - w.supplyReach()
}

func (w *World) supplyKink() float64 {
	return bound.AtLeast(w.carelessKink(), w.at[supplyKinked])
}

// carelessKink is the kink that comes of how the supply hose was laid.
func (w *World) carelessKink() float64 {
	slack := w.supplySlack()
	switch {
	case w.at[supplyLength] == 0 || slack < looseSlackFt:
		return 0
	case slack > slackLimitFt || w.at[supplyStraight] == 0:
		return carelessKink
	}
	return 0
}

func (w *World) lineKink() float64 {
	if w.at[lineStraight] == 1 {
		return 0
	}
	return w.at[lineKinked]
}

func (w *World) leaking() bool { return w.at[lineLeak] > 0 && w.at[tightenLeak] == 0 }

func (w *World) lineOK() bool {
	return int(w.at[lineTo]) == w.setup.Ground.Discharge && w.at[lineEnd] == 0
}

func (w *World) crossedWrong() bool {
	if w.body.stage < laying {
		return false
	}
	if w.setup.Ground.FireAcross {
		return w.body.crossing != 1
	}
	return w.body.crossing != 0
}

func (w *World) everyoneBelted() bool {
	return w.at[crewBelts] == 1 && (w.at[seatBelt] == 1 || w.body.place != Cab)
}

func (w *World) chocksSet() float64 {
	return flag(w.at[chockFront] >= 1 && w.at[chockFront] == w.hand[chockFront]) +
		flag(w.at[chockRear] >= 1 && w.at[chockRear] == w.hand[chockRear])
}

func (w *World) chockFault() bool {
	return w.badChock(chockFront, chockFrontGap, chockFrontSkew, chockFrontLock) ||
		w.badChock(chockRear, chockRearGap, chockRearSkew, chockRearLock)
}

func (w *World) badChock(at, gap, skew, lock ControlID) bool {
	if w.at[at] == 0 || w.at[at] != w.hand[at] {
		return false
	}
	return w.at[at] != 1 || w.at[lock] == 0 || w.at[gap] > chockGapIn || math.Abs(w.at[skew]) > chockSkew
}

// standS is how long pressure must have stood to count as shut in: a wave of water that comes to rest
// in a hose lying open throws a few psi for a moment, and no coupling (assumption).
const standS = 2.0

// stand follows the pressures behind the couplings.
func (w *World) stand() {
	const share = 1 / (standS * TicksPerSecond)
	b := &w.body
	b.supplyStood += float64((w.supplyBehind() - b.supplyStood) * share)
	b.lineStood += float64((w.lineBehind() - b.lineStood) * share)
}

// supplyTrapped is what is shut in behind the supply couplings, psi.
func (w *World) supplyTrapped() float64 { return bound.AtMost(w.supplyBehind(), w.body.supplyStood) }

// lineTrapped is what is shut in behind the line's coupling, psi.
func (w *World) lineTrapped() float64 { return bound.AtMost(w.lineBehind(), w.body.lineStood) }

func (w *World) supplyBehind() float64 {
	if w.at[supplyAtEngine] == 0 && w.at[supplyAtHydrant] == 0 {
		return 0
	}
	return bound.AtLeast(w.out.SupplyPSI, 0)
}

func (w *World) lineBehind() float64 {
	if n := int(w.at[lineTo]); n > 0 && w.at[lineCoupling] > 0 {
		return bound.AtLeast(w.out.Lines[n-1].ValvePSI, 0)
	}
	return 0
}

// trapped is the highest pressure shut in anywhere outside the pump, psi; couplings is what is shut in behind
// the couplings.
func (w *World) trapped(couplings float64) float64 {
	most := couplings
	for i := range w.out.Lines {
		if i != int(w.at[lineTo])-1 {
			most = bound.AtLeast(most, w.out.Lines[i].ValvePSI)
		}
	}
	return most
}

func (w *World) tankLamps() float64 {
	n := 0.0
	for _, lit := range w.out.TankLamp {
		n += flag(lit)
	}
	return n
}

// nozzleState is one nozzle of the line, wherever the line is connected.
type nozzleState struct{ psi, gpm, reaction float64 }

func (w *World) nozzle(n int) nozzleState {
	i := int(w.at[lineTo]) - 1
	if i < 0 || w.at[lineCoupling] == 0 || n >= len(w.out.Lines[i].NozzlePSI) {
		return nozzleState{}
	}
	l := &w.out.Lines[i]
	return nozzleState{l.NozzlePSI[n], l.NozzleGPM[n], l.ReactionLbf[n]}
}
