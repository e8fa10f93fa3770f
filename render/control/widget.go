package control

import (
	"fmt"
	"math"
	"strings"

	"steadyneedle/render/draw"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// Widget is one control at one place on the screen.
type Widget struct {
	Face
	ID  world.ControlID
	Def *world.Control
	// Units are what a number's position is shown in, and what it is stepped in.
	Units unit.System
}

// Value is the control's value at a share of travel, on whole numbers where the control has only those.
func (w *Widget) Value(share float64) float64 {
	share = max(0, min(1, share))
	v := w.Def.Min + share*(w.Def.Max-w.Def.Min)
	switch w.Def.Kind {
	case world.Switch, world.Push, world.Choice:
		v = math.Round(v)
	case world.Measure:
		grain := w.grain()
		v = w.Units.To(math.Round(w.Units.From(v, w.Def.Unit)/grain)*grain, w.Def.Unit)
		v = max(w.Def.Min, min(w.Def.Max, v))
	}
	return v
}

// Step is what one press of an arrow key or one notch of the wheel changes, in the control's values.
func (w *Widget) Step(fine bool) float64 {
	span := w.Def.Max - w.Def.Min
	pick := func(coarse, small float64) float64 {
		if fine {
			return small
		}
		return coarse
	}
	switch w.Def.Kind {
	case world.Knob:
		return span * pick(0.01, 0.002)
	case world.Wheel:
		if w.Def.Unit == "turns" {
			return pick(0.1, 0.02)
		}
		return span * pick(0.05, 0.01)
	case world.Measure:
		return w.Units.To(pick(4, 1)*w.grain(), w.Def.Unit) - w.Units.To(0, w.Def.Unit)
	case world.Handle:
		return span * pick(0.05, 0.01)
	case world.Lever:
		return span * pick(0.25, 0.05)
	}
	return 1
}

// Keys says in a few words how the control is worked.
func (w *Widget) Keys() string {
	switch w.Def.Kind {
	case world.Push:
		return "hold: mouse button, Enter or Space"
	case world.Switch:
		return "throw: click, Enter or ↑↓"
	case world.Lever:
		return "swing: drag, click or Enter; ↑↓ in steps"
	case world.Handle:
		return "pull: drag, mouse wheel or ↑↓ (Shift fine), Home, End"
	case world.Wheel, world.Knob:
		return "turn: drag round, mouse wheel or ↑↓ (Shift fine), Home, End"
	case world.Choice:
		return "choose: click or ↑↓"
	}
	return "set: drag, mouse wheel or ↑↓ (Shift fine)"
}

// Position says where the control stands, in words and numbers.
func (w *Widget) Position(v float64) string {
	d := w.Def
	switch {
	case d.Kind == world.Choice:
		if i := int(math.Round(v - d.Min)); i >= 0 && i < len(d.Options) {
			return d.Options[i]
		}
		return ""
	case d.Kind == world.Switch:
		return onOff(v)
	case d.Kind == world.Push:
		return ""
	case d.Unit != "":
		return Number(w.Units, v, d.Unit)
	}
	share := (v - d.Min) / (d.Max - d.Min) * 100
	switch {
	case d.Kind == world.Knob:
		return fmt.Sprintf("%.1f %%", share)
	case share <= 0.05:
		return "shut"
	case share >= 99.95:
		return "full open"
	}
	return fmt.Sprintf("%.0f %% open", share)
}

// Number writes a control's number in a system of units.
func Number(sys unit.System, v float64, trade string) string {
	n := math.Round(sys.From(v, trade)*100) / 100
	return strings.Replace(fmt.Sprintf("%.4g %s", n, sys.Unit(trade)), "-", "−", 1)
}

// grain is the least that a number set on the plan changes by, in the units shown.
func (w *Widget) grain() float64 {
	switch w.Units.Unit(w.Def.Unit) {
	case "m":
		return 0.1
	case "mm":
		return 5
	}
	return 0.25
}

func onOff(v float64) string {
	if v >= 0.5 {
		return "on"
	}
	return "off"
}

// Ring is the outline that shows focus round a face: the bright band and its dark seat.
func Ring(f Face) (band, seat *draw.Path) {
	b := f.Box()
	if f.Round() {
		r := max(b.W, b.H)/2 + 6
		return draw.Ring(b.Center(), r, r-3), draw.Ring(b.Center(), r+1.5, r-4.5)
	}
	o := b.Inset(-5)
	return draw.Frame(o, 9, 3), draw.Frame(o.Inset(-1.5), 10.5, 6)
}
