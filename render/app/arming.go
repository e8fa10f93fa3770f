package app

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"steadyneedle/sim/demo"
	"steadyneedle/sim/world"
)

// arming is where the instructor picks what an armed thing waits for: a moment, or a reading beyond a
// level, and the value that it is then set to. Everything is chosen, nothing is typed.
type arming struct {
	list    *rigging
	control world.ControlID
	value   float64
	on      trigger
	field   int
}

// trigger is what was picked.
type trigger struct {
	watch  int // index into watches
	below  bool
	levels []float64 // for each of watches, in the trade's unit
}

// watch is a reading that something can wait for.
type watch struct {
	name, signal, unit string
	step, stepSI       float64 // of the level
	low, top, first    float64 // in the trade's unit
}

// watches is what can be waited for; the first is time.
var watches = []watch{
	{"After a time", "", "s", 5, 5, 5, 600, 15},
	{"Engine speed", "engine_rpm", "rpm", 50, 50, 500, 2600, 1200},
	{"Pump discharge pressure", "discharge_psi", "psi", 5, 50, 5, 350, 130},
	{"Pump intake pressure", "intake_psi", "psi", 5, 25, -10, 150, 20},
	{"Flow through the pump", "pump_gpm", "gpm", 25, 100, 25, 2000, 200},
	{"Water in the tank", "tank_gal", "gal", 10, 50, 10, 1000, 200},
	{"Water in the pump, temperature", "pump_f", "°F", 5, 2, 40, 210, 100},
	{"Flow through the relief valve", "relief_gpm", "gpm", 25, 100, 25, 1500, 50},
}

func newTrigger() trigger {
	t := trigger{levels: make([]float64, len(watches))}
	for i := range watches {
		t.levels[i] = watches[i].first
	}
	return t
}

// newArming begins with what was picked last.
func newArming(r *rigging, id world.ControlID) *arming {
	if r.back.picked.levels == nil {
		r.back.picked = newTrigger()
	}
	return &arming{list: r, control: id, value: r.back.other(id), on: r.back.picked}
}

// onBoard is what the player is to wait for.
func (t *trigger) onBoard(p *demo.Player) demo.Trigger {
	w := &watches[t.watch]
	if w.signal == "" {
		return demo.Trigger{At: p.Attempt.Now() + world.TicksIn(t.levels[t.watch])}
	}
	return demo.Trigger{Signal: w.signal, Below: t.below, Level: t.levels[t.watch]}
}

// waits says what something armed waits for.
func (s *show) waits(on demo.Trigger) string {
	if on.Signal == "" {
		return fmt.Sprintf("armed, in %.0f s", max(0, (on.At-s.stage.Player().Attempt.Now()).Seconds()))
	}
	for i := range watches {
		if w := &watches[i]; w.signal == on.Signal {
			return fmt.Sprintf("armed, %s %s %s", strings.ToLower(w.name[:1])+w.name[1:], beyond(on.Below), s.stage.Info().Units.Text(on.Level, w.unit))
		}
	}
	return "armed"
}

func beyond(below bool) string {
	if below {
		return "below"
	}
	return "above"
}

// What is picked, in order.
const (
	armWatch = iota
	armSide  // above or below; not of time
	armLevel
	armValue // that is then set
	armFields
)

// fields are those that go with what is watched.
func (g *arming) fields() []int {
	if watches[g.on.watch].signal == "" {
		return []int{armWatch, armLevel, armValue}
	}
	return []int{armWatch, armSide, armLevel, armValue}
}

// move goes so many fields on.
func (g *arming) move(by int) {
	list := g.fields()
	at := slices.Index(list, g.field)
	g.field = list[(at+by+len(list))%len(list)]
}

func (g *arming) key() string { return "arming" }

func (g *arming) layout(a *App) { g.list.layout(a) }

func (g *arming) onKey(a *App, k Key) bool {
	if !k.Down {
		return false
	}
	switch k.Name {
	case "Up":
		g.move(-1)
	case "Down", "Tab":
		g.move(1)
	case "Left":
		g.change(-1)
	case "Right":
		g.change(1)
	case "PageUp":
		g.change(5)
	case "PageDown":
		g.change(-5)
	case "Enter", "Space":
		g.arm(a)
	case "Escape":
		a.show(g.list)
	default:
		return false
	}
	return true
}

// scroll changes the field under the pointer.
func (g *arming) scroll(a *App, notches float64) bool {
	for _, i := range g.fields() {
		if g.row(a, i).Has(a.pointer) {
			g.field = i
			g.change(int(math.Copysign(max(1, math.Floor(math.Abs(notches))), notches)))
			break
		}
	}
	return true
}

// change takes the field under the cursor so many choices on.
func (g *arming) change(by int) {
	w := &watches[g.on.watch]
	switch g.field {
	case armWatch:
		n := len(watches)
		g.on.watch = ((g.on.watch+by)%n + n) % n
	case armSide:
		g.on.below = !g.on.below
	case armLevel:
		units := g.list.back.stage.Info().Units
		step := w.step
		if units.Unit(w.unit) != w.unit {
			step = w.stepSI
		}
		v := units.From(g.on.levels[g.on.watch], w.unit)
		v = math.Round(v/step)*step + float64(by)*step
		g.on.levels[g.on.watch] = max(w.low, min(w.top, units.To(v, w.unit)))
	case armValue:
		g.value = g.list.back.nudged(g.control, g.value, 0.1*float64(by))
	}
}

func (g *arming) arm(a *App) {
	p := g.list.back.stage.Player()
	g.list.back.picked = g.on
	if err := p.Arm(g.control, g.value, g.on.onBoard(p)); err != nil {
		a.say(sentence(err.Error()))
	}
	a.show(g.list)
}

// label names a field.
func (g *arming) label(i int) string {
	if i == armLevel && watches[g.on.watch].signal == "" {
		return "In"
	}
	return [armFields]string{"Wait for", "Until it is", "Level", "Then set to"}[i]
}

// text is what a field says.
func (g *arming) text(i int) string {
	s := g.list.back
	w, units := &watches[g.on.watch], s.stage.Info().Units
	switch {
	case i == armValue:
		return s.valueText(g.control, g.value)
	case i == armSide:
		return beyond(g.on.below)
	case i == armWatch && w.signal == "":
		return w.name
	case i == armWatch:
		return fmt.Sprintf("%s, now %s", w.name, units.Text(s.stage.Truth(w.signal), w.unit))
	case w.signal == "":
		return fmt.Sprintf("%.0f s", g.on.levels[g.on.watch])
	}
	return units.Text(g.on.levels[g.on.watch], w.unit)
}

// armUnseen arms the n-th fault of the list with Ctrl and a figure, for what was picked last, or in 15 s:
// nothing of it shows.
func (s *show) armUnseen(k Key) bool {
	if !k.Down || !k.Ctrl || len(k.Name) != 1 || k.Name[0] < '1' || k.Name[0] > '9' {
		return false
	}
	n := int(k.Name[0] - '1')
	list := newRigging(s).rows
	if n < len(list) && s.stage.Controls()[list[n]].Fails() {
		if s.picked.levels == nil {
			s.picked = newTrigger()
		}
		p := s.stage.Player()
		_ = p.Arm(list[n], s.other(list[n]), s.picked.onBoard(p)) // whoever looks on sees no refusal either
	}
	return true
}
