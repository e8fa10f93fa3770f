package world

import (
	"strings"

	"steadyneedle/sim/rig"
)

// faultControls are what may break on machine and source. Nobody reaches them: a drill's cues, an
// instructor or an evaluator set them, and set them back. The drill ground's own (kinks and leaks that
// lie about, a hydrant that weakens) are in groundControls, a line gauge's with its discharge; a
// nozzle that shuts suddenly is the nozzle's own control. A second line hangs on the end of the laid line,
// or of the plan's first line where there is no other.
var faultControls = []Control{
	{Name: "relief_stuck", Kind: Choice, Label: "Relief valve sticks", By: Nowhere, Max: 3, Options: []string{"free", "as it stands", "open", "shut"}},
	{Name: "pilot_clogged", Kind: Measure, Label: "Relief valve's pilot clogged", By: Nowhere, Max: 1},
	{Name: "clapper_open", Kind: Switch, Label: "Clapper valve does not shut", By: Nowhere, Max: 1},
	{Name: "intake_gauge_stuck", Kind: Switch, Label: "Intake gauge sticks", By: Nowhere, Max: 1},
	{Name: "intake_gauge_off", Kind: Measure, Label: "Intake gauge reads too high by", By: Nowhere, Min: -100, Max: 100, Unit: "psi"},
	{Name: "discharge_gauge_stuck", Kind: Switch, Label: "Pump discharge gauge sticks", By: Nowhere, Max: 1},
	{Name: "discharge_gauge_off", Kind: Measure, Label: "Pump discharge gauge reads too high by", By: Nowhere, Min: -150, Max: 150, Unit: "psi"},
	{Name: "tach_stuck", Kind: Switch, Label: "Tachometer sticks", By: Nowhere, Max: 1},
	{Name: "tach_off", Kind: Measure, Label: "Tachometer reads too high by", By: Nowhere, Min: -1000, Max: 1000, Unit: "rpm"},
	{Name: "radiator_gone", Kind: Measure, Label: "Share of the radiator's air lost", By: Nowhere, Max: 1},
	{Name: "tank_lamps_off", Kind: Measure, Label: "Tank lamps show too much by a share", By: Nowhere, Min: -1, Max: 1},
	{Name: "primer_dead", Kind: Switch, Label: "Primer does not run", By: Nowhere, Max: 1},
	{Name: "suction_leak", Kind: Measure, Label: "Air leak in the suction at 22 inHg", By: Nowhere, Max: 100, Unit: "gpm"},
	{Name: "supply_kinked", Kind: Measure, Label: "Supply hose kinked", By: Nowhere, Max: 1},
	{Name: "supply_burst", Kind: Measure, Label: "Hole in the supply hose", By: Nowhere, Max: 4, Unit: "in"},
	{Name: "line_burst", Kind: Measure, Label: "Hole in the line", By: Nowhere, Max: 3, Unit: "in"},
	{Name: "second_line", Kind: Switch, Label: "Crew opens a second line unasked", By: Nowhere, Max: 1, TravelS: 1},
	{Name: "radio_dead", Kind: Switch, Label: "Radio silent", By: Nowhere, Max: 1},
}

// Fails reports whether a control is something that goes wrong: nobody works it, and it is neither the
// crew's doing, nor said, nor a person.
func (c *Control) Fails() bool {
	switch c.Kind {
	case Measure, Switch, Choice:
		return c.By == Nowhere && !c.Person && c.Missing == "" && !strings.HasPrefix(c.Name, "crew_")
	}
	return false
}

var (
	reliefStuck    = common("relief_stuck")
	pilotClogged   = common("pilot_clogged")
	clapperOpen    = common("clapper_open")
	intakeStuck    = common("intake_gauge_stuck")
	intakeOff      = common("intake_gauge_off")
	dischargeStuck = common("discharge_gauge_stuck")
	dischargeOff   = common("discharge_gauge_off")
	tachStuck      = common("tach_stuck")
	tachOff        = common("tach_off")
	radiatorGone   = common("radiator_gone")
	tankLampsOff   = common("tank_lamps_off")
	primerDead     = common("primer_dead")
	suctionAir     = common("suction_leak")
	supplyKinked   = common("supply_kinked")
	supplyBurst    = common("supply_burst")
	lineBurst      = common("line_burst")
	secondLine     = common("second_line")
	radioDead      = common("radio_dead")
)

// feedFaults tells the plant what is broken.
func (w *World) feedFaults() {
	f := &w.in.Faults
	f.Relief = rig.Stuck(w.at[reliefStuck])
	f.PilotClogged = w.at[pilotClogged]
	f.ClapperOpen = w.at[clapperOpen] == 1
	f.RadiatorGone = w.at[radiatorGone]
	f.TankLampsOff = w.at[tankLampsOff]
	f.PrimerDead = w.at[primerDead] == 1
	f.SuctionLeakGPM = w.at[suctionAir]
	f.IntakeGauge.Stuck, f.IntakeGauge.Off = w.at[intakeStuck] == 1, w.at[intakeOff]
	f.DischargeGauge.Stuck, f.DischargeGauge.Off = w.at[dischargeStuck] == 1, w.at[dischargeOff]
	f.Tach.Stuck, f.Tach.Off = w.at[tachStuck] == 1, w.at[tachOff]
	for i := range f.LineGauge {
		f.LineGauge[i].Stuck, f.LineGauge[i].Off = w.at[w.gaugeStuck(i)] == 1, w.at[w.gaugeOff(i)]
	}
}
