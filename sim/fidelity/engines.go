package fidelity

import "steadyneedle/sim/fireground"

// engineTrials work engine, transmission and pump shift.
func engineTrials() []Trial {
	return []Trial{shiftTrial(), clashTrial(), speedTrial(), droopTrial(), overSpeedTrial(), loadTrial(), interlockTrial(), coolantTrial()}
}

const parkedText = "Engine 41 parked, engine idling, transmission in neutral, road gear"

func shiftTrial() Trial {
	shift, shiftWidth := limits(2, 5)
	down, downWidth := limits(3, 6)
	spool, spoolWidth := limits(2, 4)
	return Trial{initial: parkedText, begin: func(m Model) *bench { return set(m, street()) }, checks: []check{
		{Test: record("shift-time", Transients, "Time of the pump shift", "The shift takes its time.", "Select pump gear.", "time until engaged", "s", shift, shiftWidth, machineMemory),
			measure: func(b *bench) float64 {
				b.in.PumpShift = 1
				return b.until("pump shift", 10, func() bool { return b.o.PumpEngaged })
			}},
		{Test: record("spool-up", Transients, "Spool-up from 700 to 1400 rpm", "The engine follows a hand's throttle.", "Put the transmission in drive, open tank to pump; turn the throttle at a hand's speed until 1390 rpm.", "time", "s", spool, spoolWidth, machineMemory),
			measure: func(b *bench) float64 {
				b.in.Transmission = 1
				b.until("throttle ready", 5, func() bool { return b.o.ThrottleReady })
				b.onTank()
				return b.until("1400 rpm", 20, func() bool {
					b.in.Throttle = min(0.5, b.in.Throttle+tick/2.5)
					return b.o.EngineRPM >= 1390
				})
			}},
		{Test: record("wind-down", Transients, "Wind-down of the shaft", "The shaft runs down after the transmission goes to neutral.", "Throttle to idle, wait 10 s; put the transmission in neutral.", "time until the shaft stands", "s", down, downWidth, machineMemory),
			measure: func(b *bench) float64 {
				b.in.Throttle = 0
				b.run(10)
				b.in.Transmission = 0
				return b.until("wind-down", 20, func() bool { return b.o.PumpShaftRPM == 0 })
			}},
		{Test: record("clash-none", Abnormal, "Shift with the shaft at rest", "Shifted when the shaft stands, nothing grinds.", "Select road gear; wait 6 s.", "gear clashes", "", 0, statedWidth(0), ownDesign),
			measure: func(b *bench) float64 { b.in.PumpShift = 0; b.run(6); return b.o.Clashes }},
	}}
}

func clashTrial() Trial {
	return Trial{initial: "Engine 41 in pump gear and in drive at idle", begin: func(m Model) *bench {
		b := set(m, street())
		b.inGear()
		return b
	}, checks: []check{
		{Test: record("clash-turning", Abnormal, "Shift while the shaft turns", "Shifted while the shaft turns, the gears clash.", "Put the transmission in neutral and select road gear at once.", "gear clashes", "", 1, statedWidth(0), ownDesign),
			measure: func(b *bench) float64 {
				b.in.Transmission, b.in.PumpShift = 0, 0
				b.run(0.5)
				return b.o.Clashes
			}},
		{Test: record("clash-waits", Abnormal, "The clashing gears wait", "They mesh only when the shaft has run down.", "Wait until road gear is in.", "pump gear held until then (1 yes)", "", 1, statedWidth(0), ownDesign),
			measure: func(b *bench) float64 {
				held := !(b.o.PumpEngaged && b.o.PumpShaftRPM == 0)
				b.until("road gear", 15, func() bool { return !b.o.PumpEngaged })
				return lit(held)
			}},
	}}
}

func speedTrial() Trial {
	return Trial{initial: "Engine 41 without its throttle interlock, parked, pump out of gear", begin: func(m Model) *bench {
		s := street()
		s.Rig.Drive.FreeThrottle = true
		b := set(m, s)
		b.turn(&b.in.Throttle, 1, 3)
		b.run(15)
		return b
	}, checks: []check{
		{Test: record("governed-speed", Steady, "Governed speed without load", "The governor holds the engine below its limit.", "Open the throttle full; wait 15 s.", "engine speed", "rpm", 2150, statedShare(0.06), machineMemory),
			measure: func(b *bench) float64 { return b.o.EngineRPM }},
		{Test: record("governed-oil", Instruments, "Oil pressure at governed speed", "Oil pressure rises with speed.", "As before.", "oil gauge", "psi", 62, statedWidth(4), ownDesign),
			measure: func(b *bench) float64 { return b.o.OilNeedle }},
	}}
}

// droopTrial takes the load off at a fixed throttle.
func droopTrial() Trial {
	return Trial{initial: ratedText + "; 1500 gpm at 150 psi net", begin: func(m Model) *bench {
		b := rated(m, 1500, 150)
		b.before, b.peak = b.o.EngineRPM, b.o.EngineLoad
		return b
	}, checks: []check{
		{Test: record("droop", Transients, "The engine races when its load goes", "A mechanical governor gives way by 6 to 8 % from no load to full: the engine is heard to race.", "Shut all discharges in 3 s, throttle untouched; wait until steady.", "share of speed gained over share of torque lost", "", 0.07, statedWidth(0.012), Source{Practice, "droop of a mechanical governor, 6 to 8 %"}),
			measure: func(b *bench) float64 {
				b.shutAll(3)
				rpm := b.snap(b.rpm)
				return (rpm - b.before) / rpm / (b.peak - b.o.EngineLoad)
			}},
	}}
}

