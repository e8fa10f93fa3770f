package fidelity

import (
	"fmt"
	"math"

	"steadyneedle/sim/rig"
)

// instrumentTrials look at needles and lamps.
func instrumentTrials() []Trial {
	return []Trial{needleStep(), needleLag(), biasTrial(), tapTrial(), pulseTrial(), amberTrial(), lampTrial(), startTrial()}
}

// needleStep lets a needle jump.
func needleStep() Trial {
	var peak, at float64
	jump := func() {
		d := rig.Default().Instruments.Discharge
		d.Bias = 0
		n := rig.NewNeedle(d, 1, "step")
		n.Rest(100)
		peak, at = 0, 0
		for k := range ticks(5) {
			n.Step(tick, 200)
			if v := n.Read(0); v > peak {
				peak, at = v, float64(float64(k+1)*tick)
			}
		}
	}
	theory := Source{Computed, "second order of 4 rad/s and damping 0.7 (assumption)"}
	initial := "A master gauge's needle at rest at 100 psi"
	return Trial{initial: initial, checks: []check{
		{Test: record("needle-overshoot", Instruments, "Overshoot of a needle after a jump", "A needle swings a little past and settles.", "Let the pressure jump to 200 psi.", "overshoot, share of the jump", "", 0.046, statedWidth(0.01), theory),
			measure: func(*bench) float64 { jump(); return (peak - 200) / 100 }},
		{Test: record("needle-peak-time", Instruments, "Time to a needle's highest after a jump", "A needle takes a second to follow.", "As before.", "time to the highest reading", "s", math.Pi/(4*0.71414284), statedWidth(0.06), theory),
			measure: func(*bench) float64 { return at }},
	}}
}

// needleLag raises the pressure evenly and reads how far the needle stays behind.
func needleLag() Trial {
	return Trial{initial: "Engine 41 in gear on the street's hydrant, all shut, 900 rpm", begin: func(m Model) *bench {
		b := onStreet(m, street(), 0)
		b.rpmFor(900)
		b.settle()
		return b
	}, checks: []check{{
		Test: record("needle-lag", Instruments, "How far a needle lags a rising pressure", "While pressure rises, the needle shows what it was a third of a second ago.", "Raise the throttle evenly by a tenth of its travel in 6 s; compare needle and pressure over the last 3 s.",
			"difference of needle and pressure over the rate of the rise", "s", 2*0.7/4.0, empirical(0.15), Source{Computed, "2ζ/ω of a second-order needle"}),
		measure: func(b *bench) float64 {
			n, from := ticks(6), b.in.Throttle
			behind, first, count := 0.0, 0.0, 0
			for k := range n {
				b.in.Throttle = from + float64(0.1*float64(k+1)/float64(n))
				b.run(tick)
				if k >= n/2 {
					if count == 0 {
						first = b.o.DischargePSI
					}
					behind += b.o.DischargePSI - b.o.DischargeNeedle
					count++
				}
			}
			rate := (b.o.DischargePSI - first) / float64(float64(count-1)*tick)
			return behind / float64(count) / rate
		},
	}}}
}

// biasTrial reads the shipped gauges, with their errors, for a dozen seeds.
func biasTrial() Trial {
	worst := func(b *bench, off func(*bench) float64) float64 {
		most := 0.0
		for seed := range uint64(12) {
			s := street()
			s.Rig, s.Seed = rig.Default(), seed
			k := onStreet(b.model, s, 1)
			k.turn(&k.in.Throttle, 0.2, 2)
			k.settle()
			sum := 0.0
			for range 5 * 60 {
				k.run(tick)
				sum += off(k)
			}
			most = max(most, math.Abs(sum/300))
			b.takes(k)
		}
		return most
	}
	test := func(id, gauge string, most float64, off func(*bench) float64) check {
		mid, width := limits(0.3, most)
		return check{
			Test:    record(id, Instruments, "Largest error of the "+gauge+", twelve apparatus", "Gauges read off, each by its own error, and no more than their grade.", "With the street's line flowing average needle less pressure over 5 s, for seeds 0 to 11.", "largest error", "psi", mid, width, gaugeGrade),
			measure: func(b *bench) float64 { return worst(b, off) },
		}
	}
	return Trial{initial: "Engine 41 as shipped, gauges with their errors; " + streetText, begin: func(m Model) *bench { return &bench{model: m} }, checks: []check{
		test("bias-master", "master discharge gauge", 4, func(k *bench) float64 { return k.o.DischargeNeedle - k.o.DischargePSI }),
		test("bias-intake", "master intake gauge", 2, func(k *bench) float64 { return k.o.IntakeNeedle - k.o.IntakePSI }),
		test("bias-line", "line gauge", 6, func(k *bench) float64 { return k.o.LineNeedle[0] - k.o.Lines[0].ValvePSI }),
	}}
}

