package world

import "fmt"

// Kind is what sort of thing a control is; it decides how hands and eyes treat it.
type Kind uint8

const (
	Switch  Kind = iota // two positions, thrown
	Push                // acts while held: 1 pressed, 0 released
	Lever               // quarter turn
	Handle              // pulled
	Wheel               // handwheel, turned; Max turns unless Unit says otherwise
	Knob                // turned
	Choice              // one of a few whole numbers, see Options
	Measure             // a number chosen on the plan (feet, inches, degrees)
	Speech              // said, by radio or voice; Value is the number that goes with it, if Unit is set
	Gesture             // shown by hand
	Walk                // go to a place: Value is the Place
)

// Control is one thing that can be acted on.
type Control struct {
	Name    string
	Kind    Kind
	Label   string   // as on its plate, or the words that are said
	By      Reach    // from where it is in reach (candidate); Nowhere: only others work it
	Speaker Source   // who says it (Speech, Gesture)
	To      string   // addressee (Speech, Gesture): crew, evaluator, officer, all
	Min     float64  // lowest value
	Max     float64  // highest value
	Start   float64  // value at the beginning unless the setup says otherwise
	Unit    string   // of the value; empty for a bare position
	Seen    Reach    // from where else it is seen how it stands
	TravelS float64  // s for full travel at the fastest a hand can; 0 at once
	Options []string // names of a Choice's values, from Min
	Person  bool     // it is where somebody in the street stands
	Missing string   // why nobody can work it on this apparatus, as in "this apparatus has no relief valve"; empty where it is fitted
}

