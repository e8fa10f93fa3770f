package world

import "fmt"

// SignalID numbers a signal of one world.
type SignalID uint16

// Signal is one number that the world tells each tick. Rules, plots, operators and files know it by
// Name. Every control is a signal too, under its own name: where the control is now; a phrase's or
// gesture's signal counts how often it has been given, and NAME_value holds the last number said.
type Signal struct {
	Name string
	Unit string // psi, gpm, rpm, °F, ft, s, gal …; empty for a fraction, a flag (0 or 1) or a count
	Seen Reach  // from where a person perceives it; Nowhere: truth only
	Doc  string
}

// plantSignals are the plant's, in the order that publish writes them.
var plantSignals = []Signal{
	{"time", "s", Anywhere, "since the drill began"},
	{"clock", "s", Nowhere, "the drill's clock: from both brakes set to completion called; 0 before"},
	{"place", "", Anywhere, "where the candidate stands, as the number of the place"},

	{"engine_rpm", "rpm", Nowhere, "true engine speed"},
	{"shaft_rpm", "rpm", Nowhere, "pump shaft, as engine speed"},
	{"engine_load", "", Nowhere, "share of the torque available"},
	{"clashes", "", At(Cab), "gear clashes so far (heard in the cab)"},
	{"shaft_stop", "s", Nowhere, "since the transmission went to neutral"},
	{"pump_engaged", "", At(Cab), "lamp: pump shift completed"},
	{"ok_to_pump", "", At(Cab), "lamp: engaged, in drive, brake set"},
	{"throttle_ready", "", At(Panel), "lamp: the panel throttle may be used"},
	{"door_lamp", "", At(Cab), "lamp: a compartment is open"},
	{"belt_lamp", "", At(Cab), "lamp: someone is not belted"},

	{"intake_psi", "psi", Nowhere, "true pressure at the pump's intake"},
	{"discharge_psi", "psi", Nowhere, "true pressure at the pump's discharge"},
	{"net_psi", "psi", Nowhere, "pump's rise"},
	{"pump_gpm", "gpm", Nowhere, "through the impeller"},
	{"pump_f", "°F", Nowhere, "water in the casing"},
	{"casing_water", "", Nowhere, "share of the casing that holds water"},
	{"head_factor", "", Nowhere, "what cavitation leaves of the head"},
	{"air_factor", "", Nowhere, "what air leaves of the head"},
	{"npsh_available", "ft", Nowhere, "net positive suction head at hand"},
	{"npsh_required", "ft", Nowhere, "net positive suction head needed for 3 % head loss"},
	{"damage", "", Nowhere, "wear by cavitation and running dry, 1 ruined (assumption)"},
	{"primer_run", "s", At(Panel), "present run of the primer"},
	{"shaft_hp", "hp", Nowhere, "power into the pump"},
	{"intake_gpm", "gpm", Nowhere, "through the intake valve"},
	{"hydrant_gpm", "gpm", Nowhere, "out of the hydrant"},
	{"tank_to_pump_gpm", "gpm", Nowhere, "out of the tank into the pump"},
	{"tank_fill_gpm", "gpm", Nowhere, "through tank fill"},
	{"recirc_gpm", "gpm", Nowhere, "through recirculation"},
	{"relief_gpm", "gpm", Nowhere, "through the relief valve's by-pass"},
	{"bleeder_gpm", "gpm", Nowhere, "water out of the bleeder"},
	{"dump_gpm", "gpm", Nowhere, "out of open, unconnected outlets"},
	{"relief_lift", "", Nowhere, "opening of the relief valve"},
	{"relief_set_psi", "psi", Nowhere, "pressure at which the relief valve begins to lift"},
	{"tank_gal", "gal", At(TankTop), "water in the tank, seen by looking in"},
	{"tank_f", "°F", Nowhere, "water in the tank"},
	{"overflowing", "", OnGround, "water runs down at the tires"},
	{"hydrant_psi", "psi", Nowhere, "at the hydrant's outlet"},
	{"supply_fill", "", At(Panel, Round, Hydrant), "how full the supply hose looks"},
	{"supply_air", "", Nowhere, "air in the supply hose, share of its volume"},
	{"supply_psi", "psi", Nowhere, "outside the intake valve"},
	{"supply_flat", "", At(Panel, Round, Hydrant), "the supply hose has gone flat"},
	{"supply_surge_psi", "psi", Nowhere, "largest intake pressure above static since the intake moved"},
	{"bleeder_air", "", At(Panel), "the bleeder spits air"},

	{"intake_gauge", "psi", At(Panel), "needle: psi above zero, inHg (negative) below"},
	{"discharge_gauge", "psi", At(Panel), "needle of the pump discharge gauge"},
	{"tach", "rpm", At(Panel, Cab), "needle of the tachometer"},
	{"oil_gauge", "psi", At(Panel, Cab), "needle"},
	{"coolant_gauge", "°F", At(Panel, Cab), "needle"},
	{"volts_gauge", "V", At(Panel, Cab), "needle"},
	{"pump_temp_gauge", "°F", At(Panel), "needle"},
	{"tank_lamps", "", At(Panel), "level lamps lit, 0 (below E) to 5 (F)"},
	{"intake_open_lamp", "", At(Panel), "lamp: intake valve full open"},
	{"amber", "", At(Panel), "lamp: relief valve by-passing"},
	{"pump_hot_lamp", "", At(Panel), "lamp"},
	{"engine_hot_lamp", "", At(Panel, Cab), "lamp"},
	{"low_oil_lamp", "", At(Panel, Cab), "lamp"},
	{"bypass_sound", "", At(Panel), "water rushing through the by-pass"},
	{"gravel_sound", "", At(Panel), "rattle in the casing"},
	{"air_sound", "", At(Panel), "hiss of air"},
}

