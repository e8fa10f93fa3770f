package ground

import (
	"image"
	"testing"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
)

// plan paints a scene as the plan shows it.
func plan(s scene) *image.RGBA {
	g := &Ground{info: &view.Info{FireAt: "214 Ferry Street", Street: "Ferry Street", HydrantAt: "the corner"}}
	g.zoom, g.plan = 1, draw.Rect{W: 1264, H: planH}
	cv := draw.New(g.plan, 1)
	g.town(cv, &theme.Day)
	g.paintScene(cv, &theme.Day, s)
	return cv.Img
}

func differ(a, b *image.RGBA) int {
	n := 0
	for i := 0; i < len(a.Pix); i += 4 {
		if a.Pix[i] != b.Pix[i] || a.Pix[i+1] != b.Pix[i+1] || a.Pix[i+2] != b.Pix[i+2] {
			n++
		}
	}
	return n
}

// TestPlanShows: whatever a candidate is to see on the street changes the plan.
func TestPlanShows(t *testing.T) {
	base := scene{stage: 3, supplyFt: 25, supplyIn: 4, lineIn: 2.5, atRig: 2, atPlug: 2, lineTo: 1, coupled: 2, parted: true, offset: 7,
		front: chock{wheel: 1, locked: true}, rear: chock{wheel: 1, locked: true}}
	was := plan(base)
	for name, change := range map[string]func(*scene){
		"supply filling": func(s *scene) { s.supplyFill = 0.5 }, "supply charged": func(s *scene) { s.supplyFill = 1 },
		"supply kinked": func(s *scene) { s.kinked = true }, "supply coupling loose": func(s *scene) { s.atPlug = 1 },
		"supply length": func(s *scene) { s.supplyFt = 50 }, "supply size": func(s *scene) { s.supplyIn = 5 }, "line size": func(s *scene) { s.lineIn = 3 }, "line filling": func(s *scene) { s.lineFill = 0.5 },
		"line charged": func(s *scene) { s.lineFill = 1 }, "line coupling off": func(s *scene) { s.coupled = 0 },
		"line to another discharge": func(s *scene) { s.lineTo = 2 }, "leak": func(s *scene) { s.leak = true },
		"kink": func(s *scene) { s.kink = true }, "hose off the curb": func(s *scene) { s.offset = 3 },
		"chock away from the tire": func(s *scene) { s.front.gap = 6 }, "chock not square": func(s *scene) { s.rear.skew = 21 },
		"chock not locked": func(s *scene) { s.front.locked = false }, "chock at the wrong wheel": func(s *scene) { s.front.wheel = 2 },
		"no chock": func(s *scene) { s.rear.wheel = 0 }, "doors open": func(s *scene) { s.doors = true },
		"emergency lights": func(s *scene) { s.lights = true }, "off the hydrant": func(s *scene) { s.off = 20 },
	} {
		s := base
		change(&s)
		if n := differ(was, plan(s)); n < 12 {
			t.Errorf("%s changes only %d pixels of the plan", name, n)
		}
	}
}

// TestSteps: a hose that fills is drawn anew a bounded number of times.
func TestSteps(t *testing.T) {
	seen := map[float64]bool{}
	for i := range 10001 {
		seen[steps(float64(i)/10000)] = true
	}
	if len(seen) != 33 || steps(-1) != 0 || steps(3) != 1 {
		t.Errorf("%d steps, %g and %g at the ends", len(seen), steps(-1), steps(3))
	}
}
