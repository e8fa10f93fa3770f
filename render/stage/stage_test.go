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
