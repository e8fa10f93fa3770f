// Package hydraulics holds the fire service's published formulas as pure functions in the trade's
// units: nozzles, hose friction, pump discharge pressure, hydrants, power, suction, heat and hammer.
//
// Each names its source; "common practice" means that every handbook has it and none owns it. The
// simulated machine does not run on these: they are what it is checked against, and what drills and
// reports calculate with.
package hydraulics
