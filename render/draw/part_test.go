package draw

import (
	"math"
	"testing"
)

func TestSplit(t *testing.T) {
	p := Polyline(Pt(0, 0), Pt(30, 0), Pt(30, 10))
	if l := p.Length(); math.Abs(l-40) > 1e-9 {
		t.Errorf("length %g, want 40", l)
	}
	for _, c := range []struct {
		share   float64
		at      Point
		bearing float64
		head    float64
	}{{0, Pt(0, 0), 90, 0}, {0.5, Pt(20, 0), 90, 20}, {0.875, Pt(30, 5), 180, 35}, {1, Pt(30, 10), 180, 40}, {7, Pt(30, 10), 180, 40}} {
		head, rest, at, bearing := p.Split(c.share)
		if at.Sub(c.at).Len() > 1e-6 || math.Abs(bearing-c.bearing) > 1e-6 {
			t.Errorf("at %g of the way: %v heading %g, want %v heading %g", c.share, at, bearing, c.at, c.bearing)
		}
		if l := head.Length(); math.Abs(l-c.head) > 1e-6 || math.Abs(rest.Length()-(40-c.head)) > 1e-6 {
			t.Errorf("at %g of the way: parts of %g and %g, want %g and %g", c.share, l, rest.Length(), c.head, 40-c.head)
		}
	}
	if _, _, at, _ := new(Path).Split(0.5); at != (Point{}) {
		t.Errorf("an empty path is cut at %v", at)
	}
}
