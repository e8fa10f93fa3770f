package hydraulics

import (
	"math"
	"testing"
)

// TestButterflyArea compares the polynomial with 1 − cos(πx/2).
func TestButterflyArea(t *testing.T) {
	for i := range 101 {
		x := float64(i) / 100
		if d := Butterfly.Area(x) - (1 - math.Cos(math.Pi/2*x)); math.Abs(d) > 0.01 {
			t.Errorf("at %.2f: off by %.4f", x, d)
		}
	}
}

// TestBallArea compares with the overlap of two round bores, whose centers part by twice the radius
// between open and shut (geometry).
func TestBallArea(t *testing.T) {
	for i := range 101 {
		x := float64(i) / 100
		d := 1 - x // distance of the centers over twice the radius
		want := 2 / math.Pi * (math.Acos(d) - d*math.Sqrt(1-d*d))
		if e := Ball.Area(x) - want; math.Abs(e) > 0.01 {
			t.Errorf("at %.2f: %.3f, want %.3f", x, Ball.Area(x), want)
		}
	}
}