// controls that every apparatus has. Discharges, drains and nozzles are added from the setup.
var commonControls = []Control{
	// moving about
	{Name: "walk", Kind: Walk, Label: "Walk to", By: Anywhere, Min: float64(Cab), Max: float64(Round), Start: float64(Cab)},
	{Name: "look_round", Kind: Push, Label: "Look round, or in the mirror", By: Anywhere, Max: 1},

	// what one wears and carries
	{Name: "clothing", Kind: Switch, Label: "Protective clothing", By: Anywhere, Max: 1, Start: 0},
	{Name: "helmet", Kind: Switch, Label: "Helmet on", By: Anywhere, Max: 1},
	{Name: "portable_radio", Kind: Switch, Label: "Portable radio taken", By: At(Cab), Max: 1},
	{Name: "seat_belt", Kind: Switch, Label: "Seat belt", By: At(Cab), Max: 1},

	// cab
	{Name: "engine_run", Kind: Switch, Label: "Engine", By: At(Cab), Max: 1, Start: 1},
	{Name: "parking_brake", Kind: Switch, Label: "Parking brake", By: At(Cab), Max: 1, Start: 1, TravelS: 0.3},
	{Name: "front_brake_lock", Kind: Switch, Label: "Front brake lock", By: At(Cab), Max: 1},
	{Name: "transmission", Kind: Choice, Label: "Transmission", By: At(Cab), Max: 1, Options: []string{"neutral", "drive"}},
	{Name: "pump_shift", Kind: Choice, Label: "Pump shift", By: At(Cab), Max: 1, Options: []string{"road", "pump"}},
	{Name: "emergency_lights", Kind: Switch, Label: "Emergency lights", By: At(Cab), Max: 1},
	{Name: "headlights", Kind: Switch, Label: "Headlights", By: At(Cab), Max: 1},
	{Name: "flashers", Kind: Switch, Label: "Hazard flashers", By: At(Cab), Max: 1},
	{Name: "horn", Kind: Push, Label: "Horn", By: At(Cab), Max: 1},
	{Name: "drive", Kind: Switch, Label: "Roll to the next stop", By: At(Cab), Max: 1},

	// decisions on the street plan, taken in the cab
	{Name: "stop_at_fire", Kind: Measure, Label: "Stop past the fire building", By: At(Cab), Min: 0, Max: 100, Start: 0, Unit: "ft"},
	{Name: "lay_offset", Kind: Measure, Label: "Hose off the curb", By: At(Cab), Min: 2, Max: 16, Start: 4, Unit: "ft"},
	{Name: "lay_crossing", Kind: Choice, Label: "Cross the street", By: At(Cab), Max: 2, Options: []string{"not at all", "in front of the fire", "in mid-block"}},
	{Name: "line_hose", Kind: Choice, Label: "Hose to lay", By: At(Cab)}, // from the loads of the hose bed
	{Name: "stop_at_hydrant", Kind: Measure, Label: "Panel stops past the hydrant", By: At(Cab), Min: -40, Max: 40, Start: 0, Unit: "ft"},

	// round the apparatus
	{Name: "compartments", Kind: Switch, Label: "Compartment doors shut", By: At(RearStep, Round, Panel), Max: 1, Start: 1},
	{Name: "chock_front", Kind: Choice, Label: "Front chock", By: At(Wheels), Max: 2, Options: []string{"stowed", "left rear wheel", "left front wheel"}, TravelS: 4},
	{Name: "chock_front_gap", Kind: Measure, Label: "Gap to the tire", By: At(Wheels), Max: 12, Start: 0, Unit: "in"},
	{Name: "chock_front_skew", Kind: Measure, Label: "Turned off square", By: At(Wheels), Min: -30, Max: 30, Unit: "deg"},
	{Name: "chock_front_lock", Kind: Switch, Label: "Front chock unfolded and locked", By: At(Wheels), Max: 1},
	{Name: "chock_rear", Kind: Choice, Label: "Rear chock", By: At(Wheels), Max: 2, Options: []string{"stowed", "left rear wheel", "left front wheel"}, TravelS: 4},
	{Name: "chock_rear_gap", Kind: Measure, Label: "Gap to the tire", By: At(Wheels), Max: 12, Start: 0, Unit: "in"},
	{Name: "chock_rear_skew", Kind: Measure, Label: "Turned off square", By: At(Wheels), Min: -30, Max: 30, Unit: "deg"},
	{Name: "chock_rear_lock", Kind: Switch, Label: "Rear chock unfolded and locked", By: At(Wheels), Max: 1},

	// supply
	{Name: "wrench", Kind: Choice, Label: "Hydrant wrench", By: At(RearStep, Hydrant, Panel), Max: 1, Options: []string{"stowed", "carried"}},
	{Name: "supply_length", Kind: Choice, Label: "Supply hose taken", By: At(RearStep, Panel), Options: []string{"none"}}, // and the pieces that the apparatus carries,
	{Name: "adapters", Kind: Choice, Label: "Coupling adapters", By: At(RearStep, Hydrant, Panel), Max: 1, Options: []string{"stowed", "carried"}},
	{Name: "supply_straight", Kind: Switch, Label: "Supply hose laid without kinks", By: At(Round, Hydrant, Panel), Max: 1},
	{Name: "supply_at_engine", Kind: Choice, Label: "Supply hose to the intake", By: At(Panel), Max: 2, Options: []string{"off", "hand-tight", "tight"}, TravelS: 6},
	{Name: "supply_at_hydrant", Kind: Choice, Label: "Supply hose to the hydrant", By: At(Hydrant), Max: 2, Options: []string{"off", "hand-tight", "tight"}, TravelS: 6},
	{Name: "hydrant_cap", Kind: Switch, Label: "Hydrant cap on", By: At(Hydrant), Max: 1, Start: 1, TravelS: 3},
	{Name: "hydrant_valve", Kind: Wheel, Label: "Hydrant valve", By: At(Hydrant), Max: 1, TravelS: 8},

	// the line
	{Name: "line_break", Kind: Choice, Label: "Part the laid line", By: At(RearStep), Max: 2, Options: []string{"whole", "at a coupling by the hose bed", "pulled into the next section"}, TravelS: 4},
	{Name: "bed_coupling", Kind: Choice, Label: "Bed-side coupling", By: At(RearStep), Max: 1, Options: []string{"left lying", "below the rear step"}},
	{Name: "line_slack", Kind: Choice, Label: "Slack for the connection", By: At(RearStep, Panel, Round), Max: 2, Options: []string{"none", "from the bed", "from the fire end"}},
	{Name: "line_route", Kind: Choice, Label: "Way of the line", By: At(RearStep, Panel, Round), Max: 1, Options: []string{"through the work space", "clear of the panel"}},
	{Name: "line_end", Kind: Choice, Label: "End to connect", By: At(RearStep, Panel), Max: 1, Options: []string{"fire side", "bed side"}},
	{Name: "line_to", Kind: Choice, Label: "Line to discharge", By: At(Panel, RearStep), Max: 3, Options: []string{"none", "discharge 1", "discharge 2", "discharge 3"}, TravelS: 6},
	{Name: "line_coupling", Kind: Choice, Label: "Line coupling", By: At(Panel, RearStep), Max: 2, Options: []string{"off", "hand-tight", "tight"}, TravelS: 2},
	{Name: "line_straight", Kind: Switch, Label: "Kink pulled out of the line", By: At(Round), Max: 1},
	{Name: "tighten_leak", Kind: Switch, Label: "Leaking coupling tightened", By: At(Round), Max: 1},

	// panel
	{Name: "radio_compartment", Kind: Switch, Label: "Radio compartment open", By: At(Panel), Max: 1},
	{Name: "radio_volume", Kind: Knob, Label: "Radio volume", By: At(Panel), Max: 1},
	{Name: "panel_lights", Kind: Switch, Label: "Panel lights", By: At(Panel), Max: 1},
	{Name: "throttle", Kind: Knob, Label: "Throttle", By: At(Panel), Max: 1, TravelS: 2.5},
	{Name: "idle_button", Kind: Push, Label: "Idle", By: At(Panel), Max: 1},
	{Name: "tank_to_pump", Kind: Handle, Label: "Tank to pump", By: At(Panel), Max: 1, Start: 0, TravelS: 0.6},
	{Name: "tank_fill", Kind: Handle, Label: "Tank fill", By: At(Panel), Max: 1, TravelS: 0.6},
	{Name: "intake", Kind: Wheel, Label: "Intake", By: At(Panel), Max: 1, TravelS: 3},
	{Name: "bleeder", Kind: Lever, Label: "Intake bleeder", By: At(Panel), Max: 1, TravelS: 0.3},
	{Name: "recirculation", Kind: Lever, Label: "Recirculation", By: At(Panel), Max: 1, TravelS: 0.3},
	{Name: "relief_wheel", Kind: Wheel, Label: "Relief valve", By: At(Panel), Max: 10, Unit: "turns", TravelS: 5},
	{Name: "governor_mode", Kind: Choice, Label: "Governor mode", By: At(Panel), Max: 1, Options: []string{"speed", "pressure"}},
	{Name: "governor_raise", Kind: Push, Label: "Raise", By: At(Panel), Max: 1},
	{Name: "governor_lower", Kind: Push, Label: "Lower", By: At(Panel), Max: 1},
	{Name: "governor_preset", Kind: Push, Label: "Preset", By: At(Panel), Max: 1},
	{Name: "transfer", Kind: Choice, Label: "Transfer valve", By: At(Panel), Max: 1, Options: []string{"volume", "pressure"}},
	{Name: "primer", Kind: Push, Label: "Primer", By: At(Panel), Max: 1},
	{Name: "engine_cooler", Kind: Lever, Label: "Engine cooler", By: At(Panel), Max: 1, TravelS: 0.3},
	{Name: "pump_drain", Kind: Lever, Label: "Pump drain", By: At(Panel), Max: 1, TravelS: 0.3},
}

