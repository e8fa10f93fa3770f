package fireground

import (
	"math"
	"testing"

	"steadyneedle/sim/flownet"
	"steadyneedle/sim/hydraulics"
)

// TestValveLaws: shut is exactly shut, open is exactly open, and area only grows between.
func TestValveLaws(t *testing.T) {
	for _, law := range []hydraulics.ValveLaw{hydraulics.Ball, hydraulics.Gate, hydraulics.Butterfly} {
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
		if v.Set(&l, 0); !l.Shut() {
			t.Errorf("law %d is not shut at 0", law)
		}
		if v.Set(&l, 1); l.Shut() || math.Abs(l.K-1e6) > 1 {
			t.Errorf("law %d: K %g open, want 1e6", law, l.K)
		}
	}
}
