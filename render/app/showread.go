package app

import (
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/sim/demo"
)

// What the plots are read off at: a moment before the newest one, chosen by keys or by a click.

// readOff moves the line at which the plots are read; past the newest moment it goes.
func (s *show) readOff(a *App, right bool) bool {
	_, _, at := s.window()
	if math.IsNaN(at) {
		at = s.stage.Player().Attempt.Now().Seconds()
	}
	if right {
		at++
	} else {
		at--
	}
	s.readAt(a, at)
	return true
}

// readAt reads the plots off at a moment, s. Time stands still as long as it is not the newest.
func (s *show) readAt(a *App, at float64) {
	from, _, _ := s.window()
	now := s.stage.Player().Attempt.Now().Seconds()
	was := s.readS
	s.readS = max(at, from)
	if s.readS >= now {
		s.readS = 0
	} else if was == 0 {
		a.frozen = true
	}
}

// traceBox is where readings stand against time, if they do.
func (s *show) traceBox(a *App) (draw.Rect, bool) {
	if !s.warned || s.stage.Player().Phase() == demo.Asking {
		return draw.Rect{}, false
	}
	claims := len(s.settled()) > 0
	switch s.pair {
	case 2:
		return draw.Rect{}, false
	case 3:
		_, lower := s.parted()
		return lower, !claims
	}
	box := s.upper(a, s.right)
	return box, s.traceFits(box) && !(claims && s.lower() == demo.Suction)
}

// readItems let a click on the plot read it off there.
func (s *show) readItems(a *App) []Item {
	box, ok := s.traceBox(a)
	if !ok {
		return nil
	}
	return []Item{{Key: "read-off", Box: box, Label: "Readings against time", Help: "A click freezes time and reads the plots off there; one beyond the lines ends it. Keys Left and Right.", Do: func() {
		t := s.trace(box)
		s.readAt(a, t.When(a.scale, a.pointer.X))
	}}}
}
