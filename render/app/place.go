package app

import (
	"steadyneedle/render/cab"
	"steadyneedle/render/control"
	"steadyneedle/render/draw"
	"steadyneedle/render/ground"
	"steadyneedle/render/panel"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// page is one drawn place between the strips.
type page interface {
	Name() string
	Layout(scale float64, box draw.Rect)
	Widgets() []*control.Widget
	Notes() []view.Note
	Still(cv *draw.Canvas, th *theme.Theme)
	Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes)
}

const (
	stripH = 60.0
	footH  = 46.0
)

// place is the screen on which the work is done: strips above and below, a page between.
type place struct {
	focus  string // kept while something lies over the place
	stands world.Place
	page   page
	street *ground.Ground // the page, if it is the street plan
}

// placeScreen is the screen for where the candidate stands.
func (a *App) placeScreen(p world.Place) *place {
	switch p {
	case world.Cab:
		return &place{stands: p, page: cab.New(a.eyes.Table, a.attempt.Info())}
	case world.Panel:
		return &place{stands: p, page: panel.New(a.eyes.Table, a.attempt.Info())}
	}
	return a.streetScreen(p)
}

// streetScreen is the street plan with the cards of what is in reach.
func (a *App) streetScreen(p world.Place) *place {
	g := ground.New(a.eyes, a.attempt, p)
	return &place{stands: p, page: g, street: g}
}

func (s *place) key() string { return s.page.Name() }

func (s *place) layout(a *App) {
	s.page.Layout(a.scale, draw.Rect{X: 8, Y: stripH + 6, W: a.size.X - 16, H: a.size.Y - stripH - footH - 12})
}

func (s *place) notes() []view.Note { return s.page.Notes() }

func (s *place) items(a *App) []Item {
	items := a.stripItems(s)
	for _, w := range s.page.Widgets() {
		items = append(items, widgetItem(w))
	}
	if p, ok := s.page.(*panel.Panel); ok {
		items = append(items, Item{Key: "lamp-test", Box: p.TestBox(), Round: true, Label: "Lamp test",
			Help: "Lights every lamp of the panel for two seconds, to see that none is broken. It moves no water.",
			Do:   func() { a.tested = a.wall }})
	}
	if s.street != nil {
		for _, sp := range s.street.Spots() {
			items = append(items, Item{
				Key: "spot-" + sp.Place.String(), Box: sp.Box, Round: true, Label: "Walk: " + sp.Name,
				Help: sp.About, Do: func() { a.walk(sp.Place) },
			})
		}
	}
	return items
}

// walk sets out for a place.
func (a *App) walk(p world.Place) {
	if id, ok := a.eyes.Control("walk"); ok {
		a.hands.want(id, float64(p))
	}
}

func (s *place) still(a *App, cv *draw.Canvas) {
	a.stripStill(cv)
	s.page.Still(cv, a.theme)
}

func (s *place) moving(a *App) {
	if p, ok := s.page.(*panel.Panel); ok {
		p.Test = a.tested > 0 && a.wall-a.tested < 2
	}
	s.page.Moving(a.shelf, &a.frame, a.theme, a.eyes)
	a.stripMoving(s)
	a.bubble()
	a.comment()
}

func (s *place) onKey(a *App, k Key) bool {
	if !k.Down || k.Ctrl {
		return false
	}
	switch k.Name {
	case "S", "s":
		a.openByKey(s)
	case "M", "m":
		s.focus = a.focus
		a.show(newLog(s))
	case "1":
		s.visit(a, world.Cab)
	case "2":
		s.visit(a, world.Panel)
	case "3":
		s.toStreet(a)
	case "C", "c":
		a.openSums(s)
	case "H", "h":
		a.ask()
	case "L", "l":
		a.lookRound()
	case "Escape":
		if a.help {
			return false
		}
		if a.class != nil {
			a.show(a.class)
			return true
		}
		a.show(a.newPause(s))
	default:
		return false
	}
	return true
}

// visit shows a room, or walks to it from elsewhere.
func (s *place) visit(a *App, p world.Place) {
	if s.stands == p {
		if s.street != nil {
			a.show(a.placeScreen(p))
		}
		return
	}
	a.walk(p)
}

func (s *place) toStreet(a *App) {
	if s.street == nil {
		a.show(a.streetScreen(s.stands))
	}
}

// lookRound turns the head for long enough to see a gesture.
func (a *App) lookRound() {
	if id, ok := a.eyes.Control("look_round"); ok {
		v := 1.0
		if a.hands.at(id) >= 0.5 {
			v = 0
		}
		a.hands.want(id, v)
	}
}
