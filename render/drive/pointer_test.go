package drive

import (
	"fmt"
	"math"

	"steadyneedle/render/speech"
	"steadyneedle/sim/world"
)

// pointer are hands that touch no key.
type pointer struct {
	*driver
	held    string  // what the button holds
	bearing float64 // of the pointer about what is turned, degrees
	gain    map[string]float64
}

func newPointer(d *driver) hands { return &pointer{driver: d, gain: map[string]float64{}} }

func (p *pointer) letGo() {
	if p.held != "" {
		p.held = ""
		p.release()
	}
}

func (p *pointer) bring(c *world.Control, v float64) {
	p.t.Helper()
	if p.held != c.Name {
		p.letGo()
	}
	it := p.item(c.Name)
	switch c.Kind {
	case world.Push:
		if v < 0.5 {
			p.letGo()
		} else if p.held == "" {
			p.point(it.X+it.W/2, it.Y+it.H/2)
			p.hold()
			p.held = c.Name
		}
	case world.Switch:
		if (it.Hand >= 0.5) != (v >= 0.5) {
			p.click(c.Name)
		}
	case world.Choice:
		if it.Hand != v {
			b := it.Parts[int(v-c.Min)]
			p.clickAt(b[0]+b[2]/2, b[1]+b[3]/2)
		}
	case world.Measure:
		p.scrollTo(c, v)
	case world.Lever:
		if (v == c.Min || v == c.Max) && it.Hand != v && it.Hand == c.Min+c.Max-v {
			p.click(c.Name)
			return
		}
		p.turn(c, v)
	case world.Handle:
		p.pull(c, v)
	default:
		p.turn(c, v)
	}
	p.until(fmt.Sprintf("%s at %g", c.Name, v), 20, func() bool {
		it, ok := p.find(c.Name)
		return ok && math.Abs(it.Hand-v) <= 0.03*(c.Max-c.Min)
	})
}

// scrollTo brings a number on the plan to a value with the wheel.
func (p *pointer) scrollTo(c *world.Control, v float64) {
	p.t.Helper()
	for n := 0; ; n++ {
		it := p.item(c.Name)
		if math.Abs(it.Hand-v) < 0.6 {
			return
		}
		if n > 120 {
			p.t.Fatalf("the wheel never brought %s to %g; it stands at %g", c.Name, v, it.Hand)
		}
		p.point(it.X+it.W/2, it.Y+it.H/2)
		p.notch(v > it.Hand)
	}
}

// pull moves a handle along its slot.
func (p *pointer) pull(c *world.Control, v float64) {
	p.t.Helper()
	it := p.item(c.Name)
	travel := it.H - 30 // the grip's half above and below
	y := func(at float64) float64 { return it.Y + 15 + travel*(at-c.Min)/(c.Max-c.Min) }
	if p.held == "" {
		if math.Abs(it.Hand-v) < 0.01 {
			return
		}
		p.point(it.X+it.W/2, y(it.Hand))
		p.hold()
		p.held = c.Name
	}
	over := 0.0 // beyond the ends, so that they are reached
	switch v {
	case c.Min:
		over = -6
	case c.Max:
		over = 6
	}
	p.point(it.X+it.W/2, y(v)+over)
}

// reach is how far from the middle of a wheel the pointer turns it: far out a hand is finer.
const reach = 84.0

// turn drags round the middle of a wheel, knob or lever. What a degree is good for is learned.
func (p *pointer) turn(c *world.Control, v float64) {
	p.t.Helper()
	it := p.item(c.Name)
	within := 0.0006 * (c.Max - c.Min)
	cx, cy := it.X+it.W/2, it.Y+it.H/2
	at := func(r float64) (float64, float64) {
		s, k := math.Sincos(p.bearing * math.Pi / 180)
		return cx + r*s, cy - r*k
	}
	if p.held == "" {
		if math.Abs(it.Hand-v) <= within {
			return
		}
		p.bearing = 0
		x, y := at(it.W * 0.36)
		p.point(x, y)
		p.hold()
		p.held = c.Name
		p.point(at(reach))
	}
	for n := 0; ; n++ {
		it = p.item(c.Name)
		off := v - it.Hand
		if math.Abs(off) <= within && v != c.Min && v != c.Max || off == 0 {
			return
		}
		if n > 200 {
			p.t.Fatalf("turning never brought %s to %g; it stands at %g", c.Name, v, it.Hand)
		}
		degrees := 12.0
		if it.Hand >= c.Max { // where it can only go back
			degrees = -12
		}
		gain := p.gain[c.Name]
		if gain != 0 {
			degrees = max(-50, min(50, off/gain))
			if v == c.Min || v == c.Max { // beyond the end, so that it is reached
				degrees += math.Copysign(4, degrees)
			} else if math.Abs(degrees) < 0.7 {
				return // less than a pixel
			}
		}
		p.bearing += degrees
		p.point(at(reach))
		if moved := p.item(c.Name).Hand - it.Hand; gain == 0 && moved != 0 {
			p.gain[c.Name] = moved / degrees
		} else if gain == 0 {
			p.bearing -= 2 * degrees // it was at its end: the other way round
			p.point(at(reach))
			if moved := p.item(c.Name).Hand - it.Hand; moved != 0 {
				p.gain[c.Name] = -moved / degrees
			}
		}
	}
}

func (p *pointer) screen(key, item string) {
	p.t.Helper()
	p.click(key)
	p.until("the screen with "+item, 20, func() bool { _, ok := p.find(item); return ok })
}

func (p *pointer) button(key string) { p.t.Helper(); p.click(key) }

// say opens the phrases, enters the number on the keypad, and clicks the phrase.
func (p *pointer) say(f *speech.Phrase, number string) {
	p.t.Helper()
	p.click("say")
	p.until("the phrases", 20, func() bool { return p.now.Screen == "talk" })
	for _, r := range number {
		if r == '-' {
			r = '−'
		}
		p.click("digit-" + string(r))
	}
	p.click(f.Def.Name)
	p.until(f.Def.Name+" said", 20, func() bool { return p.now.Screen != "talk" })
}
