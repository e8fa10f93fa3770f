package app

import (
	"fmt"
	"math"

	"steadyneedle/render/cab"
	"steadyneedle/render/card"
	"steadyneedle/render/control"
	"steadyneedle/render/dial"
	"steadyneedle/render/draw"
	"steadyneedle/render/lamp"
	"steadyneedle/render/panel"
	"steadyneedle/render/plate"
	"steadyneedle/render/speech"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/sim/world"
)

func round(x float64) float64 { return math.Round(x) }

// shownDial is a dial in one state.
type shownDial struct {
	at    draw.Point
	r, v  float64
	scale *dial.Scale
	word  string
}

func galleryDials() []shownDial {
	psi := func() *dial.Scale { return dial.Even(0, 400, 5, "psi") }
	tach := func() *dial.Scale {
		s := dial.Even(0, 3000, 50, "rpm × 100")
		s.Label = func(v float64) string { return fmt.Sprintf("%.0f", v/100) }
		return s
	}
	return []shownDial{
		{draw.Pt(128, 128), 104, -12, dial.Compound(30, 400, 5), "intake, vacuum"},
		{draw.Pt(356, 128), 104, 0, dial.Compound(30, 400, 5), "intake, zero"},
		{draw.Pt(584, 128), 104, 78, dial.Compound(30, 400, 5), "intake, pressure"},
		{draw.Pt(838, 140), 122, 134, psi(), "pump discharge"},
		{draw.Pt(1120, 140), 122, 460, psi(), "beyond the last mark"},
		{draw.Pt(100, 376), 88, 0, tach(), "engine stopped"},
		{draw.Pt(296, 376), 88, 1480, tach(), "engine working"},
		{draw.Pt(490, 376), 88, math.NaN(), tach(), "not seen"},
		{draw.Pt(668, 376), 72, 0, psi().Sparse(), "line, at rest"},
		{draw.Pt(832, 376), 72, 165, psi().Sparse(), "line, working"},
		{draw.Pt(996, 376), 72, 400, psi().Sparse(), "line, at the end"},
	}
}

type shownFan struct {
	fan   dial.Fan
	scale *dial.Scale
	v     float64
}

func galleryFans() []shownFan {
	var all []shownFan
	x := 36.0
	for _, d := range []struct {
		name         string
		lo, hi, step float64
	}{{"Oil psi", 0, 100, 5}, {"Coolant °F", 100, 280, 5}, {"Volts", 8, 18, 0.5}, {"Pump °F", 40, 240, 5}} {
		for _, share := range []float64{0, 0.55, 1} {
			s := dial.FanScale(d.lo, d.hi, d.step, d.name)
			all = append(all, shownFan{dial.Fan{Box: draw.Rect{X: x, Y: 512, W: 93, H: 100}, Name: d.name}, s, d.lo + share*(d.hi-d.lo)})
			x += 100
		}
	}
	return all
}

func gaugesStill(cv *draw.Canvas, th *theme.Theme) {
	for _, d := range galleryDials() {
		dial.Draw(cv, th, d.at, dial.SizeOf(d.r), d.scale)
		plate.Small(cv, th, draw.Pt(d.at.X, d.at.Y+d.r+20), draw.Center, d.word)
	}
	for _, f := range galleryFans() {
		f.fan.Draw(cv, th, f.scale)
	}
}

func gaugesMoving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme) {
	for _, d := range galleryDials() {
		dial.Needle(sh, f, th, d.at, dial.SizeOf(d.r), d.scale, d.v)
	}
	for _, s := range galleryFans() {
		s.fan.Needle(sh, f, th, s.scale, s.v)
	}
}

// shown is one control in one state.
type shown struct {
	face control.Face
	at   float64
	name string
}

// states is a control shut, half way and open, step apart, with its name below the middle one.
func states(name string, x, step float64, make func(x float64) control.Face) []shown {
	var all []shown
	for i, v := range []float64{0, 0.5, 1} {
		word := ""
		if i == 1 {
			word = name
		}
		all = append(all, shown{make(x + step*float64(i)), v, word})
	}
	return all
}

