package world

import (
	"math"

	"steadyneedle/sim/bound"
)

const (
	longAgo   = -1e9
	gestureS  = 5.0 // a gesture is held so long (assumption)
	turnHeadS = 1.0 // looking round takes so long
	hearVol   = 0.2 // a radio turned up less than this is not heard
)

var unseen = math.NaN()

// hear settles which of the phrases and gestures given now reach the candidate. Before the apparatus
// stands at the hydrant the crew is near enough to be heard by voice; after that by radio. A gesture
// is seen from the ground, or from the cab and the panel by one who is looking round.
func (w *World) hear() {
	if !w.unsaid {
		return
	}
	w.unsaid = false
	now := w.now.Seconds()
	sees := w.sees()
	hears := w.body.stage < atHydrant || w.radioHeard()
	for _, i := range w.others {
		if w.heard[i] == w.at[i] {
			continue
		}
		c := &w.controls[i]
		switch {
		case c.Kind == Gesture:
			if now-w.given[i] > gestureS {
				w.heard[i] = bound.AtMost(w.heard[i], w.at[i]) // over, and missed
			} else if sees {
				w.heard[i] = w.at[i]
			}
		case c.Speaker == Crew && !hears:
			if now-w.given[i] > 0.5 {
				break // words are gone when they are spoken
			}
		default:
			if now-w.given[i] <= 0.5 {
				w.heard[i] = w.at[i]
			}
		}
		w.unsaid = w.unsaid || w.heard[i] != w.at[i]
	}
}

// findOthers lists what others say and show.
func (w *World) findOthers() {
	for i := range w.controls {
		if c := &w.controls[i]; c.said() && c.Speaker != Candidate {
			w.others = append(w.others, ControlID(i))
		}
	}
}

func (w *World) sees() bool {
	switch w.body.place {
	case Cab, Panel:
		return w.body.lookS >= turnHeadS
	case Walking:
		return false
	}
	return true
}

// radioHeard reports whether the crew's radio can be heard where the candidate is.
func (w *World) radioHeard() bool {
	if w.at[radioDead] == 1 {
		return false
	}
	if w.at[portableRadio] == 1 {
		return true
	}
	return w.body.place == Panel && w.at[radioOpen] == 1 && w.at[radioVolume] >= hearVol
}