// dischargeControls are the controls of discharge n, counted from 1.
func dischargeControls(n int) []Control {
	return []Control{
		{Name: fmt.Sprintf("discharge%d", n), Kind: Handle, Label: fmt.Sprintf("Discharge %d", n), By: At(Panel), Max: 1, TravelS: 0.4},
		{Name: fmt.Sprintf("drain%d", n), Kind: Lever, Label: fmt.Sprintf("Drain %d", n), By: At(Panel), Max: 1, TravelS: 0.3},
		{Name: fmt.Sprintf("cap%d", n), Kind: Switch, Label: fmt.Sprintf("Cap of discharge %d on", n), By: At(Panel), Max: 1, Start: 1},
		{Name: fmt.Sprintf("line%d_gauge_stuck", n), Kind: Switch, Label: fmt.Sprintf("Gauge of line %d sticks", n), By: Nowhere, Max: 1},
		{Name: fmt.Sprintf("line%d_gauge_off", n), Kind: Measure, Label: fmt.Sprintf("Gauge of line %d reads too high by", n), By: Nowhere, Min: -150, Max: 150, Unit: "psi"},
	}
}

// nozzleControls are the nozzles of the line, worked by the crew; a wye has two.
func nozzleControls(n int) []Control {
	return []Control{
		{Name: fmt.Sprintf("nozzle%d", n), Kind: Lever, Label: fmt.Sprintf("Nozzle %d", n), By: Nowhere, Max: 1, TravelS: 0.5},
	}
}

// groundControls are things of the scene that only the drill, the crew or an instructor sets.
var groundControls = []Control{
	{Name: "crew_belts", Kind: Switch, Label: "Crew belted", By: Nowhere, Max: 1},
	{Name: "crew_aboard", Kind: Switch, Label: "Crew clear of the hose bed", By: Nowhere, Max: 1, Start: 1},
	{Name: "line_kink", Kind: Measure, Label: "Kink in the line", By: Nowhere, Max: 1, Start: 0},
	{Name: "line_leak", Kind: Measure, Label: "Leaking coupling", By: Nowhere, Max: 200, Unit: "gpm"},
	{Name: "fluid_leak", Kind: Switch, Label: "Fluid under the apparatus", By: Nowhere, Max: 1},
	{Name: "hydrant_loss", Kind: Measure, Label: "Hydrant static lost", By: Nowhere, Max: 200, Unit: "psi"},
}
