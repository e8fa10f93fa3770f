// Package panel is the pump operator's position: every gauge, valve, lamp and control, arranged along
// the way of the water from the intake on the left to the discharges on the right.
package panel
