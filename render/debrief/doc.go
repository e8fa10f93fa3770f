// Package debrief draws the timeline of an attempt: line pressure with its band, intake pressure and
// engine speed, with a mark for every finding.
package debrief
