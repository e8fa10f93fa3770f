package stage

import (
	"image"
	"math"
)

// Bounds is the box of pixels that a sprite can touch.
func (s *Sprite) Bounds() image.Rectangle {
	b := s.Art.Img.Bounds()
	if !s.Turned {
		return b.Add(image.Pt(int(s.X), int(s.Y)))
	}
	sin, cos := math.Sincos(s.Angle * math.Pi / 180)
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, c := range [4][2]float64{{0, 0}, {float64(b.Dx()), 0}, {0, float64(b.Dy())}, {float64(b.Dx()), float64(b.Dy())}} {
		u, v := c[0]-s.Art.Pivot.X, c[1]-s.Art.Pivot.Y
		x, y := s.X+u*cos-v*sin, s.Y+u*sin+v*cos
		x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
	}
	return image.Rect(int(math.Floor(x0))-1, int(math.Floor(y0))-1, int(math.Ceil(x1))+1, int(math.Ceil(y1))+1)
}

// Changed lists boxes of pixels outside of which two frames look the same, none of them over another,
// appended to boxes.
func Changed(old, now *Frame, boxes []image.Rectangle) []image.Rectangle {
	a, b := old.Sprites, now.Sprites
	for len(a) > 0 && len(b) > 0 && a[0] == b[0] {
		a, b = a[1:], b[1:]
	}
	for len(a) > 0 && len(b) > 0 && a[len(a)-1] == b[len(b)-1] {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	if len(a) == len(b) { // things moved, none came or went
		for i := range a {
			if a[i] != b[i] {
				boxes = join(boxes, a[i].Bounds())
				boxes = join(boxes, b[i].Bounds())
			}
		}
		return boxes
	}
	for i := range a {
		boxes = join(boxes, a[i].Bounds())
	}
	for i := range b {
		boxes = join(boxes, b[i].Bounds())
	}
	return boxes
}

// join adds a box, melting it with those that it touches.
func join(boxes []image.Rectangle, r image.Rectangle) []image.Rectangle {
	if r.Empty() {
		return boxes
	}
	for i := 0; i < len(boxes); i++ {
		if boxes[i].Overlaps(r) {
			r = r.Union(boxes[i])
			boxes[i] = boxes[len(boxes)-1]
			boxes = boxes[:len(boxes)-1]
			i = -1 // the larger box may touch others
		}
	}
	return append(boxes, r)
}
