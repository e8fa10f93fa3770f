package view

import "strings"

// about says in two sentences what each control does, above all to the water; one term for one thing, as
// everywhere. Controls that there are several of are named without their number.
var about = map[string]string{
	// panel
	"tank_to_pump":      "Lets the apparatus's own tank feed the pump. A check valve keeps hydrant water out of the tank.",
	"tank_fill":         "Lets pump water into the tank. It also moves water through a hot pump.",
	"intake":            "Lets water from the supply hose into the pump; counter-clockwise opens it. Its lamp says when it is fully open.",
	"bleeder":           "Lets the air out of the supply hose before the intake is opened. Open it until solid water comes, then shut it.",
	"recirculation":     "Sends a little pump water back to the tank. It keeps the pump cool while no line flows; an overheated pump scalds.",
	"relief_wheel":      "Sets the pressure at which the relief valve by-passes water back to the intake. Clockwise raises it.",
	"governor_mode":     "In pressure the governor works the engine so that the pump's discharge holds the setting; in speed it holds an engine speed, whatever the pressure does. A change of mode takes over what stands.",
	"governor_raise":    "Asks the governor for more: one step a press, and on and on while it is held. The pressure of every open line rises with it.",
	"governor_lower":    "Asks the governor for less: one step a press, and on and on while it is held. The pressure of every open line falls with it.",
	"governor_preset":   "Brings the engine to the preset pressure or speed of the mode that is selected. Look what is open before you press it.",
	"transfer":          "In volume both impellers feed the discharges side by side, for more than half of the rated flow; in pressure one feeds the other. Change over at or below 50 psi net, or pump and lines take a blow.",
	"primer":            "Draws air out of the pump, so that the water of a pond can rise into it. On a hydrant it is not needed.",
	"engine_cooler":     "Sends pump water through the engine's auxiliary cooler. It is for a hot engine only.",
	"pump_drain":        "Lets the water out of the pump's casing. Open while pumping, it wastes water and lets air in when the pump draws.",
	"throttle":          "Raises and lowers the engine's speed, and with it pressure and flow; clockwise is faster. It takes many turns from end to end.",
	"idle_button":       "Drops the engine to idle at once, and the pressure with it. The throttle begins anew from there.",
	"radio_compartment": "Opens the door of the compartment with the panel's radio. It moves no water.",
	"radio_volume":      "Sets how loud the panel's radio is; turned down, the crew can't be heard by it. It moves no water.",
	"panel_lights":      "Lights the panel, so that gauges can be read after dark. It moves no water.",
	"discharge":         "Opens and shuts the valve of this line: pull to open. Move it slowly, or the surge reaches the nozzle.",
	"drain":             "Lets trapped pressure out of this line, beyond its valve. Open it before a coupling or cap is touched.",
	"cap":               "Closes the outlet of a line that is not in use. Never take it off under pressure: drain first, and stand clear.",
	// cab
	"engine_run":       "Runs and stops the engine; it starts in neutral only. Without it the pump stands still, and only the hydrant's own pressure is left.",
	"parking_brake":    "Sets and lets go the spring brake, which holds the apparatus. It must be set before the pump is put in gear.",
	"front_brake_lock": "Locks the front brakes as well. With both brakes set the drill's clock starts.",
	"transmission":     "The road transmission. It goes to neutral before the pump is shifted, and to drive after: only then does the pump turn.",
	"pump_shift":       "Shifts the engine's drive from the wheels to the pump. Use it only with the transmission in neutral and the shaft at rest.",
	"emergency_lights": "Warning lights of the apparatus. They keep traffic off those who work around it.",
	"headlights":       "Lights the road ahead. They move no water.",
	"flashers":         "Hazard flashers. They warn traffic where the apparatus stands.",
	"horn":             "Sounds while it is held. It warns those near the apparatus before it moves.",
	"drive":            "Rolls the apparatus to its next stop. Brakes must be off, the transmission in drive and the pump out of gear.",
	// decisions on the way
	"stop_at_fire":    "How far past the directed spot you stop at the fire. The line is pulled from there, so it decides how far it reaches.",
	"lay_offset":      "How far off the curb the hose is laid. Laid well, it is out of the way of other apparatus and lies without kinks.",
	"lay_crossing":    "Where the laid line crosses the street, if it must. Every crossing is hose that traffic may run over.",
	"line_hose":       "The load of the hose bed that the line is laid from, chosen on the street plan before you lay. Smaller hose takes more pressure for the same water; the crew has told you what it wants.",
	"stop_at_hydrant": "How far past the hydrant your pump panel comes to stand. It decides how much supply hose is needed, and whether it kinks.",
	// worn and carried
	"clothing":       "Protective clothing, put on before you leave the cab. It moves no water; it is for what water and traffic can do to you.",
	"helmet":         "Helmet on your head. It is worn wherever hose is charged.",
	"portable_radio": "A radio to carry. With it the crew is heard wherever you are.",
	"seat_belt":      "Your seat belt. The apparatus does not roll until everyone is belted.",
	"look_round":     "Look over your shoulder or in the mirror. Gestures are only seen by one who looks.",
	// round the apparatus
	"compartments":     "Doors of the compartments. They are shut before the apparatus rolls; a lamp in the cab tells of an open one.",
	"chock_front":      "The chock that goes before a wheel on the uphill or downhill side. Two chocks hold the apparatus if the brakes let go; set them before the throttle is touched.",
	"chock_rear":       "The chock that goes behind the wheel. Two chocks hold the apparatus if the brakes let go; set them before the throttle is touched.",
	"chock_front_gap":  "How far the chock stands from the tire. Close to it, the wheel cannot gather speed before it meets the chock.",
	"chock_rear_gap":   "How far the chock stands from the tire. Close to it, the wheel cannot gather speed before it meets the chock.",
	"chock_front_skew": "How far the chock is turned off square. A tire can climb or push aside a chock that is not square to it.",
	"chock_rear_skew":  "How far the chock is turned off square. A tire can climb or push aside a chock that is not square to it.",
	"chock_front_lock": "Unfolds the chock and locks it. Unlocked, it folds under the wheel.",
	"chock_rear_lock":  "Unfolds the chock and locks it. Unlocked, it folds under the wheel.",
	// supply
	"wrench":            "The hydrant wrench, taken from its place. The hydrant's valve can't be turned without it.",
	"supply_length":     "Hose for the way from hydrant to intake. Too short does not reach, too long kinks, too small takes more of the hydrant's pressure; couplings of another size than the intake's need adapters.",
	"adapters":          "What joins hose to couplings of another size, one for each end of the supply hose. The hydrant's outlet and the intake take the same size.",
	"supply_straight":   "Lays the supply hose out without kinks. A kink takes pressure from the intake.",
	"supply_at_engine":  "Coupling of the supply hose at the pump's intake. Never open it under pressure: bleed first, and stand clear.",
	"supply_at_hydrant": "Coupling of the supply hose at the hydrant. Never open it under pressure: bleed first, and stand clear.",
	"hydrant_cap":       "Cap of the hydrant's outlet. Never take it off under pressure.",
	"hydrant_valve":     "Opens the hydrant, slowly and all the way; it takes the hydrant wrench. Stand clear of the coupling while the hose charges.",
	// the line
	"line_break":    "Parts the laid line at a coupling near the hose bed. What lies between there and the fire becomes your discharge line.",
	"bed_coupling":  "Where the coupling of the hose that stays in the bed is put. Left lying, it trips people and gets dirt in the water's way.",
	"line_slack":    "Hose for the way from the coupling to the discharge. Taken from the fire end it pulls at the crew.",
	"line_route":    "Which way the line takes past the panel. A charged line in the work space whips if it comes loose.",
	"line_end":      "Which end of the parted line is connected. The fire side carries the water to the nozzle; the bed side leads nowhere.",
	"line_to":       "Which discharge the line is connected to. Its valve, gauge and drain are the line's from then on.",
	"line_coupling": "The coupling between the laid line and the discharge. Never open it under pressure: drain first, and stand clear.",
	"line_straight": "Pulls a kink out of the line. A kink takes pressure from the nozzle.",
	"tighten_leak":  "Tightens a coupling that drips. A leak takes water from the nozzle and ice or mud to the street.",
}

