package world

// The constant list of what can be said and shown. Nothing is offered because it is due: wrong and
// untimely phrases are always there. A phrase with a Unit carries a number.

func phrase(name, to, label string, by Reach) Control {
	return Control{Name: name, Kind: Speech, Label: label, By: by, Speaker: Candidate, To: to, Max: 1}
}

func value(name, to, label, unit string, hi float64) Control {
	return Control{Name: name, Kind: Speech, Label: label, By: Anywhere, Speaker: Candidate, To: to, Min: -30, Max: hi, Unit: unit}
}

func sign(name, to, label string) Control {
	return Control{Name: name, Kind: Gesture, Label: label, By: Anywhere, Speaker: Candidate, To: to, Max: 1}
}

func from(who Source, name, to, label string, kind Kind) Control {
	return Control{Name: name, Kind: kind, Label: label, By: Nowhere, Speaker: who, To: to, Max: 1}
}

func number(who Source, name, to, label, unit string) Control {
	return Control{Name: name, Kind: Speech, Label: label, By: Nowhere, Speaker: who, To: to, Min: -1000, Max: 10000, Unit: unit}
}

var candidateSpeech = []Control{
	// to the crew
	phrase("say_belt_up", "crew", "Everyone seated and belted?", Anywhere),
	phrase("say_rolling", "crew", "Rolling.", At(Cab)),
	phrase("say_ready", "crew", "Ready for water?", Anywhere),
	phrase("say_water_coming", "crew", "Water coming.", Anywhere),
	phrase("say_wait", "crew", "Wait, not ready for you yet.", Anywhere),
	phrase("say_how_is_it", "crew", "How is your pressure and flow?", Anywhere),
	phrase("say_open_nozzle", "crew", "Open your nozzle.", Anywhere),
	phrase("say_shut_nozzle", "crew", "Shut your nozzle.", Anywhere),
	phrase("say_losing_water", "crew", "You are about to lose water, back out.", Anywhere),
	phrase("say_shutting_down", "crew", "Shutting your line down.", Anywhere),
	phrase("say_stand_clear", "crew", "Stand clear, water is coming!", Anywhere),
	phrase("say_pick_up", "crew", "Drain and pick up.", Anywhere),
	phrase("say_gating", "crew", "Your line is gated on purpose.", Anywhere),

	// to the evaluator
	phrase("say_understood", "evaluator", "Objective understood.", Anywhere),
	value("say_static", "evaluator", "Static pressure is", "psi", 400),
	value("say_sections", "evaluator", "Sections laid:", "", 60),
	value("say_calculated", "evaluator", "Calculated pump discharge pressure is", "psi", 400),
	phrase("say_pressure_set", "evaluator", "Pressure is set.", Anywhere),
	phrase("say_relief_set", "evaluator", "Relief valve is set.", Anywhere),
	value("say_residual", "evaluator", "Residual pressure is", "psi", 400),
	value("say_like_lines", "evaluator", "Further like lines this supply can carry:", "", 9),
	phrase("say_tank_full", "evaluator", "Tank is full.", Anywhere),
	phrase("say_overheating", "evaluator", "The pump is overheating.", Anywhere),
	phrase("say_cavitating", "evaluator", "The pump is cavitating.", Anywhere),
	phrase("say_lost_supply", "evaluator", "I have lost my supply.", Anywhere),
	phrase("say_burst", "evaluator", "A line has burst.", Anywhere),
	phrase("say_kink", "evaluator", "Kink in the line.", Anywhere),
	phrase("say_coupling_leak", "evaluator", "A coupling leaks.", Anywhere),
	phrase("say_fluid", "evaluator", "Fluid under the apparatus.", Anywhere),
	phrase("say_complete", "evaluator", "Evolution complete.", Anywhere),
	phrase("say_request_shutdown", "evaluator", "May I shut down?", Anywhere),
	phrase("say_walked_round", "evaluator", "Walk-round done, everything verified.", OnGround),
	phrase("say_except_chocks", "evaluator", "Exception: chocks still placed.", Anywhere),
	phrase("say_except_flashers", "evaluator", "Exception: flashers on.", Anywhere),
	phrase("say_except_tank", "evaluator", "Exception: tank not full.", Anywhere),
	phrase("say_except_gear", "evaluator", "Exception: gear not stowed.", Anywhere),
	phrase("say_back_in_service", "evaluator", "Engine 41 back in service.", Anywhere),

	// gauges, pointed at and named
	value("read_intake", "evaluator", "Intake gauge reads", "psi", 400),
	value("read_discharge", "evaluator", "Pump discharge gauge reads", "psi", 600),
	value("read_line", "evaluator", "Line gauge reads", "psi", 600),
	value("read_speed", "evaluator", "Engine speed reads", "rpm", 4000),
	value("read_oil", "evaluator", "Oil pressure reads", "psi", 200),
	value("read_coolant", "evaluator", "Coolant reads", "°F", 300),
	value("read_volts", "evaluator", "Volts read", "V", 40),
	value("read_pump_temp", "evaluator", "Pump temperature reads", "°F", 300),
	value("read_tank", "evaluator", "Tank level in quarters:", "", 4),

	// to the officer
	phrase("say_officer_wait", "officer", "I need a minute.", Anywhere),
	phrase("say_officer_ok", "officer", "Understood, Captain.", Anywhere),

	// gestures
	sign("sign_water", "crew", "Water coming (arm raised straight up)"),
	sign("sign_ready", "crew", "Ready? (open hand to the crew)"),
	sign("sign_more", "crew", "More pressure? (palm up, lifting)"),
	sign("sign_less", "crew", "Less pressure? (palm down, lowering)"),
	sign("sign_good", "crew", "Good (thumb up)"),
	sign("sign_stop", "all", "Stop (crossed arms overhead)"),
	sign("sign_shut_down", "crew", "Shut down (arm swept across)"),
	sign("sign_pick_up", "crew", "Pick up (arm circled overhead)"),
	sign("sign_kink", "crew", "Kink (two fists, bending)"),
}

