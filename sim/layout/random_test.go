package layout

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"steadyneedle/sim/fireground"
)

// number is now and then one that nobody has.
func number(d *rand.Rand, lo, hi float64) float64 {
	switch d.IntN(60) {
	case 0:
		return 0
	case 1:
		return -lo
	case 2:
		return math.NaN()
	case 3:
		return math.Inf(1)
	}
	return lo + (hi-lo)*d.Float64()
}

// randomPart is a part of any kind, from anywhere.
func randomPart(d *rand.Rand, i int) Part {
	p := Part{ID: fmt.Sprintf("p%d", i)}
	source := func() string {
		if k := d.IntN(i + 3); k < i {
			return fmt.Sprintf("p%d", k)
		} else if k == i {
			return "hydrant"
		}
		return fmt.Sprintf("discharge%d", 1+d.IntN(4))
	}
	loss := LossDef{}
	if d.IntN(2) == 0 {
		loss = LossDef{PSI: number(d, 1, 40), GPM: number(d, 50, 1000)}
	}
	inlets := 1
	switch d.IntN(13) {
	case 0:
		p.Hydrant, inlets = &fireground.HydrantDef{StaticPSI: number(d, 30, 120), ResidualPSI: number(d, 5, 30), FlowGPM: number(d, 100, 2000)}, 0
	case 1:
		p.Pond, inlets = &PondDef{LiftFt: number(d, 0, 25)}, 0
	case 2:
		p.Riser = &RiserDef{SizeIn: number(d, 3, 8), LossC: 0.05, Floors: number(d, 1, 30), FloorFt: number(d, 8, 15), Wet: d.IntN(2) == 0}
	case 3:
		p.Valve = &ValveDef{Law: [...]string{"", "ball", "gate", "butterfly", "plug"}[d.IntN(5)], Cv: number(d, 20, 2000)}
	case 4:
		p.Wye = &WyeDef{Loss: loss, Gated: d.IntN(2) == 0}
	case 5:
		p.Siamese, inlets = &SiameseDef{Loss: loss, Open: d.IntN(3) == 0}, 1+d.IntN(4)
	case 6:
		p.Appliance = &loss
	case 7:
		p.Monitor, inlets = &loss, 1+d.IntN(3)
		p.RiseFt = number(d, 1, 80)
	case 8:
		p.Pumper, inlets = &PumperDef{RPM: number(d, 700, 2000)}, 1+d.IntN(2)
	case 9:
		p.Outlet = &OutletDef{SizeIn: number(d, 1, 5)}
	case 10:
		p.Intake = &IntakeDef{Cv: number(d, 50, 2000)}
	case 11:
		p.Nozzle = &fireground.NozzleDef{RatedGPM: number(d, 20, 1000), RatedPSI: 100}
	default:
		p.Hose = &fireground.HoseDef{SizeIn: number(d, 1, 5), LossC: number(d, 0.05, 30), LengthFt: number(d, 20, 1500), Hard: d.IntN(5) == 0}
		p.RisePSI = number(d, 0.1, 40)
	}
	for range inlets {
		p.From = append(p.From, source())
	}
	return p
}

// grow makes a plan that goes together more often than chance alone: every loose end gets a nozzle.
func grow(d *rand.Rand) Plan {
	var y Plan
	for i := range 1 + d.IntN(8) {
		y = append(y, randomPart(d, i))
	}
	for i := range y {
		if k := y[i].kinds()[0]; d.IntN(20) > 0 {
			for n := y.after(y[i].ID); n < k.out; n++ {
				y = append(y, Part{ID: fmt.Sprintf("end%d_%d", i, n), From: []string{y[i].ID}, Nozzle: &fireground.NozzleDef{TipIn: 1, RatedPSI: 50}})
			}
		}
	}
	return y
}

// TestRandomPlans: any plan is either refused with an error that names a part of it, or is built and runs
// under any hands without a NaN, a pressure below vapor, a met cap or lost water.
func TestRandomPlans(t *testing.T) {
	ran := 0
	hard := []uint64{9403, 20662, 30253, 46782} // pumpers behind one another, which take most iterations
	for i := range uint64(3000) {
		seed := i
		if i < uint64(len(hard)) {
			seed = hard[i]
		}
		d := rand.New(rand.NewPCG(seed, 7))
		y := grow(d)
		if err := y.Check(Ground{Discharges: 3}); err != nil {
			var e *Error
			if !errors.As(err, &e) || e.Index < 0 || e.Index >= len(y) || y[e.Index].ID != e.Part || e.Why == "" {
				t.Fatalf("plan %d: %v", seed, err)
			}
			continue
		}
		ran++
		h := newYard(t, 40+100*d.Float64(), y)
		h.open(1, 2, 3)
		for range 20 {
			for i := range h.in {
				h.in[i] = PartIn{Open: math.Round(2*d.Float64()) / 2, Gate: math.Round(d.Float64()), Kink: math.Round(2*d.Float64()) / 2 * float64(d.IntN(2)),
					Burst: 3 * d.Float64() * float64(d.IntN(2)), Leak: 50 * d.Float64(), RPM: 600 + 1500*d.Float64()}
			}
			h.run(0.5)
		}
		if h.sound(); t.Failed() {
			t.Fatalf("plan %d: %+v", seed, y)
		}
	}
	t.Logf("%d of 3000 plans could be laid", ran)
	if ran < 100 {
		t.Errorf("only %d of 3000 plans could be laid", ran)
	}
}
