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

// seenGPM is the flow from which water is seen to run (assumption).
const seenGPM = 0.3

// flag is 1 if so. Through a whole number the compiler finds the way without a branch.
func flag(b bool) float64 {
	n := 0
	if b {
		n = 1
	}
	return float64(n)
}

// plantSignals are the plant's.
var plantSignals = []source{
	{Signal{"time", "s", Anywhere, "since the drill began"}, kept(func(w *World) *float64 { return &w.sum.time })},
	{Signal{"clock", "s", Nowhere, "the drill's clock: from both brakes set to completion called; 0 before"}, kept(func(w *World) *float64 { return &w.sum.clock })},
	{Signal{"place", "", Anywhere, "where the candidate stands, as the number of the place"}, kept(func(w *World) *float64 { return &w.sum.place })},

	{Signal{"engine_rpm", "rpm", Nowhere, "true engine speed"}, kept(func(w *World) *float64 { return &w.out.EngineRPM })},
	{Signal{"shaft_rpm", "rpm", Nowhere, "pump shaft, as engine speed"}, kept(func(w *World) *float64 { return &w.out.PumpShaftRPM })},
	{Signal{"engine_load", "", Anywhere, "share of the torque available, heard in the engine's note"}, kept(func(w *World) *float64 { return &w.out.EngineLoad })},
	{Signal{"clashes", "", At(Cab), "gear clashes so far (heard in the cab)"}, kept(func(w *World) *float64 { return &w.out.Clashes })},
	{Signal{"shaft_stop", "s", Nowhere, "since the transmission went to neutral"}, kept(func(w *World) *float64 { return &w.out.ShaftStopS })},
	{Signal{"pump_engaged", "", At(Cab), "lamp: pump shift completed"}, lamp(func(w *World) *bool { return &w.out.PumpEngaged })},
	{Signal{"ok_to_pump", "", At(Cab), "lamp: engaged, in drive, brake set"}, lamp(func(w *World) *bool { return &w.out.OKToPump })},
	{Signal{"throttle_ready", "", At(Panel), "lamp: the panel throttle may be used"}, lamp(func(w *World) *bool { return &w.out.ThrottleReady })},
	{Signal{"door_lamp", "", At(Cab), "lamp: a compartment is open"}, byHand(func(w *World) float64 { return flag(w.at[compartments] < 1) })},
	{Signal{"belt_lamp", "", At(Cab), "lamp: someone is not belted"}, byHand(func(w *World) float64 { return flag(!w.everyoneBelted()) })},

	{Signal{"intake_psi", "psi", Nowhere, "true pressure at the pump's intake"}, kept(func(w *World) *float64 { return &w.out.IntakePSI })},
	{Signal{"discharge_psi", "psi", Nowhere, "true pressure at the pump's discharge"}, kept(func(w *World) *float64 { return &w.out.DischargePSI })},
	{Signal{"net_psi", "psi", Nowhere, "pump's rise"}, kept(func(w *World) *float64 { return &w.out.NetPSI })},
	{Signal{"pump_gpm", "gpm", Nowhere, "through the impeller"}, kept(func(w *World) *float64 { return &w.out.PumpGPM })},
	{Signal{"pump_f", "°F", Nowhere, "water in the casing"}, kept(func(w *World) *float64 { return &w.out.PumpF })},
	{Signal{"casing_water", "", Nowhere, "share of the casing that holds water"}, kept(func(w *World) *float64 { return &w.out.CasingWater })},
	{Signal{"head_factor", "", Nowhere, "what cavitation leaves of the head"}, kept(func(w *World) *float64 { return &w.out.HeadFactor })},
	{Signal{"air_factor", "", Nowhere, "what air leaves of the head"}, kept(func(w *World) *float64 { return &w.out.AirFactor })},
	{Signal{"npsh_available", "ft", Nowhere, "net positive suction head at hand"}, kept(func(w *World) *float64 { return &w.out.NPSHa })},
	{Signal{"npsh_required", "ft", Nowhere, "net positive suction head needed for 3 % head loss"}, kept(func(w *World) *float64 { return &w.out.NPSHr })},
	{Signal{"damage", "", Nowhere, "wear by cavitation and running dry, 1 ruined (assumption)"}, kept(func(w *World) *float64 { return &w.out.Damage })},
	{Signal{"primer_run", "s", At(Panel), "present run of the primer"}, kept(func(w *World) *float64 { return &w.out.PrimerS })},
	{Signal{"shaft_hp", "hp", Nowhere, "power into the pump"}, kept(func(w *World) *float64 { return &w.out.ShaftHP })},
	{Signal{"intake_gpm", "gpm", Nowhere, "through the intake valve"}, kept(func(w *World) *float64 { return &w.out.IntakeGPM })},
	{Signal{"hydrant_gpm", "gpm", Nowhere, "out of the hydrant"}, kept(func(w *World) *float64 { return &w.out.HydrantGPM })},
	{Signal{"tank_to_pump_gpm", "gpm", Nowhere, "out of the tank into the pump"}, kept(func(w *World) *float64 { return &w.out.TankToPumpGPM })},
	{Signal{"tank_fill_gpm", "gpm", Nowhere, "through tank fill"}, kept(func(w *World) *float64 { return &w.out.TankFillGPM })},
	{Signal{"recirc_gpm", "gpm", Nowhere, "through recirculation"}, kept(func(w *World) *float64 { return &w.out.RecircGPM })},
	{Signal{"relief_gpm", "gpm", Nowhere, "through the relief valve's by-pass"}, kept(func(w *World) *float64 { return &w.out.ReliefGPM })},
	{Signal{"bleeder_gpm", "gpm", Nowhere, "water out of the bleeder"}, kept(func(w *World) *float64 { return &w.out.BleederGPM })},
	{Signal{"dump_gpm", "gpm", Nowhere, "out of open, unconnected outlets"}, kept(func(w *World) *float64 { return &w.out.DumpGPM })},
	{Signal{"relief_lift", "", Nowhere, "opening of the relief valve"}, kept(func(w *World) *float64 { return &w.out.ReliefLift })},
	{Signal{"relief_set_psi", "psi", Nowhere, "pressure at which the relief valve begins to lift"}, kept(func(w *World) *float64 { return &w.out.ReliefSetPSI })},
	{Signal{"relief_fitted", "", Anywhere, "the apparatus has a discharge relief valve"}, fixed(func(w *World) float64 { return flag(w.setup.Rig.Relief != nil) })},
	{Signal{"governor_fitted", "", Anywhere, "the apparatus has a pressure governor"}, fixed(func(w *World) float64 { return flag(w.setup.Rig.Governor != nil) })},
	{Signal{"transfer_fitted", "", Anywhere, "the pump has two stages and a transfer valve"}, fixed(func(w *World) float64 { return flag(w.setup.Rig.Pump.Transfer != nil) })},
	{Signal{"throttle_asked", "", Nowhere, "what hand or governor asks of the engine: 0 idle, 1 governed speed"}, kept(func(w *World) *float64 { return &w.out.ThrottleAsked })},
	{Signal{"governor_set_psi", "psi", At(Panel), "the governor's display: pressure set; 0 at idle and in speed mode"}, kept(func(w *World) *float64 { return &w.out.GovernorSetPSI })},
	{Signal{"governor_set_rpm", "rpm", At(Panel), "the governor's display: speed set; 0 at idle and in pressure mode"}, kept(func(w *World) *float64 { return &w.out.GovernorSetRPM })},
	{Signal{"low_water_lamp", "", At(Panel), "lamp of the governor: cut back, or gone to idle, for lack of water"}, lamp(func(w *World) *bool { return &w.out.LowWaterLamp })},
	{Signal{"transfer_at", "", Nowhere, "where the transfer valve is: 0 volume, 1 pressure"}, kept(func(w *World) *float64 { return &w.out.TransferAt })},
	{Signal{"volume_lamp", "", At(Panel), "lamp: the transfer valve stands in volume (parallel)"}, kept(func(w *World) *float64 { return &w.sum.volumeLamp })},
	{Signal{"pressure_lamp", "", At(Panel), "lamp: the transfer valve stands in pressure (series)"}, kept(func(w *World) *float64 { return &w.sum.pressureLamp })},
	{Signal{"tank_size", "gal", Anywhere, "what the tank holds when full, from its plate"}, fixed(func(w *World) float64 { return w.setup.Rig.Tank.Gallons })},
	{Signal{"idle_speed", "rpm", Anywhere, "the engine's idle"}, fixed(func(w *World) float64 { return w.setup.Rig.Engine.IdleRPM })},
	{Signal{"transfer_jolts", "", At(Panel), "blows of the transfer valve, changed over at too high a pressure (heard)"}, kept(func(w *World) *float64 { return &w.out.TransferJolts })},
	{Signal{"intake_relief_gpm", "gpm", Nowhere, "out of the intake relief valve"}, kept(func(w *World) *float64 { return &w.out.IntakeReliefGPM })},
	{Signal{"intake_relief_open", "", OnGround, "water runs out of the intake relief valve"}, kept(func(w *World) *float64 { return &w.sum.intakeReliefOpen })},
	{Signal{"thermal_gpm", "gpm", Nowhere, "out of the thermal relief valve"}, kept(func(w *World) *float64 { return &w.out.ThermalGPM })},
	{Signal{"thermal_open", "", OnGround, "warm water runs out of the thermal relief valve"}, kept(func(w *World) *float64 { return &w.sum.thermalOpen })},
	{Signal{"tank_gal", "gal", At(TankTop), "water in the tank, seen by looking in"}, kept(func(w *World) *float64 { return &w.out.TankGal })},
	{Signal{"tank_f", "°F", Nowhere, "water in the tank"}, kept(func(w *World) *float64 { return &w.out.TankF })},
	{Signal{"overflowing", "", OnGround, "water runs down at the tires"}, lamp(func(w *World) *bool { return &w.out.Overflowing })},
	{Signal{"hydrant_psi", "psi", Nowhere, "at the hydrant's outlet"}, kept(func(w *World) *float64 { return &w.out.HydrantPSI })},
	{Signal{"supply_fill", "", At(Panel, Round, Hydrant), "how full the supply hose looks"}, kept(func(w *World) *float64 { return &w.out.SupplyFill })},
	{Signal{"supply_air", "", Nowhere, "air in the supply hose, share of its volume"}, kept(func(w *World) *float64 { return &w.out.SupplyAir })},
	{Signal{"supply_psi", "psi", Nowhere, "outside the intake valve"}, kept(func(w *World) *float64 { return &w.out.SupplyPSI })},
	{Signal{"supply_flat", "", At(Panel, Round, Hydrant), "the supply hose has gone flat"}, lamp(func(w *World) *bool { return &w.out.SupplyFlat })},
	{Signal{"supply_surge_psi", "psi", Nowhere, "largest pressure at the intake valve, on either side, above static since the valve moved"}, kept(func(w *World) *float64 { return &w.out.SupplySurgePSI })},
	{Signal{"bleeder_air", "", At(Panel), "the bleeder spits air"}, lamp(func(w *World) *bool { return &w.out.BleederAir })},

	{Signal{"intake_gauge", "psi", At(Panel), "needle: psi above zero, inHg (negative) below"}, kept(func(w *World) *float64 { return &w.out.IntakeNeedle })},
	{Signal{"discharge_gauge", "psi", At(Panel), "needle of the pump discharge gauge"}, kept(func(w *World) *float64 { return &w.out.DischargeNeedle })},
	{Signal{"tach", "rpm", At(Panel, Cab), "needle of the tachometer"}, kept(func(w *World) *float64 { return &w.out.TachNeedle })},
	{Signal{"oil_gauge", "psi", At(Panel, Cab), "needle"}, kept(func(w *World) *float64 { return &w.out.OilNeedle })},
	{Signal{"coolant_gauge", "°F", At(Panel, Cab), "needle"}, kept(func(w *World) *float64 { return &w.out.CoolantNeedle })},
	{Signal{"volts_gauge", "V", At(Panel, Cab), "needle"}, kept(func(w *World) *float64 { return &w.out.VoltsNeedle })},
	{Signal{"pump_temp_gauge", "°F", At(Panel), "needle"}, kept(func(w *World) *float64 { return &w.out.PumpTempNeedle })},
	{Signal{"tank_lamps", "", At(Panel), "level lamps lit, 0 (below E) to 5 (F)"}, kept(func(w *World) *float64 { return &w.sum.tankLamps })},
	{Signal{"intake_open_lamp", "", At(Panel), "lamp: intake valve full open"}, lamp(func(w *World) *bool { return &w.out.IntakeOpenLamp })},
	{Signal{"amber", "", At(Panel), "lamp: relief valve by-passing"}, lamp(func(w *World) *bool { return &w.out.AmberLamp })},
	{Signal{"pump_hot_lamp", "", At(Panel), "lamp"}, lamp(func(w *World) *bool { return &w.out.PumpHotLamp })},
	{Signal{"engine_hot_lamp", "", At(Panel, Cab), "lamp"}, lamp(func(w *World) *bool { return &w.out.EngineHotLamp })},
	{Signal{"low_oil_lamp", "", At(Panel, Cab), "lamp"}, lamp(func(w *World) *bool { return &w.out.LowOilLamp })},
	{Signal{"bypass_sound", "", At(Panel), "water rushing through the by-pass"}, kept(func(w *World) *float64 { return &w.out.BypassSound })},
	{Signal{"gravel_sound", "", At(Panel), "rattle in the casing"}, kept(func(w *World) *float64 { return &w.out.GravelSound })},
	{Signal{"air_sound", "", At(Panel), "hiss of air"}, kept(func(w *World) *float64 { return &w.out.AirSound })},
}

