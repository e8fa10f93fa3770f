package fidelity

import (
	"fmt"
	"math"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
)

// hammerPeaks are peaks at the nozzle, psi, by wave speed and time of closure, by the method of
// characteristics: 200 ft of 1¾ in at 184.4 gpm from 155.3 psi.
var hammerPeaks = [...]struct {
	wave float64 // ft/s
	text string
	peak [5]float64
}{
	{1200 / unit.MPerFt, "1200 m/s", [...]float64{187, 226, 330, 631, 1213}},
	{600 / unit.MPerFt, "600 m/s", [...]float64{188, 228, 339, 555, 739}},
	{300 / unit.MPerFt, "300 m/s", [...]float64{189, 234, 327, 406, 448}},
	{500, "500 ft/s", [...]float64{193, 233, 261, 282, 302}},
	{300, "300 ft/s", [...]float64{193, 206, 217, 227, 238}},
}

var closures = [...]float64{4, 2, 1, 0.5, 0.2} // s

const hammerText = "Engine 41 in gear from a tank too large to fall; 200 ft of 1¾ in hose with a 15/16 in tip flowing 184.4 gpm from 155.3 psi; wave speed in the hose %s"

// hammerTrials shut a nozzle and watch the pressure at it.
func hammerTrials() []Trial {
	var list []Trial
	for _, h := range hammerPeaks {
		for i, seconds := range closures {
			list = append(list, hammerTrial(h.wave, h.text, seconds, h.peak[i]))
		}
	}
	list = append(list, waveSweep(), closureSweep(), joukowskyFormula())
	return append(append(list, slamTrials()...), ringingTrials()...)
}

// striking has the line flowing that a nozzle will stop.
func striking(m Model, wave float64) *bench {
	h := hose(1.75, 15.5, 200)
	h.WaveFtS = wave
	b := fromTank(m, fireground.LineDef{Trunk: h, Nozzle: tip(0.9375)})
	b.throttleFor(155.289+0.38, 0, b.discharge) // the discharge valve takes the rest
	b.settle()
	return b
}

func hammerTrial(wave float64, text string, seconds, peak float64) Trial {
	title := fmt.Sprintf("nozzle shut in %g s, wave speed %s", seconds, text)
	id := fmt.Sprintf("hammer-%.0f-in-%g", wave, seconds)
	v := float64(hydraulics.Velocity(184.386, 1.75))
	most, width := limits(155, 155.289+float64(1.25*float64(hydraulics.Joukowsky(unit.FtPerS(wave), unit.FtPerS(v)))))
	return Trial{
		initial: fmt.Sprintf(hammerText, text), begin: func(m Model) *bench { return striking(m, wave) },
		checks: []check{
			{Test: record(id, Transients, "Peak at the nozzle, "+title, "Stopping a line's water strikes it as the method of characteristics says.",
				fmt.Sprintf("Shut the nozzle in %g s, its free area evenly.", seconds), "highest pressure at the nozzle", "psi", peak, hammerTolerance(wave, seconds), characterist),
				measure: func(b *bench) float64 {
					b.peak = b.slam(seconds)
					return b.peak
				}},
			{Test: record(id+"-bound", Transients, "Peak within Joukowsky's bound, "+title, "Nothing strikes harder than stopping all of the water at once, with line packing.",
				"As before.", "highest pressure at the nozzle", "psi", most, width, joukowsky),
				measure: func(b *bench) float64 { return b.peak }},
		},
	}
}

// hammerTolerance is what the model claims for its two lumps of elasticity: 10 %, and 15 % where the wave
// is far faster than in any hose, and the damping of storage shows.
func hammerTolerance(wave, seconds float64) Tolerance {
	if wave > 3000 && seconds < 0.3 {
		return statedShare(0.15)
	}
	return statedShare(0.1)
}

// endPSI is the pressure at the far end of line 1, also when nothing flows.
func (b *bench) endPSI() float64 {
	net := b.p.Net()
	for i := range net.Nodes() {
		if n := net.Node(i); n.Name == "line 1 end" {
			return n.P / unit.PaPerPSI
		}
	}
	b.fails("the line has no end to measure at")
	return math.NaN()
}