// tapTrial gates one of two lines.
func tapTrial() Trial {
	return Trial{initial: streetText + ", and a like line on discharge 2", begin: func(m Model) *bench {
		b := onStreet(m, street(), 2)
		b.throttleFor(lay, 0, b.gauge(0))
		b.turn(&b.in.Discharge[1], 0.35, 3)
		b.settle()
		return b
	}, checks: []check{
		{Test: record("line-gauge-own", Instruments, "Each line on its own gauge", "A gated line shows its own, lower pressure; the master gauge does not.", "Gate line 2; wait until steady.", "gauge 1 less gauge 2, over what the gated valve takes more than the open one", "", 1, formula(0.02), balanced),
			measure: func(b *bench) float64 {
				d := rig.Default().Discharges[1].Valve
				x := (0.35 - d.Lock) / (1 - d.Lock)
				gated := float64(d.Cv * (x / (d.Curve - float64((d.Curve-1)*x))))
				line := inRow(hoseCv(2, 600), tipCv(1.125))
				p := streetBalance(b.o.PumpShaftRPM, inRow(streetValve, line)+inRow(gated, line), 0)
				return b.snap(func() float64 { return b.o.LineNeedle[0] - b.o.LineNeedle[1] }) / (across(p, streetValve, line) - across(p, gated, line))
			}},
		{Test: record("line-gauge-master", Instruments, "Master gauge against an open line's gauge", "The master gauge shows the manifold: a line's own gauge differs by what its valve takes.", "As before.", "master less gauge 1, less what 300 gpm at 1 psi take", "psi", 0, statedWidth(2), ownDesign),
			measure: func(b *bench) float64 {
				q := b.o.Lines[0].GPM / 300
				return b.snap(func() float64 { return b.o.DischargeNeedle - b.o.LineNeedle[0] }) - float64(q*q)
			}},
		{Test: record("line-gauge-shut", Instruments, "Gauge of a line that is shut and drained", "A shut and drained line shows nothing.", "Shut line 2 and open its drain; wait 40 s.", "gauge 2", "psi", 0, statedWidth(3), ownDesign),
			measure: func(b *bench) float64 {
				b.turn(&b.in.Discharge[1], 0, 5)
				b.in.Drain[1] = 1
				b.run(40)
				return b.gauge(1)()
			}},
	}}
}

// pulseTrial reads how much the master gauge trembles.
func pulseTrial() Trial {
	calm, calmWidth := limits(0, 2.5)
	rough, roughWidth := limits(4, 30)
	swing := func(b *bench) float64 { return b.swing(5, func() float64 { return b.o.DischargeNeedle }) }
	return Trial{initial: streetText + ", at 134.8 psi", begin: func(m Model) *bench {
		b := onStreet(m, street(), 1)
		b.throttleFor(lay, 0, b.gauge(0))
		return b
	}, checks: []check{
		{Test: record("pulse-calm", Instruments, "Trembling of the master gauge on a hydrant", "A needle on a healthy pump trembles by no more than half a division.", "Watch the gauge for 5 s.", "swing of the needle", "psi", calm, calmWidth, ownDesign), measure: swing},
		{Test: record("pulse-rough", Instruments, "Trembling of the master gauge when cavitating", "Cavitation makes the needle shiver.", "At draft with big tips open at 2100 rpm: watch the gauge for 5 s.", "swing of the needle", "psi", rough, roughWidth, ownDesign),
			measure: func(b *bench) float64 {
				k := atPond(b.model, pond{lift: 10, waterF: 60})
				k.primedLines()
				for i := range 3 {
					k.turn(&k.in.Lines[i].Nozzle[0], 1, 3)
				}
				k.turn(&k.in.Throttle, 1, 4)
				k.run(10)
				b.takes(k)
				return swing(k)
			}},
	}}
}