// About is two sentences about a control; empty for one that nobody has described.
func About(name string) string {
	if text, ok := about[name]; ok {
		return text
	}
	return about[strings.TrimRight(name, "0123456789")]
}

// gauges says in two sentences what an instrument or lamp tells of the water, by its signal.
var gauges = map[string]string{
	"intake_gauge":     "Pressure of the water where it enters the pump; below zero the gauge reads vacuum. With no line flowing it shows static; what it loses when a line flows tells how much more the supply can give.",
	"discharge_gauge":  "Pressure that the pump makes, before any discharge valve. A line is set on its own gauge, not on this one.",
	"line_gauge":       "Pressure in this line, beyond its valve. It is the gauge by which the line is set: stay below the hose's limit.",
	"tach":             "Turns of the engine a minute, in hundreds. Pressure rises with the square of it; speed that rises without pressure means that the pump lacks water.",
	"oil_gauge":        "Pressure of the engine's oil. If it falls, the engine that drives the pump is in danger.",
	"coolant_gauge":    "Temperature of the engine's coolant. When it climbs, the engine cooler can take heat away with pump water.",
	"volts_gauge":      "Voltage of the electrical system. It falls when lamps and radios take more than the engine gives at its speed.",
	"pump_temp_gauge":  "Temperature of the water in the pump. It climbs when the pump turns and no water moves; an overheated pump scalds.",
	"speed":            "Speed over the road. It moves no water.",
	"tank_lamps":       "Lit while the water stands at or above that quarter, as the sender sees it. Looking in at the top is the truth.",
	"intake_open_lamp": "Burns when the intake valve is fully open. Half open, it holds water back.",
	"amber":            "Burns while the relief valve by-passes water back to the intake. Then the pump makes more than the pressure it is set to.",
	"throttle_ready":   "Burns when pump, transmission and brake are set so that the panel's throttle may be used. Dark, the engine does not answer it.",
	"low_water_lamp":   "Burns while the governor has cut the engine back, or dropped it to idle, for lack of water. Find the water before you ask for more pressure.",
	"volume_lamp":      "Burns when the transfer valve stands in volume. Both impellers then feed the discharges side by side.",
	"pressure_lamp":    "Burns when the transfer valve stands in pressure. The second impeller then adds its pressure to the first one's.",
	"pump_hot_lamp":    "Burns when the water in the pump is too hot. Move water, and keep hands and faces away from outlets: it scalds.",
	"engine_hot_lamp":  "Burns when the coolant is too hot. The engine cooler helps with pump water.",
	"low_oil_lamp":     "Burns when the oil's pressure is too low for the engine's speed. The engine, and with it the water, may fail.",
	"pump_engaged":     "Burns when the pump shift is completed. Until then the wheels are driven, not the pump.",
	"ok_to_pump":       "Burns when the pump is engaged, the transmission in drive and the brake set. Only then is the panel worked.",
	"door_lamp":        "Burns while a compartment is open. Shut it before the apparatus rolls.",
	"belt_lamp":        "Burns while someone is not belted. The apparatus does not roll until it is dark.",
}

// Gauge is two sentences about an instrument or lamp, found by its signal; empty for one that nobody has
// described.
func Gauge(signal string) string {
	if text, ok := gauges[signal]; ok {
		return text
	}
	if rest, ok := strings.CutPrefix(signal, "line"); ok && strings.TrimLeft(rest, "0123456789") == "_gauge" {
		return gauges["line_gauge"]
	}
	return ""
}
