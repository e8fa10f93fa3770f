package fidelity

import "steadyneedle/sim/plant"

// Device is one physical effect of the model, with tests that fail when it is left out: proof that they
// test it.
type Device struct {
	Effect plant.Effects
	Shown  string   // what it does
	Fails  []string // ids
}

// Devices lists the effects that can be left out of the model.
func Devices() []Device {
	return []Device{
		{plant.Cavitation, "a pump short of suction loses its head", []string{"draft-flow-2100-rpm", "draft-cavitates", "draft-gravel", "cavitation-onset"}},
		{plant.AirBinding, "air in the impeller's eye takes the head", []string{"unbled-bound", "unbled-back", "tank-dry-half", "tank-dry-dead"}},
		{plant.Inertance, "a column of water that is stopped strikes", []string{"slam-fast", "slam-slow", "hammer-500-in-0.5", "hammer-over-closure", "intake-fast", "column-4-300-in-0.3"}},
		{plant.Elasticity, "hose gives way, and softens the strike", []string{"hammer-500-in-0.5", "hammer-300-in-0.2", "slam-fast", "column-5-500-in-0.3"}},
		{plant.Collapse, "a supply hose drawn below zero goes flat and lets air in", []string{"weak-intake", "weak-flat", "hydrant-lost-flat"}},
		{plant.Heat, "what the pump wastes warms its water", []string{"dead-head-933", "dead-head-to-140", "energy-shut", "recirculation-tank", "energy-recirculating", "minimum-flow"}},
		{plant.Relief, "the discharge relief valve opens", []string{"relief-150-in-3-peak", "relief-90-in-3-opened", "relief-150-in-10-lamp", "relief-holds-throttle"}},
		{plant.ReliefLag, "its pilot and main valve take time", []string{"relief-150-in-3-peak", "relief-150-in-3-opened", "relief-150-in-3-rest"}},
		{plant.Droop, "the engine gives way under load, and races when it goes", []string{"droop"}},
	}
}