// othersSpeech is what crew, officer and evaluator can say or show.
var othersSpeech = []Control{
	from(Evaluator, "objective", "candidate", "", Speech), // the words come from the drill
	from(Evaluator, "place_directed", "candidate", "Stop just past the building, on the hydrant's side.", Speech),
	from(Evaluator, "shutdown_granted", "candidate", "Go ahead and shut down. Traffic is light.", Speech),
	from(Evaluator, "shutdown_refused", "candidate", "Not yet. Complete the evolution first.", Speech),
	from(Evaluator, "heard_complete", "candidate", "Clock stopped.", Speech),
	from(Evaluator, "heard_service", "candidate", "Back in service, heard. The drill is over.", Speech),

	from(Crew, "crew_belted", "candidate", "Seated and belted.", Speech),
	from(Crew, "crew_unloading", "candidate", "Hold it there, taking hose off.", Speech),
	from(Crew, "crew_go_voice", "candidate", "Clear, go ahead and lay!", Speech),
	from(Crew, "crew_go_sign", "candidate", "(waves you on in the mirror)", Gesture),
	from(Crew, "crew_wants_water", "candidate", "Line in place, send the water!", Speech),
	from(Crew, "crew_wants_water_sign", "candidate", "(arm raised straight up)", Gesture),
	from(Crew, "crew_has_water", "candidate", "Water at the nozzle.", Speech),
	from(Crew, "crew_low", "candidate", "Stream is weak, give us more.", Speech),
	from(Crew, "crew_good", "candidate", "Pressure good, flow good.", Speech),
	from(Crew, "crew_high", "candidate", "Too much, bring it down!", Speech),
	from(Crew, "crew_lost", "candidate", "We have lost the line!", Speech),
	from(Crew, "crew_line_again", "candidate", "We have the line again.", Speech),
	from(Crew, "crew_no_water", "candidate", "We have no water!", Speech),
	from(Crew, "crew_shut_down", "candidate", "Understood, standing by to shut down.", Speech),
	from(Crew, "crew_clear", "candidate", "Clear.", Speech),
	from(Crew, "crew_picking_up", "candidate", "(arm circled overhead, picking up)", Gesture),
	from(Crew, "crew_line_stowed", "candidate", "Line drained and loaded.", Speech),
	from(Crew, "crew_repeat", "candidate", "Say again?", Speech),

	from(Officer, "officer_hurry", "candidate", "How long for water?", Speech),
	from(Officer, "officer_fire_out", "candidate", "Fire is knocked down.", Speech),
	number(Officer, "officer_pressure", "candidate", "Make your pressure", "psi"),
}
