package drive

import (
	"math"
	"strings"
	"unicode"

	"steadyneedle/render/control"
	"steadyneedle/render/speech"
	"steadyneedle/sim/world"
)

// keyboard are hands that touch no pointer.
type keyboard struct {
	*driver
	held string // control whose push-button is held by Enter
}

func newKeyboard(d *driver) hands { return &keyboard{driver: d} }

func (k *keyboard) letGo() {
	if k.held != "" {
		k.held = ""
		k.felt("Enter up", func() { k.x.key("Enter", false) })
	}
}

func (k *keyboard) bring(c *world.Control, v float64) {
	k.t.Helper()
	if c.Kind == world.Push {
		if v >= 0.5 && k.held == "" {
			k.focus(c.Name)
			k.held = c.Name
			k.felt("Enter", func() { k.x.key("Enter", true) })
		} else if v < 0.5 {
			k.letGo()
		}
		return
	}
	k.letGo()
	w := control.Widget{Def: c}
	fine, coarse := w.Step(true), w.Step(false)
	for n := 0; ; n++ {
		off := v - k.item(c.Name).Hand
		switch {
		case math.Abs(off) <= fine*0.51 && v != c.Min && v != c.Max, math.Abs(off) < 1e-9:
			return
		case n > 300:
			k.t.Fatalf("keys never brought %s to %g; it stands at %g", c.Name, v, k.item(c.Name).Hand)
		}
		k.focus(c.Name)
		name := "Right"
		if off < 0 {
			name = "Left"
		}
		switch size := math.Abs(off); {
		case v == c.Max && (size > 3*coarse || size < fine):
			name = "End"
		case v == c.Min && (size > 3*coarse || size < fine):
			name = "Home"
		case size < coarse*0.99:
			name = "Shift+" + name
		}
		k.press(name)
	}
}

func (k *keyboard) screen(key, item string) {
	k.t.Helper()
	k.press(map[string]string{"tab-Cab": "1", "tab-Panel": "2", "tab-Street": "3"}[key])
	k.until("the screen with "+item, 20, func() bool { _, ok := k.find(item); return ok })
}

func (k *keyboard) button(key string) {
	k.t.Helper()
	if key == "look" {
		k.press("l")
		return
	}
	k.focus(key)
	k.press("Enter")
}

// say types words of the phrase and its number, goes to it if others have the same words, and says it.
func (k *keyboard) say(p *speech.Phrase, number string) {
	k.t.Helper()
	k.press("s")
	k.until("the phrases", 20, func() bool { return k.now.Screen == "talk" })
	k.typeIn(firstWords(p.Def.Label))
	k.typeIn(number)
	k.focus(p.Def.Name)
	k.press("Enter")
	k.until(p.Def.Name+" said", 20, func() bool { return k.now.Screen != "talk" })
}

// firstWords are the first two words of a phrase that are letters only, as one would type them.
func firstWords(label string) string {
	var words []string
	for _, w := range strings.FieldsFunc(strings.ToLower(label), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		if strings.IndexFunc(w, unicode.IsDigit) < 0 && len(words) < 2 {
			words = append(words, w)
		}
	}
	return strings.Join(words, " ")
}
