package world

import (
	"errors"
	"fmt"
	"math"

	"steadyneedle/sim/unit"
)

// What can be wrong with an action. Check wraps these, so that callers can tell them apart.
var (
	ErrUnknown  = errors.New("no such control")
	ErrValue    = errors.New("not a possible value")
	ErrPast     = errors.New("in the past")
	ErrReach    = errors.New("out of reach")
	ErrCannot   = errors.New("cannot be done")
	ErrNotTheir = errors.New("not theirs to do")
)

// Check says why an action cannot be, or nil. What it refuses is never taped and changes nothing.
func (w *World) Check(a Action) error {
	if int(a.Control) >= len(w.controls) {
		return fmt.Errorf("control %d: %w", a.Control, ErrUnknown)
	}
	c := &w.controls[a.Control]
	switch {
	case math.IsNaN(a.Value) || a.Value < c.Min || a.Value > c.Max:
		return fmt.Errorf("%s %g: %w; it goes from %g to %g", c.Name, a.Value, ErrValue, c.Min, c.Max)
	case c.Whole() && a.Value != math.Floor(a.Value):
		return fmt.Errorf("%s %g: %w; it takes whole numbers", c.Name, a.Value, ErrValue)
	case c.Missing != "":
		return fmt.Errorf("%s: %w: %s", c.Label, ErrCannot, c.Missing)
	case a.At < w.now:
		return fmt.Errorf("%s at tick %d: %w; the world stands at %d", c.Name, a.At, ErrPast, w.now)
	}
	if err := w.checkSource(a, c); err != nil {
		return err
	}
	if a.By != Candidate {
		return nil
	}
	return w.checkBodily(a, c)
}

func (w *World) checkSource(a Action, c *Control) error {
	switch {
	case a.By == Candidate && (c.By == Nowhere || c.said() && c.Speaker != Candidate):
		return fmt.Errorf("%s: %w: the candidate", c.Name, ErrNotTheir)
	case a.By == Candidate && a.From != w.body.place:
		return fmt.Errorf("%s from %s: %w; the candidate is at %s", c.Name, a.From, ErrReach, w.body.place)
	case a.By == Candidate && !c.By.Has(w.body.place):
		return fmt.Errorf("%s from %s: %w", c.Name, w.body.place, ErrReach)
	case a.By != Candidate && a.By != Instructor && a.By != Fault && c.said() && c.Speaker != a.By:
		return fmt.Errorf("%s: %w: the %s", c.Name, ErrNotTheir, a.By)
	}
	return nil
}

// checkBodily refuses what hands and hose cannot do.
func (w *World) checkBodily(a Action, c *Control) error {
	cannot := func(why string) error { return fmt.Errorf("%s: %w: %s", c.Label, ErrCannot, why) }
	switch a.Control {
	case walk:
		if w.body.speed > 0 {
			return cannot("the apparatus is rolling")
		}
	case supplyAtHydrant:
		if a.Value > 0 && w.at[hydrantCap] == 1 {
			return cannot("the hydrant's cap is on")
		}
		if a.Value > 0 && w.supplySlack() < 0 {
			return cannot("the hose does not reach")
		}
		fallthrough
	case supplyAtEngine:
		if a.Value > 0 && w.at[supplyLength] == 0 {
			return cannot("no supply hose is laid out")
		}
		if a.Value > 0 && w.needsAdapters() && w.at[adapters] == 0 {
			return cannot(fmt.Sprintf("its %s in couplings do not fit without adapters", unit.Eighths(w.taken().couplingIn)))
		}
	case hydrantCap:
		if a.Value == 1 && w.at[supplyAtHydrant] > 0 {
			return cannot("a hose is on the outlet")
		}
	case lineHose:
		if w.body.stage >= laying {
			return cannot("the line is laid already")
		}
	case adapters:
		if a.Value == 0 && w.needsAdapters() && (w.at[supplyAtEngine] > 0 || w.at[supplyAtHydrant] > 0) {
			return cannot("the hose hangs on them")
		}
	case supplyLength:
		if w.at[supplyAtEngine] > 0 || w.at[supplyAtHydrant] > 0 {
			return cannot("the hose is still coupled")
		}
	case lineBreak, bedCoupling, lineSlack:
		if w.body.stage < atHydrant {
			return cannot("the line is still being laid")
		}
	case lineTo, lineCoupling:
		return w.checkLine(a, cannot)
	case hydrantValve:
		if w.at[wrench] == 0 && a.Value != w.hand[hydrantValve] {
			return cannot("the hydrant wrench is not at hand")
		}
	}
	if n := w.capOf(a.Control); a.Value == 1 && n > 0 && w.setup.Ground.Lay.Holds(n) {
		return cannot("a line is on it")
	}
	return nil
}

// capOf is the discharge, counted from 1, whose cap a control is; 0 for any other.
func (w *World) capOf(c ControlID) int {
	for i := range w.setup.Rig.Discharges {
		if c == w.cap(i) {
			return i + 1
		}
	}
	return 0
}

func (w *World) checkLine(a Action, cannot func(string) error) error {
	switch {
	case a.Control == lineTo && w.setup.Ground.Line.None():
		return cannot("there is no line to connect")
	case a.Control == lineTo && w.setup.Ground.Lay.Holds(int(a.Value)):
		return cannot("another line hangs on that discharge")
	case a.Value == 0:
		if a.Control == lineTo && w.hand[lineCoupling] > 0 {
			return cannot("it is still coupled")
		}
	case w.at[lineBreak] == 0:
		return cannot("the line has not been parted")
	case w.at[lineSlack] == 0:
		return cannot("there is no slack: it does not reach")
	case a.Control == lineCoupling && w.hand[lineTo] == 0:
		return cannot("no discharge has been chosen")
	case a.Control == lineTo && w.hand[lineCoupling] > 0 && a.Value != w.hand[lineTo]:
		return cannot("it is coupled to another discharge")
	}
	return nil
}