// galleryControls are those of the panel.
func galleryControls() []shown {
	line := theme.PlateOf("yellow")
	var all []shown
	for _, row := range [][]shown{
		states("handle of a line", 70, 100, func(x float64) control.Face {
			return control.Handle{Top: draw.Pt(x, 44), Travel: 92, Grip: 74, Tag: &line}
		}),
		states("handle of the tank", 390, 76, func(x float64) control.Face {
			return control.Handle{Top: draw.Pt(x, 72), Travel: 34, Grip: 56}
		}),
		states("handwheel, opens to the left", 680, 130, func(x float64) control.Face { return control.Wheel{At: draw.Pt(x, 92), R: 52, Turns: -0.4} }),
		states("handwheel, raises to the right", 80, 120, func(x float64) control.Face { return control.Wheel{At: draw.Pt(x, 268), R: 46, Turns: 0.4} }),
		states("throttle, many turns", 460, 120, func(x float64) control.Face { return control.Knob{At: draw.Pt(x, 268), R: 42, Sweep: 1080} }),
		states("knob", 830, 90, func(x float64) control.Face {
			return control.Knob{At: draw.Pt(x, 268), R: 20, Zero: -135, Sweep: 270, Marks: 7}
		}),
		states("quarter-turn lever", 80, 96, func(x float64) control.Face { return control.Lever{At: draw.Pt(x, 430), R: 27, Shut: 90} }),
		states("drain", 400, 90, func(x float64) control.Face { return control.Lever{At: draw.Pt(x, 430), R: 22, Shut: 0} }),
		states("push button", 680, 70, func(x float64) control.Face {
			return control.Push{At: draw.Pt(x, 430), R: 15, Color: draw.Hex(0xb3261c), Name: "red"}
		}),
		states("outlet and cap", 900, 96, func(x float64) control.Face {
			return panel.Cap{At: draw.Pt(x, 430), R: 33, Line: 1, Plate: line}
		}),
		states("toggle switch", 80, 70, func(x float64) control.Face { return control.Toggle{At: draw.Pt(x, 560)} }),
		states("guarded switch", 340, 80, func(x float64) control.Face { return control.Guarded{At: draw.Pt(x, 560)} }),
		states("two-way slide", 960, 96, func(x float64) control.Face {
			return control.Pick{Area: draw.Around(draw.Pt(x, 560), 88, 24), Words: [2]string{"one", "two"}}
		}),
	} {
		all = append(all, row...)
	}
	return all
}

// galleryCards are those of cab and street.
func galleryCards() []shown {
	measure := &world.Control{Min: -40, Max: 40, Unit: "ft"}
	var all []shown
	for _, row := range [][]shown{
		states("parking brake", 90, 130, func(x float64) control.Face { return cab.Brake{At: draw.Pt(x, 90), R: 48} }),
		states("pump shift", 480, 130, func(x float64) control.Face {
			return cab.Gate{Area: draw.Rect{X: x, Y: 22, W: 110, H: 136}, Options: []string{"road", "pump"}}
		}),
		states("transmission", 40, 150, func(x float64) control.Face {
			return cab.Selector{Area: draw.Rect{X: x, Y: 220, W: 128, H: 136}, Options: []string{"neutral", "drive"}}
		}),
		states("horn", 590, 110, func(x float64) control.Face {
			return control.Push{At: draw.Pt(x, 290), R: 36, Color: draw.Hex(0x2b3136), Name: "black"}
		}),
		states("switch on a card", 900, 90, func(x float64) control.Face { return card.Flip{Area: draw.Rect{X: x, Y: 276, W: 58, H: 28}} }),
		states("measure", 40, 280, func(x float64) control.Face {
			return card.Slide{Area: draw.Rect{X: x, Y: 424, W: 250, H: 32}, Def: measure}
		}),
		states("hold", 900, 110, func(x float64) control.Face {
			return card.Press{Area: draw.Rect{X: x, Y: 424, W: 100, H: 32}, Text: "Hold"}
		}),
		states("choice", 40, 360, func(x float64) control.Face {
			return card.NewChips(1, draw.Pt(x, 540), 350, []string{"off", "hand-tight", "tight"})
		}),
	} {
		all = append(all, row...)
	}
	return all
}