// amberTrial reads the lift at which the relief valve's lamp changes.
func amberTrial() Trial {
	on, onWidth := limits(0.015, 0.05)
	off, offWidth := limits(0.005, 0.02)
	return Trial{initial: streetText + ", at 134.8 psi, relief valve set there", begin: func(m Model) *bench {
		b := onStreet(m, street(), 1)
		b.throttleFor(lay, 0, b.gauge(0))
		b.setRelief()
		return b
	}, checks: []check{
		{Test: record("amber-on", Instruments, "Lift at which amber lights", "The lamp lights as soon as the valve has opened a little.", "Raise the throttle by 25 rpm a second until amber lights.", "lift of the main valve", "", on, onWidth, ownDesign),
			measure: func(b *bench) float64 {
				b.until("amber", 60, func() bool {
					b.in.Throttle = min(1, b.in.Throttle+25.0/1450/60)
					return b.o.AmberLamp
				})
				return b.o.ReliefLift
			}},
		{Test: record("amber-off", Instruments, "Lift at which amber goes out", "It goes out when the valve has all but shut.", "Lower the throttle by 25 rpm a second until amber goes out.", "lift of the main valve", "", off, offWidth, ownDesign),
			measure: func(b *bench) float64 {
				b.run(2)
				b.until("amber out", 60, func() bool {
					b.in.Throttle = max(0, b.in.Throttle-25.0/1450/60)
					return !b.o.AmberLamp
				})
				return b.o.ReliefLift
			}},
	}}
}

// lampTrial warms and cools the pump past its lamp, and turns the intake past its own.
func lampTrial() Trial {
	return Trial{initial: shutText + "; 1333 rpm", begin: func(m Model) *bench { return shutUp(m, 1333) }, checks: []check{
		{Test: record("pump-lamp-off", Instruments, "Pump lamp goes out", "The lamp goes out only when the pump is clearly cooler.", "Warm the pump until its lamp lights; then open tank to pump and tank fill a little until it goes out.", "temperature at which it is out", "°F", 135, statedWidth(3), ownDesign),
			measure: func(b *bench) float64 {
				b.until("the lamp", 1500, func() bool { return b.o.PumpHotLamp })
				b.in.TankToPump, b.in.TankFill = 1, 0.1
				b.until("the lamp out", 300, func() bool { return !b.o.PumpHotLamp })
				return b.o.PumpF
			}},
		{Test: record("intake-lamp", Instruments, "Lamp of the full-open intake", "The lamp tells that the intake is full open, not nearly.", "Open the intake in 10 s until the lamp lights.", "travel of the intake", "", 0.99, statedWidth(0.01), ownDesign),
			measure: func(b *bench) float64 {
				for k := 1; k <= 600 && !b.o.IntakeOpenLamp; k++ {
					b.in.Intake = float64(k) / 600
					b.run(tick)
				}
				return b.in.Intake
			}},
	}}
}

// startTrial reads the dials of an apparatus that stands idling.
func startTrial() Trial {
	t := Trial{initial: "Engine 41 parked, engine warm and idling, tank three quarters full", begin: func(m Model) *bench {
		b := set(m, street())
		b.run(5)
		return b
	}}
	add := func(id, title, compared, unitName string, expected, width float64, source Source, value func(*bench) float64) {
		t.checks = append(t.checks, check{
			Test:    record(id, Instruments, title, "The dials show a healthy apparatus.", "Read the panel.", compared, unitName, expected, statedWidth(width), source),
			measure: value,
		})
	}
	add("dial-tach", "Tachometer at idle", "tachometer", "rpm", 700, 25, machineMemory, func(b *bench) float64 { return b.o.TachNeedle })
	add("dial-oil-idle", "Oil pressure at idle, warm", "oil gauge", "psi", 28, 3, ownDesign, func(b *bench) float64 { return b.o.OilNeedle })
	add("dial-volts", "Voltage with the engine running", "voltmeter", "V", 13.9, 0.3, ownDesign, func(b *bench) float64 { return b.o.VoltsNeedle })
	add("dial-coolant", "Coolant of a driven engine", "coolant gauge", "°F", 184, 4, ownDesign, func(b *bench) float64 { return b.o.CoolantNeedle })
	for i, name := range [...]string{"E", "1-4", "1-2", "3-4", "F"} {
		want := 1.0
		if i == 4 {
			want = 0
		}
		add(fmt.Sprintf("dial-tank-%s", name), fmt.Sprintf("Tank lamp %s at three quarters", name), "lamp (1 lit)", "", want, 0, ownDesign, func(b *bench) float64 { return lit(b.o.TankLamp[i]) })
	}
	add("dial-oil-off", "Oil pressure with the engine stopped", "oil gauge", "psi", 0, 3, ownDesign, func(b *bench) float64 {
		b.in.EngineRun = false
		b.run(12)
		return b.o.OilNeedle
	})
	add("dial-volts-off", "Voltage with the engine stopped", "voltmeter", "V", 12.6, 0.3, ownDesign, func(b *bench) float64 { return b.o.VoltsNeedle })
	add("dial-oil-lamp", "Low-oil lamp with the engine stopped", "lamp (1 lit)", "", 1, 0, ownDesign, func(b *bench) float64 { return lit(b.o.LowOilLamp) })
	return t
}
