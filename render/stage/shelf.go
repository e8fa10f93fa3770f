package stage

import (
	"fmt"
	"image"
	"math"

	"steadyneedle/render/draw"
)

// Shelf keeps art under its name for one scale and theme.
type Shelf struct {
	Scale float64
	art   map[string]*kept
	clock int
	slots map[string]string
	made  int  // pieces painted for this frame
	short bool // something was left out of it
	// Dry leaves art unpainted: only where things and words are is then known.
	Dry bool
	// Late reports that this frame has painted for long enough: what is missing still is left out of it
	// and painted for one of the next. At least one piece is painted a frame. nil: all is painted at once.
	Late func() bool
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

// Forget throws one piece or page away, if it is there.
func (s *Shelf) Forget(key string) {
	if a, ok := s.art[key]; ok {
		s.drop(key, a)
	}
	for top := 0; ; top += bandRows {
		k := band(key, top)
		a, ok := s.art[k]
		if !ok {
			return
		}
		s.drop(k, a)
	}
}

// band is the name of a page's band.
func band(key string, top int) string { return fmt.Sprintf("%s/%d", key, top) }

// Get returns the art of that name, made by paint on a canvas over box when it is first asked for.
// box is in units about the point where the art will be placed; that point is the pivot.
func (s *Shelf) Get(key string, box draw.Rect, paint func(*draw.Canvas)) *Art {
	if a, ok := s.art[key]; ok {
		a.used = s.clock
		return a.art
	}
	if s.late() {
		return nothing
	}
	a := made(s.canvas(box), box, paint)
	s.keep(key, a)
	return a
}

// nothing stands for art that is not painted yet.
var nothing = &Art{Img: image.NewRGBA(image.Rectangle{})}

// late reports whether the next piece must wait for another frame.
func (s *Shelf) late() bool {
	if s.Late == nil || s.made == 0 || !s.Late() {
		return false
	}
	s.short = true
	return true
}

func (s *Shelf) keep(key string, a *Art) {
	s.art[key] = &kept{art: a, used: s.clock}
	s.made++
}

// Short reports whether something was left out of the frame since the last Tick.
func (s *Shelf) Short() bool { return s.short }

// bandRows is the height of a band in pixels: what is painted in one piece of a whole page.
const bandRows = 96

// Page puts art as large as the picture, w by h units from the origin, in bands: a large page takes longer
// to paint than a frame may. It reports whether the page is whole.
func (s *Shelf) Page(f *Frame, key string, w, h float64, paint func(*draw.Canvas)) bool {
	rows := int(math.Ceil(h*s.Scale - 1e-9))
	step := bandRows
	if s.Dry {
		step = rows
	}
	for top := 0; top < rows; top += step {
		k := band(key, top)
		if a, ok := s.art[k]; ok {
			a.used = s.clock
			f.Put(a.art, draw.Point{})
			continue
		}
		if s.late() {
			return false
		}
		bottom := min(rows, top+step)
		box := draw.Rect{Y: float64(top) / s.Scale, W: w, H: float64(bottom-top) / s.Scale}
		c := draw.Dry(box, s.Scale)
		if !s.Dry {
			c = draw.Band(draw.Rect{W: w, H: h}, s.Scale, top, bottom)
		}
		a := made(c, box, paint)
		s.keep(k, a)
		f.Put(a, draw.Point{})
	}
	return true
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
		Cards:  c.Cards,
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
	if k, ok := s.art[key]; ok {
		k.text = true
	}
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
	s.made, s.short = 0, false
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