// overSpeedTrial takes the water from a pump at full throttle.
func overSpeedTrial() Trial {
	top, width := limits(2090, 2365)
	return Trial{initial: tankText + ", two lines of 25 ft of 4 in with 1¾ in tips, throttle full open", begin: func(m Model) *bench {
		b := fromTank(m, fireground.LineDef{Trunk: hose(4, 0.2, 25), Nozzle: tip(1.75)})
		b.line(1)
		b.turn(&b.in.Throttle, 1, 5)
		b.run(20)
		b.before, b.peak = b.o.EngineRPM, b.o.EngineLoad
		return b
	}, checks: []check{
		{Test: record("over-speed", Abnormal, "Load lost at full throttle", "The engine races by its droop; its governor keeps it from over-speed.", "Shut tank to pump in half a second; watch 15 s.", "highest engine speed", "rpm", top, width, Source{Memory, "governors of such engines keep a lost load within 110 % of governed speed; here 2150 rpm less what the drive still takes"}),
			measure: func(b *bench) float64 {
				b.turn(&b.in.TankToPump, 0, 0.5)
				return b.highest(15, b.rpm)
			}},
		{Test: record("over-speed-gained", Abnormal, "Speed gained when the load is lost at full throttle", "It can be heard that the load is gone.", "As before.", "share of speed gained over share of torque lost", "", 0.07, statedWidth(0.014), Source{Practice, "droop of a mechanical governor, 6 to 8 %"}),
			measure: func(b *bench) float64 { return (b.o.EngineRPM - b.before) / b.o.EngineRPM / (b.peak - b.o.EngineLoad) }},
	}}
}

// loadTrial holds the engine's load against its torque curve.
func loadTrial() Trial {
	return Trial{initial: ratedText + "; 1050 gpm at 200 psi net", begin: func(m Model) *bench { return rated(m, 1050, 200) }, checks: []check{
		{Test: record("torque-share", Steady, "Load against the torque curve", "The load is the pump's torque over what the engine can give at that speed.", "Read power and speed.", "engine load over the torque computed from power and speed", "", 1, formula(0.02), Source{Computed, "5252 hp/rpm, 3 % drive loss, torque curve and drag of this engine (assumption)"}),
			measure: func(b *bench) float64 {
				b.settle()
				rpm := b.o.EngineRPM
				torque := float64(5252*(b.o.ShaftHP/0.97)) / rpm
				full := 1200 - float64((1200-1080)*((rpm-1500)/400)) // lb-ft, between the curve's points at 1500 and 1900 rpm
				return b.o.EngineLoad / ((torque + 100) / (full + 100))
			}},
	}}
}

func interlockTrial() Trial {
	open := func(b *bench) float64 {
		b.turn(&b.in.Throttle, 0.5, 2)
		b.run(4)
		v := b.o.EngineRPM
		b.in.Throttle = 0
		b.run(6)
		return v
	}
	return Trial{initial: parkedText, begin: func(m Model) *bench { return set(m, street()) }, checks: []check{
		{Test: record("interlock-neutral", Controls, "Throttle before the pump is ready", "The panel's throttle is blocked until the pump is ready.", "Open the throttle half with the pump out of gear.", "engine speed", "rpm", 700, statedWidth(25), ownDesign), measure: open},
		{Test: record("interlock-brake", Controls, "Throttle with the parking brake off", "Without the parking brake the throttle stays blocked.", "Put the pump in gear and in drive, release the brake, open the throttle half.", "engine speed", "rpm", 700, statedWidth(25), ownDesign),
			measure: func(b *bench) float64 {
				b.inGear()
				b.in.ParkingBrake = false
				b.run(1)
				return open(b)
			}},
		{Test: record("interlock-lamp", Instruments, "\"OK to pump\" with the parking brake off", "The lamp says no.", "As before.", "lamp (1 lit)", "", 0, statedWidth(0), ownDesign), measure: func(b *bench) float64 { return lit(b.o.OKToPump) }},
		{Test: record("interlock-ready", Controls, "Throttle when ready", "Ready, the throttle works.", "Set the brake; open the throttle half.", "engine speed", "rpm", 1425, statedShare(0.06), ownDesign),
			measure: func(b *bench) float64 {
				b.in.ParkingBrake = true
				b.run(1)
				return open(b)
			}},
	}}
}

// coolantTrial works the engine hard, and opens the auxiliary cooler.
func coolantTrial() Trial {
	hot, hotWidth := limits(180, 220)
	less, lessWidth := limits(1, 60)
	return Trial{initial: ratedText + "; 1500 gpm at 150 psi net, auxiliary cooler shut", begin: func(m Model) *bench { return rated(m, 1500, 150) }, checks: []check{
		{Test: record("coolant-rated", Transients, "Coolant after half an hour at the rating", "At its rating the engine does not overheat.", "Wait half an hour.", "coolant", "°F", hot, hotWidth, machineMemory),
			measure: func(b *bench) float64 {
				b.run(1800)
				b.before = b.o.CoolantF
				return b.before
			}},
		{Test: record("coolant-cooler", Controls, "The auxiliary cooler cools the engine", "Pump water through the cooler lowers the coolant.", "Open the cooler; wait ten minutes.", "fall of the coolant's temperature", "°F", less, lessWidth, ownDesign),
			measure: func(b *bench) float64 {
				b.in.Cooler = 1
				b.run(600)
				return b.before - b.o.CoolantF
			}},
	}}
}
