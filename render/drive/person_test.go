package drive

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"steadyneedle/render/speech"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/board"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/world"
)

// person works the window as a scripted operator wants: the operator is given what the trace shows,
// and what it wishes is done with keys or with the pointer. While the hands are busy the operator waits.
type person struct {
	*driver
	hands    hands
	operator *operator.Operator
	controls []world.Control
	signals  []world.Signal
	phrases  []speech.Phrase
	reading  world.Reading
	last     *world.Control
	tick     world.Tick // the operator has been asked up to here
}

// hands do one wish: bring a control that is on the screen to a value, go to a screen or a place, say.
type hands interface {
	// bring moves a control toward a value; settle brings what was moved last to it exactly.
	bring(c *world.Control, v float64)
	settle()
	screen(key, item string)
	say(p *speech.Phrase, number string)
	button(key string)
	letGo()
}

// newPerson readies the clean operator of a drill for the window.
func newPerson(t *testing.T, d *driver, h func(*driver) hands, name string) *person {
	t.Helper()
	shelf := scenarios.Open(nil)
	made, err := shelf.Drill(name, scenarios.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	script, err := shelf.Script(made, "clean")
	if err != nil {
		t.Fatal(err)
	}
	a, err := attempt.New(made, attempt.Options{})
	if err != nil {
		t.Fatal(err)
	}
	o, err := a.Operator(script, operator.Hands{Speed: 1, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	k := a.Known()
	p := &person{driver: d, hands: h(d), operator: o, controls: k.Controls, signals: k.Signals}
	p.phrases = speech.List(view.NewTable(k.Controls, k.Signals))
	p.reading.V = make([]float64, len(k.Signals))
	return p
}

// over reports whether the attempt has ended.
func (p *person) over() bool { return p.now.Screen == "own-marks" || p.now.Screen == "debrief" }

// work goes on until the script is done.
func (p *person) work() {
	p.t.Helper()
	var acts []world.Action
	for !p.operator.Done() && !p.over() {
		p.look()
		if acts = p.ask(acts[:0]); len(acts) == 0 {
			p.hands.settle()
			p.until("time", 30, func() bool { return p.now.Tick > int64(p.tick) || p.over() })
			continue
		}
		for i, act := range acts {
			last := i == len(acts)-1 || acts[i+1].Control != act.Control
			if c := &p.controls[act.Control]; last || c.Kind == world.Speech {
				p.do(c, act.Value)
			}
		}
		p.tick = world.Tick(p.now.Tick) // the time that the hands took
	}
	p.hands.letGo()
	if why, line := p.operator.Stuck(); why != "" {
		p.t.Fatalf("line %d: %s; screen %s, notice %q", line, why, p.now.Screen, p.now.Notice)
	}
}

// ask lets the operator look at the ticks that have passed, with what is seen now.
func (p *person) ask(acts []world.Action) []world.Action {
	for i := range p.signals {
		v, seen := p.now.Needles[p.signals[i].Name]
		if !seen {
			v = math.NaN()
		}
		p.reading.V[i] = v
	}
	p.reading.Place, _ = world.PlaceNamed(p.now.Place)
	now := world.Tick(p.now.Tick)
	p.tick = max(p.tick, now-2*board.Beat)
	for p.tick < now {
		p.tick++
		p.reading.At = p.tick
		acts = p.operator.Step(p.tick, &p.reading, acts)
	}
	return acts
}

// do makes one wish true.
func (p *person) do(c *world.Control, v float64) {
	p.t.Helper()
	if c != p.last {
		p.hands.settle()
		p.last = c
	}
	switch {
	case c.Kind == world.Walk:
		p.hands.letGo()
		p.walk(world.Place(v))
	case c.Kind == world.Speech || c.Kind == world.Gesture:
		p.hands.letGo()
		i := slices.IndexFunc(p.phrases, func(f speech.Phrase) bool { return f.Def.Name == c.Name })
		number := ""
		if p.phrases[i].Number() {
			number = strconv.FormatFloat(v, 'f', -1, 64)
		}
		p.hands.say(&p.phrases[i], number)
	case c.Name == "look_round":
		if (p.needle("look_round") >= 0.5) != (v >= 0.5) {
			p.hands.letGo()
			p.hands.button("look")
			p.until("the head turned", 20, func() bool { return (p.needle("look_round") >= 0.5) == (v >= 0.5) })
		}
	default:
		p.show(c.Name)
		p.hands.bring(c, v)
	}
}

// show goes to the screen on which a control is: the room where one stands, or the street plan.
func (p *person) show(name string) {
	p.t.Helper()
	if _, ok := p.find(name); ok {
		return
	}
	p.hands.letGo()
	if strings.HasPrefix(p.now.Screen, "street") {
		room := "tab-Cab"
		if p.now.Place == "panel" {
			room = "tab-Panel"
		}
		p.hands.screen(room, name)
		return
	}
	p.hands.screen("tab-Street", name)
}

// walk sets out for a place; the operator itself waits for the arrival.
func (p *person) walk(to world.Place) {
	p.t.Helper()
	key := "spot-" + to.String()
	p.show(key)
	p.hands.button(key)
	p.until("setting out for "+to.String(), 20, func() bool { return p.now.Place == "walking" || p.now.Place == to.String() })
}
