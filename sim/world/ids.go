package world

// Controls that the world itself acts on. They stand first in every world's list, so that their
// numbers do not depend on the apparatus.
var (
	walk            = common("walk")
	lookRound       = common("look_round")
	portableRadio   = common("portable_radio")
	seatBelt        = common("seat_belt")
	engineRun       = common("engine_run")
	parkingBrake    = common("parking_brake")
	frontBrakeLock  = common("front_brake_lock")
	transmission    = common("transmission")
	pumpShift       = common("pump_shift")
	horn            = common("horn")
	drive           = common("drive")
	stopAtFire      = common("stop_at_fire")
	layOffset       = common("lay_offset")
	layCrossing     = common("lay_crossing")
	lineHose        = common("line_hose")
	stopAtHydrant   = common("stop_at_hydrant")
	compartments    = common("compartments")
	chockFront      = common("chock_front")
	chockFrontGap   = common("chock_front_gap")
	chockFrontSkew  = common("chock_front_skew")
	chockFrontLock  = common("chock_front_lock")
	chockRear       = common("chock_rear")
	chockRearGap    = common("chock_rear_gap")
	chockRearSkew   = common("chock_rear_skew")
	chockRearLock   = common("chock_rear_lock")
	wrench          = common("wrench")
	supplyLength    = common("supply_length")
	adapters        = common("adapters")
	supplyStraight  = common("supply_straight")
	supplyAtEngine  = common("supply_at_engine")
	supplyAtHydrant = common("supply_at_hydrant")
	hydrantCap      = common("hydrant_cap")
	hydrantValve    = common("hydrant_valve")
	lineBreak       = common("line_break")
	bedCoupling     = common("bed_coupling")
	lineSlack       = common("line_slack")
	lineEnd         = common("line_end")
	lineTo          = common("line_to")
	lineCoupling    = common("line_coupling")
	lineStraight    = common("line_straight")
	tightenLeak     = common("tighten_leak")
	radioOpen       = common("radio_compartment")
	radioVolume     = common("radio_volume")
	throttle        = common("throttle")
	idleButton      = common("idle_button")
	tankToPump      = common("tank_to_pump")
	tankFill        = common("tank_fill")
	intake          = common("intake")
	bleeder         = common("bleeder")
	recirculation   = common("recirculation")
	reliefWheel     = common("relief_wheel")
	governorMode    = common("governor_mode")
	governorRaise   = common("governor_raise")
	governorLower   = common("governor_lower")
	governorPreset  = common("governor_preset")
	transfer        = common("transfer")
	primer          = common("primer")
	engineCooler    = common("engine_cooler")
	pumpDrain       = common("pump_drain")
	crewBelts       = common("crew_belts")
	crewAboard      = common("crew_aboard")
	lineKinked      = common("line_kink")
	lineLeak        = common("line_leak")
	fluidLeak       = common("fluid_leak")
	hydrantLoss     = common("hydrant_loss")
)

// common finds a control of the fixed lists; a name that is not there is a mistake in this package
// and shows at the first run of anything.
func common(name string) ControlID {
	for i := range commonControls {
		if commonControls[i].Name == name {
			return ControlID(i)
		}
	}
	for i := range groundControls {
		if groundControls[i].Name == name {
			return ControlID(len(commonControls) + i)
		}
	}
	for i := range faultControls {
		if faultControls[i].Name == name {
			return ControlID(len(commonControls) + len(groundControls) + i)
		}
	}
	panic("no control named " + name)
}

const perDischarge = 5 // valve, drain, cap; gauge sticks, gauge reads off

func (w *World) discharge(i int) ControlID  { return w.firstDischarge + ControlID(perDischarge*i) }
func (w *World) drain(i int) ControlID      { return w.discharge(i) + 1 }
func (w *World) cap(i int) ControlID        { return w.discharge(i) + 2 }
func (w *World) gaugeStuck(i int) ControlID { return w.discharge(i) + 3 }
func (w *World) gaugeOff(i int) ControlID   { return w.discharge(i) + 4 }
func (w *World) nozzleControl(i int) ControlID {
	return w.discharge(len(w.setup.Rig.Discharges)) + ControlID(i)
}
