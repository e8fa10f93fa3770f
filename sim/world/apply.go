package world

import "math"

// livePSI is the pressure above which opening a coupling or cap throws it (the drills' rule names 5 psi).
const livePSI = 5

// apply takes one action that Check has passed.
func (w *World) apply(a *Action) {
	c := &w.controls[a.Control]
	w.stale = true
	switch {
	case c.said():
		w.speak(a)
		return
	case a.Control == walk:
		w.setOut(Place(a.Value))
		return
	}
	w.countLive(a)
	w.hand[a.Control], w.moving = a.Value, true
	switch a.Control {
	case idleButton:
		if a.Value == 1 { // the button drops the throttle at once
			w.hand[throttle], w.at[throttle] = 0, 0
		}
	case lineTo:
		if a.Value > 0 { // coupling on takes the cap off first
			cap := w.cap(int(a.Value) - 1)
			w.hand[cap], w.at[cap] = 0, 0
		}
	}
}

func (w *World) speak(a *Action) {
	w.at[a.Control]++
	w.unsaid = true
	w.hand[a.Control] = w.at[a.Control]
	w.number[a.Control] = a.Value
	w.given[a.Control] = w.now.Seconds()
	if w.controls[a.Control].Name == "say_complete" && w.body.clockTo < 0 && w.body.clockFrom >= 0 {
		w.body.clockTo = w.now
	}
}

// countLive counts couplings and caps that are opened with pressure behind them.
func (w *World) countLive(a *Action) {
	opens := a.Value < w.at[a.Control]
	var psi float64
	switch {
	case !opens:
		return
	case a.Control == supplyAtEngine, a.Control == supplyAtHydrant:
		psi = w.supplyTrapped()
	case a.Control == lineCoupling:
		psi = w.lineTrapped()
	default:
		for i := range w.setup.Rig.Discharges {
			if a.Control == w.cap(i) {
				psi = w.out.Lines[i].ValvePSI
			}
		}
	}
	if psi > livePSI {
		w.body.liveUncouplings++
	}
}

// walkFtS is how fast a person walks in gear round an apparatus (assumption).
const walkFtS = 4.0

// spot is where a place lies, ft from the panel: along the apparatus (toward the rear) and away from
// it, and the seconds it takes to climb or to look closely.
type spot struct{ back, out, climb float64 }

func (w *World) spot(p Place) spot {
	switch p {
	case Cab:
		return spot{0, 0, 4} // down from the cab and to the panel: 4 s
	case Wheels:
		return spot{8, 1, 0}
	case RearStep:
		return spot{18, 2, 0}
	case Hydrant:
		return spot{w.at[stopAtHydrant], w.setup.Ground.PlugSetback, 0}
	case TankTop:
		return spot{4, 0, 5}
	case Round:
		return spot{24, 8, 12} // once round, looking
	}
	return spot{}
}

// setOut begins a walk. Leaving the seat takes the belt off.
func (w *World) setOut(to Place) {
	b := &w.body
	if to == b.place || b.place == Walking && to == b.goal {
		return
	}
	from := w.spot(b.goal)
	if b.place == Cab {
		w.hand[seatBelt], w.at[seatBelt] = 0, 0
	}
	there := w.spot(to)
	along, out := there.back-from.back, there.out-from.out
	dist := math.Sqrt(float64(along*along) + float64(out*out))
	b.place, b.goal = Walking, to
	b.arrive = w.now + TicksIn(float64(dist/walkFtS)+from.climb+there.climb)
}

// feed tells the plant where every handle is and how the hose lies.
func (w *World) feed() {
	in := &w.in
	in.EngineRun = w.at[engineRun] == 1
	in.Throttle = w.at[throttle]
	in.Transmission = w.at[transmission]
	in.PumpShift = w.at[pumpShift]
	in.ParkingBrake = w.at[parkingBrake] == 1
	in.Rolling = w.body.speed > 0
	in.TankToPump = w.at[tankToPump]
	in.TankFill = w.at[tankFill]
	in.Intake = w.at[intake]
	in.Bleeder = w.at[bleeder]
	in.Recirculation = w.at[recirculation]
	in.Primer = w.at[primer] == 1
	in.Cooler = w.at[engineCooler]
	in.PumpDrain = w.at[pumpDrain]
	in.ReliefTurns = w.at[reliefWheel]
	in.Governor.Pressure = w.at[governorMode] == 1
	in.Governor.Raise, in.Governor.Lower = w.at[governorRaise] == 1, w.at[governorLower] == 1
	in.Governor.Preset, in.Governor.Idle = w.at[governorPreset] == 1, w.at[idleButton] == 1
	in.Series = w.at[transfer] == 1
	in.Hydrant.Open = w.at[hydrantValve]
	in.Hydrant.CapOff = w.at[hydrantCap] < 1
	in.Shock.StaticDropPSI = w.at[hydrantLoss]
	w.feedFaults()
	w.feedSupply()
	for i := range in.Discharge {
		in.Discharge[i] = w.at[w.discharge(i)]
		in.Drain[i] = w.at[w.drain(i)]
		w.feedLine(i)
	}
	w.feedLaid()
}