// dischargeSignals are those of discharge n, counted from 1.
func dischargeSignals(n int) []source {
	i := n - 1
	return []source{
		{Signal{fmt.Sprintf("line%d_gauge", n), "psi", At(Panel), "needle of the line's own gauge"}, kept(func(w *World) *float64 { return &w.out.LineNeedle[i] })},
		{Signal{fmt.Sprintf("line%d_psi", n), "psi", Nowhere, "true, down-stream of the discharge valve"}, kept(func(w *World) *float64 { return &w.out.Lines[i].ValvePSI })},
		{Signal{fmt.Sprintf("line%d_gpm", n), "gpm", Nowhere, "through the discharge valve"}, kept(func(w *World) *float64 { return &w.out.Lines[i].GPM })},
		{Signal{fmt.Sprintf("line%d_fill", n), "", At(Panel, Round, RearStep), "how full the line looks"}, kept(func(w *World) *float64 { return &w.out.Lines[i].Fill })},
		{Signal{fmt.Sprintf("line%d_leak", n), "gpm", Nowhere, "lost at couplings, through a burst, to a line opened unasked"}, kept(func(w *World) *float64 { return &w.out.Lines[i].LeakGPM })},
	}
}

// nozzleSignals are those of nozzle n of the line, counted from 1.
func nozzleSignals(n int) []source {
	i := n - 1
	return []source{
		{Signal{fmt.Sprintf("nozzle%d_psi", n), "psi", Nowhere, "at the nozzle"}, kept(func(w *World) *float64 { return &w.sum.nozzles[i].psi })},
		{Signal{fmt.Sprintf("nozzle%d_gpm", n), "gpm", Nowhere, "out of the nozzle"}, kept(func(w *World) *float64 { return &w.sum.nozzles[i].gpm })},
		{Signal{fmt.Sprintf("nozzle%d_reaction", n), "lbf", Nowhere, "push on the crew"}, kept(func(w *World) *float64 { return &w.sum.nozzles[i].reaction })},
	}
}

