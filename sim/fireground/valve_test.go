package fireground

import (
	"math"
	"testing"

	"steadyneedle/sim/flownet"
)

// TestValveLaws: shut is exactly shut, open is exactly open, and area only grows between.
func TestValveLaws(t *testing.T) {
	for _, law := range []Law{Ball, Gate, Butterfly} {
		if law.Area(0) != 0 || law.Area(-1) != 0 || math.Abs(law.Area(1)-1) > 1e-12 || law.Area(2) != law.Area(1) {
			t.Errorf("law %d: area %g shut, %g open", law, law.Area(0), law.Area(1))
		}
		for i := range 1000 {
			if a, b := law.Area(float64(i)/1000), law.Area(float64(i+1)/1000); !(b > a) {
				t.Fatalf("law %d doesn't grow at %d/1000", law, i)
			}
		}
		v := Valve{Law: law, R: 1e6}
		var l flownet.Link
		if v.Set(&l, 0); !l.Shut {
			t.Errorf("law %d is not shut at 0", law)
		}
		if v.Set(&l, 1); l.Shut || math.Abs(l.K-1e6) > 1 {
			t.Errorf("law %d: K %g open, want 1e6", law, l.K)
		}
	}
}

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
