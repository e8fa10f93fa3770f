// Package cutaway draws the inside of the running pump for a class: intake, impeller, volute, relief
// valve with its pilot and spring, by-pass, tank and recirculation, with the water moving through them.
//
// It shows what is so, not what the gauges say. Pressure is one hue from pale to deep, with contour
// lines that have their number printed on them; water runs at a fixed share of its real speed (Slowed),
// so that ways can be compared. Which numbers there are is State; where they come from is the caller's.
package cutaway
