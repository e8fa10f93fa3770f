package stage

import (
	"fmt"

	"steadyneedle/render/draw"
)

// Shelf keeps art under its name for one scale and theme.
type Shelf struct {
	Scale float64
	art   map[string]*kept
	clock int
	slots map[string]string
	// Dry leaves art unpainted: only where things and words are is then known.
	Dry bool
	// Gone is told of art that is thrown away, so that a window can free its copy. It may be nil.
	Gone func(*Art)
}

type kept struct {
	art  *Art
	used int
	text bool
}

// NewShelf makes an empty shelf.
func NewShelf() *Shelf { return &Shelf{Scale: 1, art: map[string]*kept{}} }

// Clear throws everything away: the scale or the theme has changed.
func (s *Shelf) Clear(scale float64) {
	for k, a := range s.art {
		s.drop(k, a)
	}
	s.Scale = scale
}

func (s *Shelf) drop(key string, a *kept) {
	if s.Gone != nil {
		s.Gone(a.art)
	}
	delete(s.art, key)
}

// Forget throws one piece away, if it is there.
func (s *Shelf) Forget(key string) {
	if a, ok := s.art[key]; ok {
		s.drop(key, a)
	}
}

// Get returns the art of that name, made by paint on a canvas over box when it is first asked for.
// box is in units about the point where the art will be placed; that point is the pivot.
func (s *Shelf) Get(key string, box draw.Rect, paint func(*draw.Canvas)) *Art {
	if a, ok := s.art[key]; ok {
		a.used = s.clock
		return a.art
	}
	a := made(s.canvas(box), box, paint)
	s.art[key] = &kept{art: a, used: s.clock}
	return a
}

// canvas is what art is painted on.
func (s *Shelf) canvas(box draw.Rect) *draw.Canvas {
	if s.Dry {
		return draw.Dry(box, s.Scale)
	}
	return draw.New(box, s.Scale)
}

// Paint makes art outside of any shelf.
func Paint(box draw.Rect, scale float64, paint func(*draw.Canvas)) *Art {
	return made(draw.New(box, scale), box, paint)
}

func made(c *draw.Canvas, box draw.Rect, paint func(*draw.Canvas)) *Art {
	paint(c)
	return &Art{
		Img:    c.Img,
		Pivot:  draw.Pt(-box.X*c.Scale, -box.Y*c.Scale),
		Size:   draw.Pt(box.W, box.H),
		Origin: draw.Pt(box.X, box.Y),
		Words:  c.Words,
	}
}

// Text puts one line of text with its baseline at p and returns its width in units.
func (s *Shelf) Text(f *Frame, p draw.Point, a draw.Align, st draw.Style, text string) float64 {
	if text == "" {
		return 0
	}
	key := fmt.Sprintf("text/%v/%d/%v/%v/%s", st.Size, st.Weight, st.Color, st.Track, text)
	w := st.Width(s.Scale, text)
	art := s.Get(key, draw.Rect{X: -1, Y: -st.Size, W: w + 3, H: st.Size * 1.35}, func(c *draw.Canvas) {
		c.Text(draw.Pt(0, 0), draw.Left, st, text)
	})
	s.art[key].text = true
	switch a {
	case draw.Center:
		p.X -= w / 2
	case draw.Right:
		p.X -= w
	}
	f.Put(art, p)
	return w
}

// Middle is Text with the capitals centered about p's height.
func (s *Shelf) Middle(f *Frame, p draw.Point, a draw.Align, st draw.Style, text string) float64 {
	return s.Text(f, draw.Pt(p.X, p.Y+st.Size*draw.CapHeight/2), a, st, text)
}

// Tick ages the shelf by one frame: text that has not been shown for a while is thrown away.
func (s *Shelf) Tick() {
	s.clock++
	if s.clock%300 != 0 || len(s.art) < 500 {
		return
	}
	for k, a := range s.art {
		if a.text && s.clock-a.used > 300 {
			s.drop(k, a)
		}
	}
}

// Once is Get for art that replaces what it showed before: slot names the place, key the content.
func (s *Shelf) Once(slot, key string, box draw.Rect, paint func(*draw.Canvas)) *Art {
	if s.slots == nil {
		s.slots = map[string]string{}
	}
	if old := s.slots[slot]; old != key {
		s.Forget(old)
		s.slots[slot] = key
	}
	return s.Get(key, box, paint)
}
