// Package debrief draws the timeline of an attempt: pressures with the line's band, flow and heat, or
// lamps and valve positions, with a mark for every finding.
package debrief
