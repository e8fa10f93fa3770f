package card

import (
	"fmt"
	"math"

	"steadyneedle/render/control"
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

const (
	textSize = 15.0
	chipH    = 26.0
	chipGap  = 5.0
)

// Chips is a choice of one among few: every option stands in its own box, the chosen one filled.
type Chips struct {
	Area  draw.Rect
	boxes []draw.Rect
	names []string
}

// NewChips flows the options into width w from at; Area is what they need.
func NewChips(scale float64, at draw.Point, w float64, names []string) Chips {
	c := Chips{names: names}
	st := draw.Style{Size: textSize}
	x, y := at.X, at.Y
	for _, n := range names {
		cw := min(w, st.Width(scale, n)+18)
		if x > at.X && x+cw > at.X+w {
			x, y = at.X, y+chipH+chipGap
		}
		c.boxes = append(c.boxes, draw.Rect{X: x, Y: y, W: cw, H: chipH})
		x += cw + chipGap
	}
	c.Area = draw.Rect{X: at.X, Y: at.Y, W: w, H: y + chipH - at.Y}
	return c
}

// Box is all chips together.
func (c Chips) Box() draw.Rect { return c.Area }

// Still paints the boxes.
func (c Chips) Still(cv *draw.Canvas, th *theme.Theme) {
	for i, b := range c.boxes {
		cv.Fill(draw.Round(b, 6), draw.Solid(th.Card))
		cv.Fill(draw.Frame(b, 6, 1), draw.Solid(th.Rule))
		cv.Middle(b.Center(), draw.Center, draw.Style{Size: textSize, Color: th.CardText}, c.names[i])
	}
}

// Moving fills the chosen box.
func (c Chips) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	n := len(c.names)
	x := v * float64(n-1)
	i := int(math.Round(x))
	if i < 0 || i >= n {
		return
	}
	b, name := c.boxes[i], c.names[i]
	art := sh.Get(fmt.Sprintf("chip/%s/%v/%s", th.Name, b.W, name), draw.Rect{W: b.W, H: b.H}, func(cv *draw.Canvas) {
		box := draw.Rect{W: b.W, H: b.H}
		cv.Fill(draw.Round(box, 6), draw.Solid(th.Accent))
		cv.Middle(box.Center(), draw.Center, chosen(cv.Scale, name, b.W-6, th), name)
	})
	alpha := 1.0
	if math.Abs(x-math.Round(x)) > 1e-6 {
		alpha = 0.55 // on its way
	}
	f.Thin(art, draw.Pt(b.X, b.Y), alpha)
}

// chosen is how the chosen name is written: bold where that fits.
func chosen(scale float64, name string, w float64, th *theme.Theme) draw.Style {
	st := draw.Style{Size: textSize, Weight: draw.Bold, Color: th.AccentText}
	if st.Width(scale, name) > w {
		st.Weight = draw.Regular
	}
	return st
}

// Parts are the boxes of the options.
func (c Chips) Parts() []draw.Rect { return c.boxes }

// Drag leaves the choice.
func (c Chips) Drag(_, _ draw.Point, v float64) float64 { return v }

// Click chooses.
func (c Chips) Click(at draw.Point, v float64) (float64, bool) {
	for i, b := range c.boxes {
		if b.Inset(-3).Has(at) {
			return float64(i) / float64(max(1, len(c.boxes)-1)), true
		}
	}
	return v, false
}

// Round is false.
func (c Chips) Round() bool { return false }

// Slide is a number set along a rule.
type Slide struct {
	Area  draw.Rect
	Def   *world.Control
	Units unit.System // what the number is shown in
}

func (s Slide) rail() (x0, x1, y float64) {
	return s.Area.X + 12, s.Area.Right() - 96, s.Area.Y + s.Area.H/2
}

// Box is the rail with the number.
func (s Slide) Box() draw.Rect { return s.Area }

// Still paints the rail.
func (s Slide) Still(cv *draw.Canvas, th *theme.Theme) {
	x0, x1, y := s.rail()
	cv.Fill(draw.Round(draw.Rect{X: x0 - 4, Y: y - 4, W: x1 - x0 + 8, H: 8}, 4), draw.Solid(th.Room))
	for i := range 5 {
		x := cv.Snap(x0 + (x1-x0)*float64(i)/4)
		cv.Fill(draw.Box(draw.Rect{X: x - 0.5, Y: y + 8, W: 1, H: 5}), draw.Solid(th.CardSoft))
	}
}

