package cab

import (
	"fmt"
	"math"
	"strings"

	"steadyneedle/render/control"
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Selector is a keypad of the road transmission: a window that shows what is chosen over one key for
// each option.
type Selector struct {
	Area    draw.Rect
	Options []string
}

var _ control.Face = Selector{}

// Box is the keypad.
func (s Selector) Box() draw.Rect { return s.Area }

const windowH = 40.0

func (s Selector) key(i int) draw.Rect {
	n := float64(len(s.Options))
	h := (s.Area.H - windowH - 24) / n
	return draw.Rect{X: s.Area.X + 10, Y: s.Area.Y + windowH + 16 + h*float64(i), W: s.Area.W - 20, H: h - 6}
}

func (s Selector) window() draw.Rect {
	return draw.Rect{X: s.Area.X + 10, Y: s.Area.Y + 10, W: s.Area.W - 20, H: windowH}
}

// Still paints case and window.
func (s Selector) Still(cv *draw.Canvas, th *theme.Theme) {
	dark := draw.Hex(0x15191c)
	cv.Shadow(draw.Round(s.Area, 9), 0, 3, 9, draw.Fade(th.Shade, 0.7))
	cv.Fill(draw.Round(s.Area, 9), draw.Down(s.Area, draw.Lighter(dark, 0.12), dark))
	cv.Fill(draw.Frame(s.Area, 9, 1.2), draw.Solid(draw.Fade(th.Edge, 0.8)))
	w := s.window()
	cv.Fill(draw.Round(w, 5), draw.Solid(draw.Hex(0x040607)))
	cv.Fill(draw.Frame(w, 5, 1), draw.Solid(draw.Fade(th.Edge, 0.5)))
}

// Moving puts the letter in the window and the keys, the chosen one pressed and lit.
func (s Selector) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	n := len(s.Options)
	chosen := int(math.Round(v * float64(n-1)))
	for i, name := range s.Options {
		k := s.key(i)
		on := i == chosen
		art := sh.Get(fmt.Sprintf("selector/%s/%s/%v/%v", th.Name, name, k.W, on), draw.Rect{X: -4, Y: -4, W: k.W + 8, H: k.H + 12}, func(cv *draw.Canvas) {
			b := draw.Rect{W: k.W, H: k.H}
			if on {
				b = b.Inset(1)
			} else {
				cv.Shadow(draw.Round(b, 6), 0, 2, 4, draw.Fade(th.Shade, 0.8))
			}
			cap := draw.Hex(0x2f373c)
			cv.Fill(draw.Round(b, 6), draw.Down(b, draw.Lighter(cap, 0.18), cap, draw.Darker(cap, 0.3)))
			edge := draw.Fade(th.Edge, 0.7)
			if on {
				edge = th.Green
			}
			cv.Fill(draw.Frame(b, 6, 1.6), draw.Solid(edge))
			cv.Middle(b.Center(), draw.Center, draw.Style{Size: 16, Weight: draw.Bold, Color: draw.Hex(0xf3efe4)}, name)
		})
		f.Put(art, draw.Pt(k.X, k.Y))
	}
	if chosen >= 0 && chosen < n {
		w := s.window()
		letter := string([]rune(s.Options[chosen])[:1])
		sh.Middle(f, w.Center(), draw.Center, draw.Style{Size: 28, Weight: draw.Bold, Color: th.Green}, strings.ToUpper(letter))
	}
}

// Drag leaves the choice.
func (s Selector) Drag(_, _ draw.Point, v float64) float64 { return v }

// Click presses the key under the pointer.
func (s Selector) Click(at draw.Point, v float64) (float64, bool) {
	for i := range s.Options {
		if s.key(i).Inset(-3).Has(at) {
			return float64(i) / float64(max(1, len(s.Options)-1)), true
		}
	}
	return v, false
}

// Round is false.
func (s Selector) Round() bool { return false }
