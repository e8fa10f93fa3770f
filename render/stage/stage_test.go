package stage

import (
	"image"
	"testing"

	"steadyneedle/render/draw"
)

func dot(size float64) *Art {
	return Paint(draw.Around(draw.Point{}, size, size), 1, func(c *draw.Canvas) {
		c.Fill(draw.Circle(draw.Point{}, size/2), draw.Solid(draw.Hex(0xffffff)))
	})
}

// Outside of the changed boxes two frames are the same pixel for pixel; drawing only inside of them
// over the old picture gives the new one.
func TestChanged(t *testing.T) {
	back := Paint(draw.Rect{W: 300, H: 200}, 1, func(c *draw.Canvas) {
		r := draw.Rect{W: 300, H: 200}
		c.Fill(draw.Box(r), draw.Down(r, draw.Hex(0x203040), draw.Hex(0x806040)))
	})
	needle := Paint(draw.Rect{X: -4, Y: -50, W: 8, H: 60}, 1, func(c *draw.Canvas) {
		c.Fill(draw.Box(draw.Rect{X: -2, Y: -48, W: 4, H: 56}), draw.Solid(draw.Hex(0xff0000)))
	})
	small := dot(20)
	frame := func(angle, x float64, extra bool) *Frame {
		f := &Frame{}
		f.Reset(1)
		f.Put(back, draw.Point{})
		f.Turn(needle, draw.Pt(80, 100), angle)
		f.Put(small, draw.Pt(x, 60))
		if extra {
			f.Put(small, draw.Pt(150, 150))
		}
		f.Turn(needle, draw.Pt(250, 100), 30)
		return f
	}
	old := frame(10, 200, false)
	for name, now := range map[string]*Frame{
		"needle": frame(70, 200, false), "moved": frame(10, 40, false), "came": frame(10, 200, true), "all": frame(-140, 120, true), "same": frame(10, 200, false),
	} {
		before, after := Compose(old, 300, 200), Compose(now, 300, 200)
		boxes := Changed(old, now, nil)
		if name == "same" && len(boxes) != 0 {
			t.Errorf("equal frames: %v", boxes)
		}
		for i, a := range boxes {
			for _, b := range boxes[:i] {
				if a.Overlaps(b) {
					t.Errorf("%s: %v lies over %v", name, a, b)
				}
			}
		}
		for y := range 200 {
			for x := range 300 {
				inside := false
				for _, b := range boxes {
					inside = inside || image.Pt(x, y).In(b)
				}
				if !inside && before.RGBAAt(x, y) != after.RGBAAt(x, y) {
					t.Fatalf("%s: (%d, %d) changed outside of %v", name, x, y, boxes)
				}
			}
		}
	}
}

// page paints something of every kind over w by h units.
func page(w, h float64) func(*draw.Canvas) {
	return func(c *draw.Canvas) {
		r := draw.Rect{W: w, H: h}
		c.Fill(draw.Box(r), draw.Down(r, draw.Hex(0x203040), draw.Hex(0x806040)))
		c.Grain(draw.Rect{X: 7.3, Y: 5.7, W: w - 20, H: h - 9.1}, 0.1)
		for i := range 9 {
			at := draw.Pt(40+float64(i)*31.7, 30+float64(i)*29.3)
			c.Shadow(draw.Circle(at, 26), 0, 4, 11, draw.Hex(0x000000))
			c.Fill(draw.Circle(at, 26), draw.Conic{Center: at, Stops: draw.Even(draw.Hex(0xffffff), draw.Hex(0x303030), draw.Hex(0xffffff))})
			c.Middle(at, draw.Center, draw.Style{Size: 17, Color: draw.Hex(0x10a0ff)}, "Sägg 17½")
		}
	}
}

func apart(a, b uint8) int { return max(int(a), int(b)) - min(int(a), int(b)) }

// TestPageInBands: a page painted in bands is the page painted whole, pixel for pixel, but for the last
// place of a gradient, at scales at which no band ends on a whole unit.
func TestPageInBands(t *testing.T) {
	for _, scale := range []float64{0.8, 1, 1.37, 2.25} {
		const w, h = 333.0, 301.0
		s := NewShelf()
		s.Clear(scale)
		f := &Frame{}
		f.Reset(scale)
		s.Page(f, "page", w, h, page(w, h))
		art := Paint(draw.Rect{W: w, H: h}, scale, page(w, h))
		one := &Frame{}
		one.Reset(scale)
		one.Put(art, draw.Point{})
		whole := Compose(one, art.Img.Rect.Dx(), art.Img.Rect.Dy())
		got := Compose(f, whole.Rect.Dx(), whole.Rect.Dy())
		for y := range whole.Rect.Dy() {
			for x := range whole.Rect.Dx() {
				if a, b := whole.RGBAAt(x, y), got.RGBAAt(x, y); apart(a.R, b.R) > 1 || apart(a.G, b.G) > 1 || apart(a.B, b.B) > 1 {
					t.Fatalf("scale %g: pixel (%d, %d) is %v in bands, %v whole", scale, x, y, b, a)
				}
			}
		}
	}
}

// TestLate: when a frame is late, what is missing is left to the next ones, one piece at least each, until
// nothing is missing.
func TestLate(t *testing.T) {
	s := NewShelf()
	s.Late = func() bool { return true }
	const w, h = 100.0, 500.0
	frames := 0
	for short := true; short; frames++ {
		f := &Frame{}
		f.Reset(1)
		s.Tick()
		s.Page(f, "page", w, h, page(w, h))
		f.Put(s.Get("dot", draw.Rect{W: 9, H: 9}, func(*draw.Canvas) {}), draw.Point{})
		short = s.Short()
		if frames > 20 {
			t.Fatal("the page never got done")
		}
	}
	if frames != 7 { // six bands of 96 rows, one dot
		t.Errorf("done after %d frames, want 7", frames)
	}
}
