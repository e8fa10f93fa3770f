package app

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// rigging is the instructor's list: what may be made to go wrong, the crew's nozzles, and what officer
// and crew may say; now, or armed for later.
type rigging struct {
	back *show
	rows []world.ControlID
	at   int
	top  int
}

func newRigging(s *show) *rigging {
	r := &rigging{back: s}
	list := s.stage.Controls()
	for _, wanted := range [...]func(*world.Control) bool{(*world.Control).Fails, isNozzle, isOthersWord} {
		for i := range list {
			if list[i].Label != "" && wanted(&list[i]) {
				r.rows = append(r.rows, world.ControlID(i))
			}
		}
	}
	return r
}

// isNozzle reports whether the crew works it: a nozzle, a gate, another pumper's throttle.
func isNozzle(c *world.Control) bool {
	return c.By == world.Nowhere && c.Missing == "" && (c.Kind == world.Lever || c.Kind == world.Wheel || c.Kind == world.Knob)
}

func isOthersWord(c *world.Control) bool {
	return (c.Kind == world.Speech || c.Kind == world.Gesture) && c.Speaker != world.Candidate
}

const (
	riggingRowH = 30.0
	riggingTop  = 96.0
)

func (r *rigging) key() string { return "rigging" }

func (r *rigging) layout(a *App) { r.back.layout(a) }

func (r *rigging) fits(a *App) int { return int((a.size.Y - riggingTop - 96) / riggingRowH) }

func (r *rigging) box(a *App, i int) draw.Rect {
	return draw.Rect{X: a.size.X/2 - 470, Y: riggingTop + float64(i)*riggingRowH, W: 940, H: riggingRowH - 4}
}

func (r *rigging) items(a *App) []Item {
	var items []Item
	for i := 0; i < r.fits(a) && r.top+i < len(r.rows); i++ {
		n := r.top + i
		items = append(items, Item{Key: fmt.Sprint("rigging-", n), Box: r.box(a, i), Label: r.control(n).Label, Help: "Enter does it now; A arms it for a moment or a reading; D disarms it.", Do: func() { r.at = n; r.act(a) }})
	}
	return items
}

func (r *rigging) control(n int) *world.Control { return &r.back.stage.Controls()[r.rows[n]] }

func (r *rigging) onKey(a *App, k Key) bool {
	if !k.Down {
		return false
	}
	switch k.Name {
	case "Up":
		r.move(a, -1)
	case "Down", "Tab":
		r.move(a, 1)
	case "PageUp":
		r.move(a, -r.fits(a))
	case "PageDown":
		r.move(a, r.fits(a))
	case "Enter", "Space":
		r.act(a)
	case "Left":
		r.nudge(a, -0.1)
	case "Right":
		r.nudge(a, 0.1)
	case "A", "a":
		a.show(newArming(r, r.rows[r.at]))
	case "D", "d":
		r.back.stage.Player().Disarm(r.rows[r.at])
	case "Escape", "X", "x":
		a.show(r.back)
	default:
		return false
	}
	return true
}

func (r *rigging) move(a *App, by int) {
	r.at = max(0, min(len(r.rows)-1, r.at+by))
	fit := r.fits(a)
	r.top = max(0, max(min(r.top, r.at), r.at-fit+1))
	a.stale = true
}

// act throws what has two ends, and says what is said.
func (r *rigging) act(a *App) { r.back.set(a, r.rows[r.at], r.back.other(r.rows[r.at])) }

// other is the value that a press brings: the far end, or back where it began.
func (s *show) other(id world.ControlID) float64 {
	c := &s.stage.Controls()[id]
	switch {
	case isOthersWord(c) && c.CarriesNumber():
		return s.number()
	case isOthersWord(c):
		return c.Start
	}
	if s.handOf(id) != c.Start {
		return c.Start
	}
	if c.Start == c.Max {
		return c.Min
	}
	return c.Max
}

// nudge moves a measure by a share of its range.
func (r *rigging) nudge(a *App, by float64) {
	id, c := r.rows[r.at], r.control(r.at)
	switch {
	case c.CarriesNumber() && isOthersWord(c):
		r.back.spoken = r.back.nudged(id, r.back.number(), by)
	case !isOthersWord(c):
		r.back.set(a, id, r.back.nudged(id, r.back.handOf(id), by))
	}
}

// numberText writes the number of a phrase as it is said: whole.
func (s *show) numberText(c *world.Control, v float64) string {
	units := s.stage.Info().Units
	return fmt.Sprintf("%.0f %s", units.From(v, c.Unit), units.Unit(c.Unit))
}

// number is what a phrase with a number says: a pressure, psi.
func (s *show) number() float64 {
	if s.spoken == 0 {
		return 130
	}
	return s.spoken
}