// travelFor is the position of a nozzle's shutoff that leaves a share of its area free.
func travelFor(area float64) float64 {
	lo, hi := 0.0, 1.0
	for range 40 {
		if mid := float64(0.5 * (lo + hi)); hydraulics.Ball.Area(mid) < area {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}

// slam shuts the nozzle of line 1, its free area evenly, in seconds, and returns the highest pressure at
// it; the history is kept for a plot.
func (b *bench) slam(seconds float64) float64 {
	plot := &Curve{X: "time", XUnit: "s", Y: "pressure at the nozzle", YUnit: "psi", Reference: "method of characteristics"}
	wanted, _ := surge(b.setup.Line.Trunk.WaveFtS, seconds, 2)
	top := 0.0
	for k := range ticks(seconds + 1.5) {
		b.in.Lines[0].Nozzle[0] = travelFor(max(0, 1-float64(k+1)/float64(ticks(seconds))))
		b.run(tick)
		p := b.endPSI()
		plot.Points = append(plot.Points, Point{float64(float64(k+1) * tick), p, wanted[k], 0})
		top = max(top, p)
	}
	b.plot = plot
	return top
}

// waveSweep goes over the wave speeds that fabric hose may have.
func waveSweep() Trial {
	return Trial{
		initial: fmt.Sprintf(hammerText, "300 to 1000 ft/s"), begin: func(m Model) *bench { return &bench{model: m} },
		checks: []check{{
			Test: record("hammer-over-wave-speed", Transients, "Peak over wave speed, shut in 0.5 s", "The wave speed of fabric hose is nowhere published; over all that is plausible the model stays with the method of characteristics.",
				"For each wave speed shut the nozzle in half a second.", "highest pressure at the nozzle", "psi", 0, statedShare(0.1), characterist),
			sweep: func(b *bench) *Curve {
				c := &Curve{X: "wave speed", XUnit: "ft/s", Y: "highest pressure at the nozzle", YUnit: "psi"}
				for wave := 300.0; wave <= 1000; wave += 100 {
					k := striking(b.model, wave)
					c.add(wave, k.slam(0.5), surgePeak(wave, 0.5), statedShare(0.1))
					b.takes(k)
				}
				return c
			},
		}},
	}
}

// closureSweep goes over times of closure at the hose's own wave speed.
func closureSweep() Trial {
	return Trial{
		initial: fmt.Sprintf(hammerText, "600 ft/s, the model's own"), begin: func(m Model) *bench { return &bench{model: m} },
		checks: []check{{
			Test: record("hammer-over-closure", Transients, "Peak over time of closure", "Shut slowly, a nozzle strikes nothing.", "For each time shut the nozzle.", "highest pressure at the nozzle", "psi", 0, statedShare(0.1), characterist),
			sweep: func(b *bench) *Curve {
				c := &Curve{X: "time of closure", XUnit: "s", Y: "highest pressure at the nozzle", YUnit: "psi"}
				for _, s := range [...]float64{0.2, 0.35, 0.5, 0.75, 1, 1.5, 2, 3, 4, 6} {
					k := striking(b.model, 600)
					c.add(s, k.slam(s), surgePeak(600, s), statedShare(0.1))
					b.takes(k)
				}
				return c
			},
		}},
	}
}

func joukowskyFormula() Trial {
	return formulaTest(Test{
		ID: "joukowsky", Area: Transients, Title: "Joukowsky's jump at 500 ft/s", Objective: "The formula that bounds the surges.", Initial: "Wave speed 500 ft/s, 1 ft/s stopped",
		Steps: "Evaluate ρ a ΔV.", Compared: "jump", Unit: "psi", Expected: 6.7, Tolerance: formula(0.01), Source: Source{Computed, "ρ a ΔV"},
	}, func() float64 { return float64(hydraulics.Joukowsky(500, 1)) })
}

// slamTrials strike the street's small line at the model's own wave speed.
func slamTrials() []Trial {
	var list []Trial
	for _, c := range [...]struct {
		id, title string
		seconds   float64
		lo, hi    float64
	}{{"slam-fast", "Nozzle of a 1¾ in line slammed in half a second", 0.5, 230, 410}, {"slam-slow", "Nozzle of a 1¾ in line shut in four seconds", 4, 187, 205}} {
		peak, width := limits(c.lo, c.hi)
		list = append(list, Trial{
			initial: "Engine 41 on the street's hydrant; 200 ft of 1¾ in with a 15/16 in tip at 155.3 psi, the model's own wave speed",
			begin: func(m Model) *bench {
				s := street()
				s.Line.Trunk, s.Line.Nozzle = hose(1.75, 15.5, 200), tip(0.9375)
				s.Line.Trunk.WaveFtS = 600
				b := onStreet(m, s, 1)
				b.throttleFor(155.3, 0, b.gauge(0))
				b.settle()
				return b
			},
			checks: []check{{
				Test: record(c.id, Transients, c.title, "How hard a nozzle is shut decides what the hose gets.", "Shut the nozzle, its free area evenly.", "highest pressure at the nozzle", "psi", peak, width,
					Source{Computed, "method of characteristics over wave speeds of 300 to 1000 ft/s"}),
				measure: func(b *bench) float64 { return b.slam(c.seconds) },
			}},
		})
	}
	return list
}
