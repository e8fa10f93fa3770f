// Package plant is the working machine and the water: engine, drive, pump, relief valve, tank,
// valves, instruments, hydrant, hoses and nozzles, assembled from packages rig and fireground over
// one pipe network, and stepped at a fixed rate.
//
// It takes handle positions (In) and gives what is so and what the instruments show (Out). It knows
// nothing of people, places, drills or rules.
package plant
