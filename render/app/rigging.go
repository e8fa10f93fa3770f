package app

import (
	"fmt"
	"math"
	"strings"

	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// rigging is the instructor's list: what may be made to go wrong, the crew's nozzles, people in the street, and
// what officer and crew may say; now, or armed for later.
type rigging struct {
	back *show
	rows []world.ControlID
	at   int // the row that is chosen
	top  int // the first that shows
	slid drift
}

func newRigging(s *show) *rigging {
	r := &rigging{back: s}
	list := s.stage.Controls()
	for _, wanted := range [...]func(*world.Control) bool{(*world.Control).Fails, isNozzle, isPerson, isOthersWord} {
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

func isPerson(c *world.Control) bool { return c.Person }

func isOthersWord(c *world.Control) bool {
	return (c.Kind == world.Speech || c.Kind == world.Gesture) && c.Speaker != world.Candidate
}

func (r *rigging) key() string { return "rigging" }

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
		r.arm(a)
	case "D", "d":
		r.disarm()
	case "Escape", "X", "x":
		r.leave(a)
	default:
		return false
	}
	return true
}

// move chooses another row, so many on, and brings it into sight.
func (r *rigging) move(a *App, by int) {
	r.at = max(0, min(len(r.rows)-1, r.at+by))
	fit := r.fits(a)
	r.top = max(0, max(min(r.top, r.at), r.at-fit+1))
	a.stale = true
	if strings.HasPrefix(a.focus, rowKeys) {
		a.collect()
		a.focus = rowKey(r.at)
	}
}

// slide moves the list by so many units under wheel or finger. The chosen row stays in sight: what Enter and
// the buttons do, they do to what is seen.
func (r *rigging) slide(a *App, units float64) {
	r.top += r.slid.rows(units, riggingRowH)
	if most := max(0, len(r.rows)-r.fits(a)); r.top < 0 || r.top > most {
		r.top, r.slid = max(0, min(most, r.top)), 0
	}
	at := max(r.top, min(r.top+r.fits(a)-1, r.at))
	r.move(a, at-r.at)
}

// scroll moves the list by the wheel.
func (r *rigging) scroll(a *App, notches float64) bool {
	const rowsANotch = 3
	r.slide(a, -rowsANotch*riggingRowH*notches)
	return true
}

// click chooses a row, or does what Enter does to the row that is chosen already.
func (r *rigging) click(a *App, n int) {
	if n == r.at {
		r.act(a)
		return
	}
	r.at = n
}

func (r *rigging) arm(a *App) { a.show(newArming(r, r.rows[r.at])) }

func (r *rigging) disarm() { r.back.stage.Player().Disarm(r.rows[r.at]) }

func (r *rigging) leave(a *App) { a.show(r.back) }

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
