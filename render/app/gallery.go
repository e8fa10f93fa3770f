package app

import (
	"fmt"

	"steadyneedle/render/card"
	"steadyneedle/render/control"
	"steadyneedle/render/dial"
	"steadyneedle/render/draw"
	"steadyneedle/render/lamp"
	"steadyneedle/render/panel"
	"steadyneedle/render/plate"
	"steadyneedle/render/speech"
	"steadyneedle/render/theme"
	"steadyneedle/sim/world"
)

// gallery shows every gauge and control in every state: the page on which a change to one is checked,
// and the source of the golden picture. Key F9 on the first screen opens it.
type gallery struct{}

func (g *gallery) key() string { return "gallery" }

func (g *gallery) layout(*App) {}

func (g *gallery) items(a *App) []Item {
	return []Item{{Key: "back", Box: draw.Rect{X: a.size.X - 130, Y: a.size.Y - 52, W: 110, H: 38}, Label: "Back", Do: func() { a.show(&menu{}) }}}
}

// shown is one control in one state.
type shown struct {
	face control.Face
	at   float64
	name string
}

// galleryFaces are the controls, each shut, half way and open.
func galleryFaces() []shown {
	var all []shown
	add := func(x, step float64, name string, make func(x float64) control.Face) {
		for i, v := range []float64{0, 0.5, 1} {
			word := ""
			if i == 1 {
				word = name
			}
			all = append(all, shown{make(x + step*float64(i)), v, word})
		}
	}
	line := theme.PlateOf("yellow")
	add(60, 90, "handle", func(x float64) control.Face {
		return control.Handle{Top: draw.Pt(x, 250), Travel: 80, Grip: 70, Tag: &line}
	})
	add(360, 110, "handwheel", func(x float64) control.Face { return control.Wheel{At: draw.Pt(x, 292), R: 44, Turns: -0.4} })
	add(700, 100, "knob, many turns", func(x float64) control.Face { return control.Knob{At: draw.Pt(x, 292), R: 38, Sweep: 1080} })
	add(1000, 90, "knob", func(x float64) control.Face {
		return control.Knob{At: draw.Pt(x, 292), R: 22, Zero: -135, Sweep: 270, Marks: 7}
	})
	add(60, 80, "lever", func(x float64) control.Face { return control.Lever{At: draw.Pt(x, 430), R: 25, Shut: 90} })
	add(310, 60, "switch", func(x float64) control.Face { return control.Toggle{At: draw.Pt(x, 430)} })
	add(500, 60, "push", func(x float64) control.Face {
		return control.Push{At: draw.Pt(x, 430), R: 16, Color: draw.Hex(0xb3261c), Name: "red"}
	})
	add(700, 84, "outlet cap", func(x float64) control.Face {
		return panel.Cap{At: draw.Pt(x, 430), R: 33, Line: 1, Plate: line}
	})
	add(940, 70, "card switch", func(x float64) control.Face {
		return card.Flip{Area: draw.Rect{X: x, Y: 416, W: 58, H: 28}}
	})
	measure := &world.Control{Min: -40, Max: 40, Unit: "ft"}
	add(40, 260, "measure", func(x float64) control.Face {
		return card.Slide{Area: draw.Rect{X: x, Y: 500, W: 240, H: 32}, Def: measure}
	})
	return all
}

func (g *gallery) dials() []struct {
	at    draw.Point
	r, v  float64
	scale *dial.Scale
} {
	return []struct {
		at    draw.Point
		r, v  float64
		scale *dial.Scale
	}{
		{draw.Pt(120, 112), 96, -12, dial.Compound(30, 400, 5)},
		{draw.Pt(330, 112), 100, 134, dial.Even(0, 400, 5, "psi").Sparse()},
		{draw.Pt(520, 112), 80, 3050, tachScale()},
		{draw.Pt(680, 112), 72, 100, dial.Even(0, 400, 5, "psi").Sparse()},
	}
}

func tachScale() *dial.Scale {
	s := dial.Even(0, 3000, 50, "rpm × 100")
	s.Label = func(v float64) string { return fmt.Sprintf("%.0f", v/100) }
	return s
}

func (g *gallery) fan() (dial.Fan, *dial.Scale) {
	return dial.Fan{Box: draw.Rect{X: 780, Y: 60, W: 93, H: 100}, Name: "Coolant °F"}, dial.FanScale(100, 280, 5, "°F")
}

func (g *gallery) still(a *App, cv *draw.Canvas) {
	th := a.theme
	plate.Panel(cv, th, draw.Rect{X: 8, Y: 6, W: a.size.X - 16, H: a.size.Y - 12})
	for _, d := range g.dials() {
		dial.Draw(cv, th, d.at, dial.SizeOf(d.r), d.scale)
	}
	fan, scale := g.fan()
	fan.Draw(cv, th, scale)
	for _, s := range galleryFaces() {
		s.face.Still(cv, th)
		if s.name != "" {
			b := s.face.Box()
			plate.Small(cv, th, draw.Pt(b.Center().X, b.Bottom()+22), draw.Center, s.name)
		}
	}
	for i, p := range theme.Plates {
		plate.Colored(cv, th, draw.Pt(960+float64(i%3)*104, 50+float64(i/3)*36), p.Name, 92, p)
	}
	for i, name := range []string{"sign_water", "sign_ready", "sign_more", "sign_less", "sign_good", "sign_stop", "sign_shut_down", "sign_pick_up", "sign_kink"} {
		speech.Pictogram(cv, draw.Rect{X: 30 + float64(i)*104, Y: 580, W: 96, H: 100}, name, th.Text, th.Caution)
	}
}

func (g *gallery) moving(a *App) {
	for _, d := range g.dials() {
		dial.Needle(a.shelf, &a.frame, a.theme, d.at, dial.SizeOf(d.r), d.scale, d.v)
	}
	fan, scale := g.fan()
	fan.Needle(a.shelf, &a.frame, a.theme, scale, 186)
	for _, s := range galleryFaces() {
		s.face.Moving(a.shelf, &a.frame, a.theme, s.at)
	}
	for k := range 3 {
		for on := range 2 {
			at := draw.Pt(950+float64(k)*90, 140+float64(on)*50)
			lamp.Put(a.shelf, &a.frame, a.theme, at, 10, lamp.Kind(k), on == 1)
		}
	}
	a.button(draw.Rect{X: a.size.X - 130, Y: a.size.Y - 52, W: 110, H: 38}, "Back", false)
	a.shelf.Middle(&a.frame, draw.Pt(a.size.X-20, 640), draw.Right, draw.Style{Size: 15, Color: a.theme.Soft}, fmt.Sprintf("%s colors", a.theme.Name))
}

func (g *gallery) onKey(a *App, k Key) bool {
	if k.Down && k.Name == "Escape" {
		a.show(&menu{})
		return true
	}
	if k.Down && (k.Name == "N" || k.Name == "n") {
		a.setNight(a.theme == &theme.Day)
		return true
	}
	return false
}