func facesStill(cv *draw.Canvas, th *theme.Theme, all []shown) {
	for _, s := range all {
		s.face.Still(cv, th)
		if s.name != "" {
			b := s.face.Box()
			plate.Small(cv, th, draw.Pt(b.Center().X, b.Bottom()+24), draw.Center, s.name)
		}
	}
}

func facesMoving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, all []shown) {
	for _, s := range all {
		s.face.Moving(sh, f, th, s.at)
	}
}

func controlsStill(cv *draw.Canvas, th *theme.Theme) {
	facesStill(cv, th, galleryControls())
	for i, word := range []string{"focus", "under the pointer"} {
		at := draw.Pt(690+float64(i)*170, 560)
		control.Toggle{At: at}.Still(cv, th)
		plate.Small(cv, th, at.Add(draw.Pt(0, 56)), draw.Center, word)
	}
}

func controlsMoving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme) {
	facesMoving(sh, f, th, galleryControls())
	for i, kind := range []string{"focus", "hover"} {
		t := control.Toggle{At: draw.Pt(690+float64(i)*170, 560)}
		t.Moving(sh, f, th, 1)
		putRing(sh, f, th, t.Box(), false, kind)
	}
}

func cardsStill(cv *draw.Canvas, th *theme.Theme) { facesStill(cv, th, galleryCards()) }

func cardsMoving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme) {
	facesMoving(sh, f, th, galleryCards())
}

var lampStates = [...]string{"unlit", "lit", "lamp test"}

func lampAt(kind, state int) draw.Point {
	return draw.Pt(120+float64(state)*110, 70+float64(kind)*60)
}

func levelAt(lit int) draw.Rect {
	return draw.Rect{X: 470 + float64(lit)*128, Y: 40, W: 86, H: 92}
}

func signsStill(cv *draw.Canvas, th *theme.Theme) {
	for i, s := range lampStates {
		plate.Small(cv, th, draw.Pt(lampAt(0, i).X, 30), draw.Center, s)
	}
	for k, word := range []string{"ready", "notice", "warning"} {
		plate.Small(cv, th, draw.Pt(24, lampAt(k, 0).Y), draw.Left, word)
	}
	for lit := range 6 {
		lamp.Level{Box: levelAt(lit)}.Still(cv, th)
		plate.Small(cv, th, draw.Pt(levelAt(lit).X+35, 152), draw.Center, fmt.Sprintf("%d lit", lit))
	}
	for i, p := range theme.Plates {
		plate.Colored(cv, th, draw.Pt(90+float64(i)*160, 270), p.Name, 132, p)
	}
	plate.Label(cv, th, draw.Pt(1100, 270), "Engraved plate")
	for i, s := range signNames {
		r := draw.Rect{X: 16 + float64(i)*124, Y: 350, W: 118, H: 150}
		speech.Pictogram(cv, r, s, th.Text, th.Caution)
	}
	well := draw.Rect{X: 24, Y: 540, W: 300, H: 70}
	plate.Well(cv, th, well)
	plate.Small(cv, th, well.Center(), draw.Center, "recessed field")
	for i, word := range []string{"pipe, dry", "pipe, water"} {
		y := 556 + float64(i)*40
		run := draw.Polyline(draw.Pt(380, y), draw.Pt(760, y))
		plate.Groove(cv, th, run, 11)
		if i == 1 {
			plate.Water(cv, th, run, 11)
		}
		plate.Small(cv, th, draw.Pt(784, y), draw.Left, word)
	}
}

func signsMoving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme) {
	for k := range 3 {
		for s := range lampStates {
			lamp.Put(sh, f, th, lampAt(k, s), 11, lamp.Kind(k), lamp.State(s))
		}
	}
	for lit := range 6 {
		lamp.Level{Box: levelAt(lit)}.Moving(sh, f, th, lit)
	}
}

var signNames = []string{"sign_water", "sign_ready", "sign_more", "sign_less", "sign_good", "sign_stop", "sign_shut_down", "sign_pick_up", "sign_kink", "crew_go_sign"}
