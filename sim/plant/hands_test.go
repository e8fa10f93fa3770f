package plant

import (
	"math"
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/rig"
)

// ground is the lay of the twenty numbers: hydrant 65/45 at 1000 gpm, 25 ft of 4 in, 600 ft of 2½
// with a 1⅛ tip; needles without bias.
func ground() Setup {
	d := rig.Default()
	d.Instruments = d.Instruments.True()
	return Setup{
		Rig:     d,
		Hydrant: fireground.HydrantDef{StaticPSI: 65, ResidualPSI: 45, FlowGPM: 1000},
		Supply:  fireground.HoseDef{SizeIn: 4, LossC: 0.2},
		Line: fireground.LineDef{
			Trunk:  fireground.HoseDef{SizeIn: 2.5, LossC: 2, LengthFt: 600},
			Nozzle: &fireground.NozzleDef{TipIn: 1.125, RatedPSI: 50},
		},
	}
}

// hands work a plant in a test.
type hands struct {
	t  *testing.T
	p  *Plant
	in In
	o  *Out
	s  float64 // s since the beginning
}

func at(t *testing.T, s Setup) *hands {
	t.Helper()
	p, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	return &hands{t: t, p: p, in: p.NewIn(), o: p.Out()}
}

// run lets seconds pass.
func (h *hands) run(seconds float64) {
	for range int(math.Round(seconds * 60)) {
		h.p.Step(&h.in)
		h.s += tick
	}
}

// turn moves a control evenly to a value over seconds.
func (h *hands) turn(c *float64, to, seconds float64) {
	n := int(math.Round(seconds * 60))
	from := *c
	for i := range n {
		*c = from + (to-from)*float64(i+1)/float64(n)
		h.run(tick)
	}
	*c = to
}

// until lets time pass until ok, at most limit seconds; it returns the time taken.
func (h *hands) until(limit float64, ok func() bool) float64 {
	for s := 0.0; s < limit; s += tick {
		if ok() {
			return s
		}
		h.run(tick)
	}
	return limit
}

// inGear brings the pump into gear at idle.
func (h *hands) inGear() {
	h.in.PumpShift = 1
	h.until(10, func() bool { return h.o.PumpEngaged })
	h.in.Transmission = 1
	h.until(10, func() bool { return h.o.ThrottleReady })
	h.run(3)
}

// onHydrant connects, opens, bleeds and lets the water into the pump.
func (h *hands) onHydrant() {
	h.in.Supply.LengthFt, h.in.Supply.AtEngine, h.in.Supply.AtHydrant = 25, 1, 1
	h.in.Bleeder = 1
	h.turn(&h.in.Hydrant.Open, 1, 8)
	h.until(60, func() bool { return h.o.SupplyAir < 0.003 })
	h.in.Bleeder = 0
	h.turn(&h.in.Intake, 1, 5)
	h.run(10)
}

// onTank opens tank to pump.
func (h *hands) onTank() {
	h.turn(&h.in.TankToPump, 1, 2)
	h.run(3)
}

// line attaches and fills the line of discharge i with its nozzles open.
func (h *hands) line(i int) {
	h.in.Lines[i].Attached = true
	for k := range h.in.Lines[i].Nozzle {
		h.in.Lines[i].Nozzle[k] = 1
	}
	h.turn(&h.in.Discharge[i], 1, 4)
	h.run(40)
}

// throttleFor works the throttle until value stands at goal.
func (h *hands) throttleFor(goal float64, value func() float64) {
	lo, hi := 0.0, 1.0
	for range 24 {
		mid := (lo + hi) / 2
		h.turn(&h.in.Throttle, mid, 1)
		h.run(12)
		if value() < goal {
			lo = mid
		} else {
			hi = mid
		}
	}
	h.run(10)
}

// rpmFor works the throttle until the engine turns at goal.
func (h *hands) rpmFor(goal float64) { h.throttleFor(goal, func() float64 { return h.o.EngineRPM }) }

func (h *hands) linePSI(i int) func() float64 { return func() float64 { return h.o.Lines[i].ValvePSI } }

// near fails unless got lies within tolerance of want.
func (h *hands) near(what string, got, want, tolerance float64) {
	h.t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		h.t.Errorf("%s: %.4g, want %.4g ± %.3g", what, got, want, tolerance)
	}
}

// between fails unless got lies from lo to hi.
func (h *hands) between(what string, got, lo, hi float64) {
	h.t.Helper()
	if !(got >= lo && got <= hi) {
		h.t.Errorf("%s: %.4g, want %.4g to %.4g", what, got, lo, hi)
	}
}
