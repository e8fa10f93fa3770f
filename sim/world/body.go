package world

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
)

// stages of the apparatus's way.
const (
	beforeRolling = iota
	atFire
	laying
	atHydrant
)

const (
	startBackFt = 150.0 // the apparatus stands so far short of the fire
	topSpeed    = 14.0  // ft/s, about 10 mph: laying speed (common practice, no published source)
	pickUp      = 3.0   // ft/s²
	slowDown    = 4.0   // ft/s²
	hardStop    = 12.0  // ft/s²
	laneLow     = 6.0   // ft off the curb, where the hose should lie
	laneHigh    = 8.0
	freeEndsFt  = 30.0 // first and last part of the lay where the offset is free
	blastGapS   = 0.3
)

// body is the apparatus as a vehicle and the candidate as a person on foot.
type body struct {
	stage    int
	along    float64 // ft along the street from the directed stop at the fire
	speed    float64 // ft/s
	firedAt  float64 // ft, where it stood at the fire
	laidBad  float64 // ft of hose laid outside the lane
	laidAll  float64 // ft laid where the lane counts
	crossing float64 // how the street was crossed when laying began

	place  Place
	goal   Place
	arrive Tick
	lookS  float64

	blasts          float64
	hornDown        bool
	clockFrom       Tick
	clockTo         Tick
	neutralAt       Tick // when the transmission last went to neutral with the pump engaged; -1: it has not
	liveUncouplings float64
	supplyStood     float64 // psi, see World.stand
	lineStood       float64
}

func (b *body) begin(s *Setup) {
	*b = body{along: -startBackFt, place: Cab, goal: Cab, clockFrom: -1, clockTo: -1, neutralAt: -1}
	if s.Ground.Arrived {
		b.stage, b.along, b.place, b.goal = atHydrant, s.Ground.FireToPlugFt, Panel, Panel
		b.crossing = flag(s.Ground.FireAcross) // in front of the fire, where there is a street to cross
	}
}

func (b *body) step(w *World) {
	b.walkOn(w)
	b.roll(w)
	b.sound(w)
	b.runClock(w)
	b.windDown(w)
}

func (b *body) walkOn(w *World) {
	if b.place == Walking && w.now >= b.arrive {
		b.place = b.goal
	}
	if w.at[lookRound] == 1 {
		b.lookS += 1.0 / TicksPerSecond
	} else {
		b.lookS = 0
	}
}

// target is where along the street the apparatus stops next, ft.
func (b *body) target(w *World) float64 {
	if b.stage == beforeRolling {
		return w.at[stopAtFire]
	}
	return w.setup.Ground.FireToPlugFt + w.at[stopAtHydrant]
}

// roll moves the apparatus while the driver's foot lets it.
func (b *body) roll(w *World) {
	const dt = 1.0 / TicksPerSecond
	moves := w.at[drive] == 1 && w.at[engineRun] == 1 && w.at[transmission] == 1 && w.at[pumpShift] == 0 && b.stage < atHydrant
	left := b.target(w) - b.along
	w.stale = w.stale || b.speed > 0 // it may stand now
	switch {
	case w.at[parkingBrake] > 0 || w.at[frontBrakeLock] == 1:
		b.speed = bound.AtLeast(b.speed-hardStop*dt, 0)
	case !moves:
		b.speed = bound.AtLeast(b.speed-slowDown*dt, 0)
	default:
		safe := math.Sqrt(float64(2 * slowDown * bound.AtLeast(left, 0)))
		b.speed = min(b.speed+pickUp*dt, topSpeed, bound.AtLeast(safe, 0.5))
	}
	if b.speed == 0 {
		return
	}
	w.stale = true
	if b.stage == atFire {
		b.stage = laying
		b.firedAt, b.crossing = b.along, w.at[layCrossing]
	}
	step := bound.AtMost(float64(b.speed*dt), bound.AtLeast(left, 0))
	b.along += step
	if b.stage == laying {
		b.lay(w, step)
	}
	if b.target(w)-b.along < 0.05 {
		b.speed = 0
		b.stage++
		w.hand[drive], w.at[drive] = 0, 0
	}
}

func (b *body) lay(w *World, step float64) {
	gone, left := b.along-b.firedAt, b.target(w)-b.along
	if gone < freeEndsFt || left < freeEndsFt {
		return
	}
	b.laidAll += step
	if off := w.at[layOffset]; off < laneLow || off > laneHigh {
		b.laidBad += step
	}
}

func (b *body) sound(w *World) {
	down := w.at[horn] == 1
	if down && !b.hornDown {
		b.blasts++
	}
	b.hornDown = down
}

// runClock starts the drill's clock when both brakes are set at the hydrant, and stops it when
// completion is called.
func (b *body) runClock(w *World) {
	if b.clockFrom < 0 && b.stage == atHydrant && w.at[parkingBrake] == 1 && (w.at[frontBrakeLock] == 1 || w.at[pumpShift] == 1) {
		b.clockFrom = w.now
	}
}

func (b *body) windDown(w *World) {
	switch {
	case w.at[transmission] == 1:
		b.neutralAt = -1
	case b.neutralAt < 0 && w.out.PumpEngaged:
		b.neutralAt = w.now
	}
}

func (b *body) clockS(now Tick) float64 {
	switch {
	case b.clockFrom < 0:
		return 0
	case b.clockTo >= 0:
		return (b.clockTo - b.clockFrom).Seconds()
	}
	return (now - b.clockFrom).Seconds()
}

func (b *body) windDownS(now Tick) float64 {
	if b.neutralAt < 0 {
		return 0
	}
	return (now - b.neutralAt).Seconds()
}

func (b *body) travelled() float64 {
	if b.stage < laying {
		return 0
	}
	return b.along - b.firedAt
}

func (b *body) offsetErrorShare() float64 {
	if b.laidAll == 0 {
		return 0
	}
	return b.laidBad / b.laidAll
}

func (b *body) walk(k *state.Walker) {
	place, goal := int(b.place), int(b.goal)
	k.Int(&b.stage)
	for _, f := range [...]*float64{&b.along, &b.speed, &b.firedAt, &b.laidBad, &b.laidAll, &b.crossing, &b.lookS, &b.blasts, &b.liveUncouplings, &b.supplyStood, &b.lineStood} {
		k.Float(f)
	}
	for _, t := range [...]*Tick{&b.arrive, &b.clockFrom, &b.clockTo, &b.neutralAt} {
		k.Int64((*int64)(t))
	}
	k.Int(&place)
	k.Int(&goal)
	k.Bool(&b.hornDown)
	b.place, b.goal = Place(place), Place(goal)
}