// nudged is a control's value moved by a share of its range; a switch and a choice go one on or back.
func (s *show) nudged(id world.ControlID, v, by float64) float64 {
	c := &s.stage.Controls()[id]
	switch {
	case isOthersWord(c) && c.CarriesNumber():
		return max(5, min(400, v+math.Copysign(5, by)))
	case isOthersWord(c):
		return v
	case c.Kind == world.Switch || c.Kind == world.Choice:
		v += math.Copysign(1, by)
	default:
		v += by * (c.Max - c.Min)
	}
	return max(c.Min, min(c.Max, v))
}

// valueText says where a control stands, or who says a word.
func (s *show) valueText(id world.ControlID, v float64) string {
	c := &s.stage.Controls()[id]
	units := s.stage.Info().Units
	switch {
	case isOthersWord(c) && c.CarriesNumber():
		return view.Who(c.Speaker) + ", " + s.numberText(c, s.number())
	case isOthersWord(c):
		return view.Who(c.Speaker)
	}
	return view.Setting(c, v, units)
}

// handOf is where a control has been brought.
func (s *show) handOf(id world.ControlID) float64 {
	return s.stage.Player().Attempt.Scene.World.Hand(id)
}

func (s *show) set(a *App, id world.ControlID, v float64) {
	if err := s.stage.Act(id, v); err != nil {
		a.say(sentence(err.Error()))
		return
	}
	if a.frozen { // a sixtieth of a second, so that it is seen
		s.stage.Tick()
		a.eyes.See(s.stage.Reading())
	}
}

func (r *rigging) still(a *App, cv *draw.Canvas) { r.back.still(a, cv) }

func (r *rigging) moving(a *App) {
	r.back.moving(a)
	th := a.theme
	whole := draw.Rect{W: a.size.X, H: a.size.Y}
	a.frame.Put(a.shelf.Get("rigging/veil", whole, func(cv *draw.Canvas) {
		cv.Fill(draw.Box(whole), draw.Solid(draw.Fade(th.Room, 0.7)))
		b := draw.Rect{X: a.size.X/2 - 500, Y: 30, W: 1000, H: a.size.Y - 90}
		cv.Fill(draw.Round(b, 12), draw.Solid(th.Card))
		cv.Fill(draw.Frame(b, 12, 1.5), draw.Solid(th.Rule))
		cv.Text(draw.Pt(b.X+30, b.Y+40), draw.Left, draw.Style{Size: 22, Weight: draw.Bold, Color: th.Text}, "Set up: faults, nozzles, voices")
		cv.Text(draw.Pt(b.Right()-30, b.Y+40), draw.Right, draw.Style{Size: 15, Color: th.CardSoft}, "Enter: now · left, right: how much · A: arm for later · D: disarm · Esc: back")
	}), draw.Point{})
	for i := 0; i < r.fits(a) && r.top+i < len(r.rows); i++ {
		r.row(a, i, r.top+i)
	}
	if len(r.rows) > r.fits(a) {
		text := fmt.Sprintf("%d to %d of %d · Page Up and Page Down for the rest", r.top+1, min(len(r.rows), r.top+r.fits(a)), len(r.rows))
		a.shelf.Middle(&a.frame, draw.Pt(a.size.X/2, a.size.Y-80), draw.Center, draw.Style{Size: 15, Color: th.CardSoft}, text)
	}
}

func (r *rigging) row(a *App, i, n int) {
	th, c, b := a.theme, r.control(n), r.box(a, i)
	if n == r.at {
		a.frame.Put(a.shelf.Get(fmt.Sprint("rigging/at/", th.Name), draw.Rect{W: b.W, H: b.H}, func(cv *draw.Canvas) {
			cv.Fill(draw.Round(draw.Rect{W: b.W, H: b.H}, 6), draw.Solid(th.CardHi))
			cv.Fill(draw.Frame(draw.Rect{W: b.W, H: b.H}, 6, 2), draw.Solid(th.Focus))
		}), draw.Pt(b.X, b.Y))
	}
	st := draw.Style{Size: 16, Color: th.CardText}
	group := "Fault"
	switch {
	case isNozzle(c):
		group = "Crew"
	case isOthersWord(c):
		group = "Says"
	}
	a.shelf.Middle(&a.frame, draw.Pt(b.X+14, b.Center().Y), draw.Left, draw.Style{Size: 15, Color: th.CardSoft}, group)
	a.shelf.Middle(&a.frame, draw.Pt(b.X+76, b.Center().Y), draw.Left, st, st.Fit(a.scale, 380, c.Label))
	a.shelf.Middle(&a.frame, draw.Pt(b.X+470, b.Center().Y), draw.Left, st, r.back.valueText(r.rows[n], r.back.handOf(r.rows[n])))
	if on, ok := r.back.stage.Player().Armed(r.rows[n]); ok && n == r.at { // only where the cursor is: the class looks on
		st.Color = th.Caution
		text := st.Fit(a.scale, 340, r.back.waits(on))
		a.shelf.Middle(&a.frame, draw.Pt(b.Right()-14, b.Center().Y), draw.Right, st, text)
	}
}
