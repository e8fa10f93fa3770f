package world

import "steadyneedle/sim/rig"

const (
	noRelief   = "this apparatus has no relief valve"
	noThrottle = "this apparatus has a governor and no hand throttle"
	noGovernor = "this apparatus has no pressure governor"
	noTransfer = "this apparatus has no transfer valve: its pump has one stage"
)

// fit settles what of the controls an apparatus has. What it does not have stays in the list, out of
// everyone's reach, so that numbers and names mean the same on every apparatus.
func fit(list []Control, d *rig.Def) {
	missing := func(why string, ids ...ControlID) {
		for _, id := range ids {
			list[id].By, list[id].Missing = Nowhere, why
		}
	}
	if r := d.Relief; r != nil {
		list[reliefWheel].Max, list[reliefWheel].Start = r.Turns, r.StandbyTurns()
	} else {
		missing(noRelief, reliefWheel, reliefStuck, pilotClogged)
	}
	if d.Governor != nil {
		missing(noThrottle, throttle)
	} else {
		missing(noGovernor, governorMode, governorRaise, governorLower, governorPreset)
	}
	if d.Pump.Transfer == nil {
		missing(noTransfer, transfer, clapperOpen)
	}
	travel(list, d)
}

// travel gives the valves the time that their size, or the apparatus's file, asks for.
func travel(list []Control, d *rig.Def) {
	set := func(c ControlID, v *rig.ValveDef) { list[c].TravelS = v.Fastest(list[c].TravelS) }
	set(intake, &d.Intake.Valve)
	set(tankToPump, &d.Tank.ToPump)
	set(tankFill, &d.TankFill)
	set(recirculation, &d.Recirculation)
	first := len(commonControls) + len(groundControls) + len(faultControls)
	for i := range d.Discharges {
		set(ControlID(first+perDischarge*i), &d.Discharges[i].Valve)
	}
}
