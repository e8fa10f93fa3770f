// Package operator plays a scripted person at the controls: it waits on what can be seen and heard,
// reads needles to half a division as eyes do, walks, speaks, and turns controls at human speed.
//
// It is given Readings only, never the truth.
package operator