// Moving puts the knob and the number.
func (s Slide) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	x0, x1, y := s.rail()
	art := sh.Get("slide/"+th.Name, draw.Around(draw.Point{}, 36, 36), func(cv *draw.Canvas) {
		b := draw.Around(draw.Point{}, 16, 24)
		cv.Shadow(draw.Round(b, 5), 0, 2, 5, draw.Fade(th.Shade, 0.7))
		cv.Fill(draw.Round(b, 5), draw.Across(b, th.SteelHi, th.Steel, th.SteelLo))
		cv.Fill(draw.Box(draw.Around(draw.Point{}, 2, 14)), draw.Solid(th.Grip))
	})
	f.Put(art, draw.Pt(x0+(x1-x0)*max(0, min(1, v)), y))
	n := s.Def.Min + v*(s.Def.Max-s.Def.Min)
	sh.Middle(f, draw.Pt(s.Area.Right()-8, y), draw.Right, draw.Style{Size: 17, Weight: draw.Bold, Color: th.CardText}, control.Number(s.Units, n, s.Def.Unit))
}

// Drag slides.
func (s Slide) Drag(from, to draw.Point, v float64) float64 {
	x0, x1, _ := s.rail()
	return v + (to.X-from.X)/(x1-x0)
}

// Click goes to where the rail was touched.
func (s Slide) Click(at draw.Point, v float64) (float64, bool) {
	x0, x1, _ := s.rail()
	if at.X > x1+12 {
		return v, false
	}
	return max(0, min(1, (at.X-x0)/(x1-x0))), true
}

// Round is false.
func (s Slide) Round() bool { return false }

// Flip is a switch of two states on a card.
type Flip struct{ Area draw.Rect }

// Box is the switch.
func (s Flip) Box() draw.Rect { return s.Area }

// Still paints nothing: all of it shows the state.
func (s Flip) Still(*draw.Canvas, *theme.Theme) {}

// Moving puts the switch.
func (s Flip) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	on := v >= 0.5
	art := sh.Get(fmt.Sprintf("flip/%s/%v", th.Name, on), draw.Rect{W: 58, H: 28}, func(cv *draw.Canvas) {
		b := draw.Rect{W: 58, H: 28}
		back, x := th.Room, 14.0
		if on {
			back, x = draw.Darker(th.Good, 0.55), 44
		}
		cv.Fill(draw.Round(b, 14), draw.Solid(back))
		cv.Fill(draw.Frame(b, 14, 1.5), draw.Solid(th.CardSoft))
		cv.Fill(draw.Circle(draw.Pt(x, 14), 10), draw.Linear{From: draw.Pt(0, 4), To: draw.Pt(0, 24), Stops: draw.Even(th.SteelHi, th.Steel)})
		word, at := "off", draw.Pt(38, 14)
		if on {
			word, at = "on", draw.Pt(20, 14)
		}
		cv.Middle(at, draw.Center, draw.Style{Size: textSize, Weight: draw.Bold, Color: th.CardText}, word)
	})
	f.Put(art, draw.Pt(s.Area.X, s.Area.Y))
}

// Drag leaves it.
func (s Flip) Drag(_, _ draw.Point, v float64) float64 { return v }

// Click throws it.
func (s Flip) Click(_ draw.Point, v float64) (float64, bool) {
	if v < 0.5 {
		return 1, true
	}
	return 0, true
}

// Round is false.
func (s Flip) Round() bool { return false }

// Press is a wide button that acts while it is held.
type Press struct {
	Area draw.Rect
	Text string
}

// Box is the button.
func (b Press) Box() draw.Rect { return b.Area }

// Still paints nothing: all of it shows the state.
func (b Press) Still(*draw.Canvas, *theme.Theme) {}

// Moving puts the button, up or down.
func (b Press) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	down := v >= 0.5
	art := sh.Get(fmt.Sprintf("press/%s/%s/%v/%v", th.Name, b.Text, b.Area.W, down), draw.Rect{W: b.Area.W, H: b.Area.H}, func(cv *draw.Canvas) {
		r := draw.Rect{W: b.Area.W, H: b.Area.H}
		back, fore := th.CardHi, th.CardText
		if down {
			back, fore = th.Accent, th.AccentText
		}
		cv.Fill(draw.Round(r, 7), draw.Down(r, draw.Lighter(back, 0.1), back))
		cv.Fill(draw.Frame(r, 7, 1), draw.Solid(th.CardSoft))
		cv.Middle(r.Center(), draw.Center, draw.Style{Size: textSize, Weight: draw.Bold, Color: fore}, b.Text)
	})
	f.Put(art, draw.Pt(b.Area.X, b.Area.Y))
}

// Drag leaves it.
func (b Press) Drag(_, _ draw.Point, v float64) float64 { return v }

// Click does nothing more.
func (b Press) Click(draw.Point, float64) (float64, bool) { return 0, false }

// Round is false.
func (b Press) Round() bool { return false }
