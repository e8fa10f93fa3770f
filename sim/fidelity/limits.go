package fidelity

// Assumption is a number of the model that is not measured.
type Assumption struct{ What, Value, Why string }

// Assumptions lists what the model takes for granted where no source was found.
func Assumptions() []Assumption {
	return []Assumption{
		{"Pump of Engine 41", "rise 195 psi·ω² − 2·10⁻⁵ psi/gpm²; power 75 ω³ + 0.075 ω² Q hp; ω = rpm/1520", "no maker's curve: the constants were chosen so that all rating points are met from draft with power to spare"},
		{"Suction head that the pump needs", "1.97 + 3 ω² + 9 (Q/1500)² ft; head lost as 0.03/r³, gone at r = 0.4", "the shape is a textbook's, the numbers are tuned for what a panel shows"},
		{"Air in the pump", "eye of 20 L; head falls between 2 and 18 % of air", "from how long an unbled hose takes the pressure away"},
		{"Wave speed of fabric hose", "600 ft/s", "no published value was found; 300 to 1000 is plausible, and the sweep covers it"},
		{"Main under the street", "8 in each way, 4000 ft/s", "its wave impedance alone decides how much of a wave in the supply hose it throws back"},
		{"Elasticity of a hose", "64 % at the nozzle's end, 36 % at the valve's; damping 0.02 s and more", "two lumps that come within 10 % of the method of characteristics"},
		{"In-leak at soft supply couplings", "2 L/s at 5 psi of vacuum", "makes a hose that is drawn flat stand a little below zero"},
		{"Air that a charged supply hose keeps", "15 % of its volume", "what must be bled"},
		{"Relief valve", "pilot lag 0.01 s, lift lag 0.03 s, span 20 psi, 220 gpm at 1 psi, 23 psi a turn", "the lags: a chamber of some 90 mL filled through a passage of 1.5 gpm at 1 psi under 100 psi takes 0.1 s for a full stroke; a valve that follows late swings with the column of the supply hose"},
		{"Valves of the panel", "share of the open flow coefficient x/(c − (c − 1) x) at a travel x: c = 6 at the discharges, 3 from the tank, 2 at the intake", "a handle with its linkage; at the discharges 14 to 31 % below makers' charts of bare ball valves"},
		{"Needles", "4 rad/s, damping 0.7; errors drawn within 2 psi (intake), 4 psi (master), 6 psi (line)", "within the grades of such gauges"},
		{"Engine", "torque curve, droop of 7 %, inertia, drag", "an engine of the class, of nobody's make"},
		{"Heat", "100 L of water and 150 kg of iron warm together, losing 30 Btu/(h °F); shut-off power 75 hp at 1520 rpm; packing lets steam go at 30 psi", "sizes of such a pump; shut-off power is 40 % of that at the rating, as a centrifugal pump of this specific speed takes (from memory: a third to a half)"},
		{"Tank", "vortex below 6 % of the level (by the submergence that intakes of pumps are given, 1 + 2.3 Froude numbers of their width, from memory, air would come in sooner without a baffle); level lamps with hysteresis, F lit 12 % of the tank late while it fills", "what operators tell of their tanks"},
		{"Governor", "gain 2.5 rpm a psi, reset 0.5 s, cut-back 1.5 s after the intake is low, 300 rpm a second", "chosen to hold within a psi, and to over-run when lost water returns"},
		{"Intake and thermal relief", "125 psi and span 40 psi; from 120 °F on", "settings by practice, the rest chosen"},
		{"Appliances", "loss by the square of the flow, met at the flow given", "the field's 0, 10 and 25 psi are allowances, not measurements"},
	}
}

// Unchecked lists what these tests cannot show.
func Unchecked() []string {
	return []string{
		"No real apparatus, hose or hydrant stands behind these figures. Where a source is a formula of the trade, the test shows that the model follows the formula, not that the formula is true.",
		"How a real relief valve of a given make overshoots or hunts. The valve here is calm because it follows within some hundredths of a second; a slower one of the same gain would swing with the column of the supply.",
		"The wave speed of real fabric hose: no published value was found. Surges are checked for the wave speed assumed, and over the plausible range.",
		"How much friction a given make of hose has: makes differ by −26 to +33 % from the coefficients of the handbooks.",
		"How a pump of a given make behaves far into cavitation, how it sounds and shakes then, and how fast it is ruined.",
		"How fast an unbled hose binds a given pump, and how fast it clears.",
		"The time that a hose drawn flat takes to recover, and how its couplings leak.",
		"Cold: nothing freezes here, at whatever temperature of the air.",
		"The feel of a lever, wheel or throttle, and how hard a valve turns against flow.",
		"What nozzles do besides their flow and reaction: reach, pattern, droplets, fire.",
		"How people speak and act at a fire. Delays of the crew are assumptions.",
		"Section numbers of standards are from memory throughout, and an edition that binds a department may say otherwise.",
	}
}

// Weaknesses lists where the model is known to fall short, found with these tests.
func Weaknesses() []string {
	return []string{
		"After the first peak a stopped line rings as one wave, not as the train of reflections that the method of characteristics gives: two lumps of elasticity stand for the hose. At the model's own wave speed the second and third peaks are 5 to 12 % low, and the period is a third too long; at faster waves the shape between the peaks is not there.",
		"A nozzle slammed while the pump draws from its tank leaves pressure shut in between nozzle and the tank's check valve, by up to 80 psi, and it stays. That much is so: the line then holds some half a gallon too much, and a packing that drips 60 drops a minute would take hours to let it out. But the check valve here shuts at once, where a flap that swings lets some of it back before it seats.",
		"A supply hose that nothing flows through swings longer than a real one. A main of 8 in takes half of a wave from 2½ in hose at each turn and nearly all from 5 in; one lump of elasticity that loses so much throws back too little of the first wave, and so it loses a quarter at each turn. With the nozzles shut in 2 s the intake behind 1000 ft of 5 in swings by 10 psi half a minute later and by 2 psi after a minute, behind 100 ft of 4 in by 2 psi and half a psi. Friction of unsteady flow, which is left out, would take a hundredth of the critical damping (Zielke).",
		"Of the pump behind the rating only engine speeds are known, not the ratio of its gears: its specific speed, and what efficiency that allows, cannot be computed.",
		"Over flow and speed the pump keeps one shape of curve; what a real pump loses to leakage and wear is not there.",
	}
}