// dischargeSignals are those of discharge n, counted from 1.
func dischargeSignals(n int) []Signal {
	return []Signal{
		{fmt.Sprintf("line%d_gauge", n), "psi", At(Panel), "needle of the line's own gauge"},
		{fmt.Sprintf("line%d_psi", n), "psi", Nowhere, "true, down-stream of the discharge valve"},
		{fmt.Sprintf("line%d_gpm", n), "gpm", Nowhere, "through the discharge valve"},
		{fmt.Sprintf("line%d_fill", n), "", At(Panel, Round, RearStep), "how full the line looks"},
		{fmt.Sprintf("line%d_leak", n), "gpm", Nowhere, "lost at couplings"},
	}
}

// nozzleSignals are those of nozzle n of the line, counted from 1.
func nozzleSignals(n int) []Signal {
	return []Signal{
		{fmt.Sprintf("nozzle%d_psi", n), "psi", Nowhere, "at the nozzle"},
		{fmt.Sprintf("nozzle%d_gpm", n), "gpm", Nowhere, "out of the nozzle"},
		{fmt.Sprintf("nozzle%d_reaction", n), "lbf", Nowhere, "push on the crew"},
	}
}

// bodySignals tell of the apparatus as a vehicle and of what lies on the ground.
var bodySignals = []Signal{
	{"speed", "ft/s", At(Cab), "over the road"},
	{"travelled", "ft", Nowhere, "since the stop at the fire"},
	{"stage", "", Anywhere, "0 before rolling, 1 at the fire, 2 laying, 3 at the hydrant"},
	{"offset_error_share", "", Nowhere, "share of the laid length outside 6 to 8 ft of the curb, ends free"},
	{"crossed_wrong", "", Nowhere, "the line crosses the street elsewhere than in front of the fire, or not at all where it must"},
	{"horn_blasts", "", At(Cab), "blasts of the horn so far"},
	{"sections_laid", "", At(RearStep, Round), "50 ft sections on the ground, counted by eye"},
	{"laid_ft", "ft", Nowhere, "hose between the parted coupling and the fire"},
	{"supply_reach", "ft", At(Panel, RearStep, Hydrant), "from hydrant outlet to intake, as paced off"},
	{"supply_slack", "ft", Nowhere, "supply hose beyond the reach"},
	{"supply_kink", "", At(Panel, Round, Hydrant), "kink in the supply hose, 0 none to 1 shut"},
	{"line_ok", "", Nowhere, "the fire-side end hangs on the right discharge"},
	{"line_leak_seen", "", At(Round), "a coupling drips"},
	{"line_kink_seen", "", At(Round), "a kink shows in the line"},
	{"fluid_seen", "", At(Round), "fluid under the apparatus"},
	{"chocks_set", "", Anywhere, "chocks standing before and behind one rear wheel, 0 to 2"},
	{"chock_fault", "", Nowhere, "a chock stands at the wrong wheel, unlocked, off square or away from the tire"},
	{"trapped_psi", "psi", Nowhere, "highest pressure shut in anywhere outside the pump"},
	{"supply_trapped_psi", "psi", Nowhere, "pressure behind the supply couplings"},
	{"line_trapped_psi", "psi", Nowhere, "pressure behind the line's coupling"},
	{"live_uncoupling", "", Nowhere, "times a coupling or cap was opened with more than 5 psi behind it"},
	{"wind_down", "s", Nowhere, "since the transmission went to neutral with the pump engaged; 0 in drive"},
}
