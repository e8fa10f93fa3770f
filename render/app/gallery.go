package app

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// gallery shows every gauge, lamp, control, plate and gesture in every state: the pages on which a change
// to one is checked, and the source of the golden pictures. Key F9 on the first screen opens it.
type gallery struct {
	at    int
	unlit bool // by night: without the panel's lights
}

// exhibit is one page of the gallery.
type exhibit struct {
	name   string
	still  func(cv *draw.Canvas, th *theme.Theme)
	moving func(sh *stage.Shelf, f *stage.Frame, th *theme.Theme)
}

// exhibits are the pages, laid out on 1264 by 640 units.
var exhibits = []exhibit{
	{"Gauges", gaugesStill, gaugesMoving},
	{"Controls", controlsStill, controlsMoving},
	{"Cab and cards", cardsStill, cardsMoving},
	{"Lamps, plates, gestures", signsStill, signsMoving},
}

func (g *gallery) key() string { return fmt.Sprint("gallery-", g.at) }

func (g *gallery) layout(*App) {}

func (g *gallery) button(a *App, i int) draw.Rect {
	return draw.Rect{X: 12 + float64(i)*214, Y: a.size.Y - 48, W: 206, H: 38}
}

func (g *gallery) colorsBox(a *App) draw.Rect {
	return draw.Rect{X: a.size.X - 392, Y: a.size.Y - 48, W: 256, H: 38}
}

func (g *gallery) backBox(a *App) draw.Rect {
	return draw.Rect{X: a.size.X - 128, Y: a.size.Y - 48, W: 116, H: 38}
}

func (g *gallery) items(a *App) []Item {
	items := []Item{
		{Key: "back", Box: g.backBox(a), Label: "Back", Do: func() { a.show(&menu{}) }},
		{Key: "colors", Box: g.colorsBox(a), Label: "Colors", Help: "Goes on to the next colors. Key N.", Do: func() { g.nextColors(a) }},
	}
	for i, e := range exhibits {
		items = append(items, Item{Key: fmt.Sprint("page-", i+1), Box: g.button(a, i), Label: e.name, Do: func() { a.show(&gallery{at: i, unlit: g.unlit}) }})
	}
	return items
}

// nextColors goes through day, night with and without the panel's lights, and high contrast.
func (g *gallery) nextColors(a *App) {
	switch a.theme {
	case &theme.Day:
		a.look, g.unlit = NightLook, false
	case &theme.Night:
		g.unlit = true
	case &theme.Dark:
		a.look = Contrast
	default:
		a.look, g.unlit = DayLook, false
	}
}

// corner is where the page's own corner stands.
func (g *gallery) corner(a *App) draw.Point {
	return draw.Pt((a.size.X-1264)/2, 8+(a.size.Y-64-648)/2)
}

func (g *gallery) still(a *App, cv *draw.Canvas) {
	field := draw.Rect{X: 8, Y: 8, W: a.size.X - 16, H: a.size.Y - 64}
	cv.Fill(draw.Round(field, 10), draw.Solid(draw.Mix(a.theme.PlateHi, a.theme.PlateLo, 0.5)))
	o := cv.Origin
	cv.Origin = o.Sub(g.corner(a))
	exhibits[g.at].still(cv, a.theme)
	cv.Origin = o
}

func (g *gallery) moving(a *App) {
	var f stage.Frame
	f.Reset(a.scale)
	exhibits[g.at].moving(a.shelf, &f, a.theme)
	c := g.corner(a)
	for _, s := range f.Sprites {
		s.X, s.Y = s.X+round(c.X*a.scale), s.Y+round(c.Y*a.scale)
		a.frame.Sprites = append(a.frame.Sprites, s)
	}
	for i, e := range exhibits {
		a.button(g.button(a, i), e.name, i == g.at)
	}
	a.button(g.colorsBox(a), "Colors: "+map[string]string{"day": "day", "night": "night, lit", "dark": "night, unlit", "contrast": "high contrast"}[a.theme.Name], false)
	a.button(g.backBox(a), "Back", false)
}

func (g *gallery) onKey(a *App, k Key) bool {
	if !k.Down {
		return false
	}
	switch k.Name {
	case "Escape":
		a.show(&menu{})
	case "N", "n":
		g.nextColors(a)
	default:
		return false
	}
	return true
}