// bodySignals tell of the apparatus as a vehicle and of what lies on the ground.
var bodySignals = []source{
	{Signal{"speed", "ft/s", At(Cab), "over the road"}, kept(func(w *World) *float64 { return &w.body.speed })},
	{Signal{"travelled", "ft", Nowhere, "since the stop at the fire"}, byHand(func(w *World) float64 { return w.body.travelled() })},
	{Signal{"stage", "", Anywhere, "0 before rolling, 1 at the fire, 2 laying, 3 at the hydrant"}, byHand(func(w *World) float64 { return float64(w.body.stage) })},
	{Signal{"offset_error_share", "", Nowhere, "share of the laid length outside 6 to 8 ft of the curb, ends free"}, byHand(func(w *World) float64 { return w.body.offsetErrorShare() })},
	{Signal{"crossed_wrong", "", Nowhere, "the line crosses the street elsewhere than in front of the fire, or not at all where it must"}, byHand(func(w *World) float64 { return flag(w.crossedWrong()) })},
	{Signal{"horn_blasts", "", At(Cab), "blasts of the horn so far"}, kept(func(w *World) *float64 { return &w.body.blasts })},
	{Signal{"sections_laid", "", At(RearStep, Round), "50 ft sections on the ground, counted by eye"}, byHand(func(w *World) float64 { return w.sectionsLaid() })},
	{Signal{"laid_ft", "ft", Nowhere, "hose between the parted coupling and the fire"}, byHand(func(w *World) float64 { return w.laidFt() })},
	{Signal{"supply_reach", "ft", At(Panel, RearStep, Hydrant), "from hydrant outlet to intake, as paced off"}, byHand(func(w *World) float64 { return w.supplyReach() })},
	{Signal{"line_size", "in", Anywhere, "size of the hose that the line is laid of"}, byHand(func(w *World) float64 { return w.load().SizeIn })},
	{Signal{"line_c", "", Anywhere, "friction coefficient of the hose that the line is laid of, as marked on it"}, byHand(func(w *World) float64 { return w.load().LossC })},
	{Signal{"supply_ft", "ft", Anywhere, "length of the supply hose taken; 0 for none"}, byHand(func(w *World) float64 { return w.taken().lengthFt })},
	{Signal{"supply_size", "in", Anywhere, "size of the supply hose taken; 0 for none"}, byHand(func(w *World) float64 { return w.taken().sizeIn })},
	{Signal{"supply_slack", "ft", Nowhere, "supply hose beyond the reach"}, byHand(func(w *World) float64 { return w.supplySlack() })},
	{Signal{"supply_kink", "", At(Panel, Round, Hydrant), "kink in the supply hose, 0 none to 1 shut"}, byHand(func(w *World) float64 { return w.supplyKink() })},
	{Signal{"line_ok", "", Nowhere, "the fire-side end hangs on the right discharge"}, byHand(func(w *World) float64 { return flag(w.lineOK()) })},
	{Signal{"line_leak_seen", "", At(Round), "a coupling drips"}, byHand(func(w *World) float64 { return flag(w.leaking()) })},
	{Signal{"line_kink_seen", "", At(Round), "a kink shows in the line"}, byHand(func(w *World) float64 { return flag(w.lineKink() > 0) })},
	{Signal{"fluid_seen", "", At(Round), "fluid under the apparatus"}, kept(func(w *World) *float64 { return &w.at[fluidLeak] })},
	{Signal{"chocks_set", "", Anywhere, "chocks standing before and behind one rear wheel, 0 to 2"}, byHand(func(w *World) float64 { return w.chocksSet() })},
	{Signal{"chock_fault", "", Nowhere, "a chock stands at the wrong wheel, unlocked, off square or away from the tire"}, byHand(func(w *World) float64 { return flag(w.chockFault()) })},
	{Signal{"trapped_psi", "psi", Nowhere, "highest pressure shut in anywhere outside the pump"}, kept(func(w *World) *float64 { return &w.sum.trapped })},
	{Signal{"supply_trapped_psi", "psi", Nowhere, "pressure behind the supply couplings"}, kept(func(w *World) *float64 { return &w.sum.supplyTrapped })},
	{Signal{"line_trapped_psi", "psi", Nowhere, "pressure behind the line's coupling"}, kept(func(w *World) *float64 { return &w.sum.lineTrapped })},
	{Signal{"live_uncoupling", "", Nowhere, "times a coupling or cap was opened with more than 5 psi behind it"}, kept(func(w *World) *float64 { return &w.body.liveUncouplings })},
	{Signal{"wind_down", "s", Nowhere, "since the transmission went to neutral with the pump engaged; 0 in drive"}, kept(func(w *World) *float64 { return &w.sum.windDown })},
}
