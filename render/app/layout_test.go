package app

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"steadyneedle/render/draw"
	"steadyneedle/scenarios"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// pairs are window sizes with the interface's size: zero fills the window.
var pairs = []struct {
	w, h int
	zoom float64
}{
	{1024, 640, 0}, {1024, 768, 0}, {1280, 720, 0}, {1280, 720, 1.5}, {1366, 768, 1}, {1280, 1024, 0}, {1920, 1080, 0}, {1920, 1080, 1},
	{2560, 1080, 0}, {2560, 1440, 1.5}, {3840, 2160, 0}, {3840, 2160, 2}, {3840, 2160, 1},
}

// atEverySize does something at each of these, and tells which it is.
func atEverySize(a *App, do func(size string)) {
	for _, p := range pairs {
		a.zoom, a.w = p.zoom, 0
		a.Resize(p.w, p.h)
		do(fmt.Sprintf("%d×%d at %g", p.w, p.h, p.zoom))
	}
}

// TestLayout: at every size of window and interface, in both systems of units, every line of text on every
// screen lies wholly on the screen and inside of what it is painted on, runs over no card's edge, no two
// lines lie over one another and none had to be shortened; whatever can be worked lies wholly on the screen, between the strips if it
// is the place's, is at least 24 px high and wide (WCAG 2.2, 2.5.8) from 1280×720 up, and lies over nothing
// else that can be worked.
func TestLayout(t *testing.T) {
	for _, sys := range []unit.System{unit.US, unit.SI} {
		a := beginIn(t, false, sys)
		a.shelf.Dry = true
		atEverySize(a, func(size string) {
			for _, s := range screens {
				if !a.Open(s) {
					t.Fatalf("no screen %s", s)
				}
				where := fmt.Sprintf("%v %s, %s", sys, size, s)
				itemsKeepClear(t, a, where)
				keepsClear(t, a, where)
			}
		})
	}
}

// TestLayoutAtWork is TestLayout for the street while the work is going on: there is more to see then, and
// to say about it, than before anything was done.
func TestLayoutAtWork(t *testing.T) {
	for _, sys := range []unit.System{unit.US, unit.SI} {
		p := worked(t, "clean").In(sys)
		a := storeApp(&shelfStore{})
		a.shelf.Dry = true
		for _, at := range []world.Tick{9000, 25000} { // the line laid; everything charged
			for from := world.Cab; from <= world.Round; from++ {
				if err := p.Stand(at, from); err != nil {
					t.Fatal(err)
				}
				a.Take(p)
				atEverySize(a, func(size string) {
					a.Open("street-" + from.String())
					where := fmt.Sprintf("%v %s, tick %d from %s", sys, size, at, from)
					itemsKeepClear(t, a, where)
					keepsClear(t, a, where)
				})
			}
		}
	}
}

// apparatus are the names of all that ship.
func apparatus(t *testing.T) []string {
	t.Helper()
	list, err := scenarios.Open(nil).List()
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, a := range list.Apparatus {
		names = append(names, a.Name)
	}
	return names
}

// TestLayoutOfEveryApparatus is TestLayout for the panels, which differ.
func TestLayoutOfEveryApparatus(t *testing.T) {
	for _, name := range apparatus(t) {
		for _, sys := range []unit.System{unit.US, unit.SI} {
			a := beginOn(t, false, sys, name)
			a.shelf.Dry = true
			atEverySize(a, func(size string) {
				a.Open("panel")
				where := fmt.Sprintf("%s %v %s", name, sys, size)
				itemsKeepClear(t, a, where)
				keepsClear(t, a, where)
			})
		}
	}
}

type placed struct {
	draw.Word
	sprite int
}

// overEdge finds the topmost card under a line of text, and whether the text runs over its edge, or, on a
// large one, comes closer to its sides than can be read at ease. What is smaller than a card is a mark, or
// a part of a gauge.
func overEdge(text draw.Rect, cards []draw.Rect) (draw.Rect, bool) {
	text = text.Inset(0.5)
	for i := len(cards) - 1; i >= 0; i-- {
		c := cards[i]
		if c.W < 60 || c.H < 20 || !c.Overlaps(text) {
			continue
		}
		if c.W > 160 && c.H > 60 {
			c = draw.Rect{X: c.X + 4, Y: c.Y, W: c.W - 8, H: c.H}
		}
		return c, !c.Holds(text)
	}
	return draw.Rect{}, false
}

// TestOverEdge: the check sees text that runs over the edge of the card on top, and that alone.
func TestOverEdge(t *testing.T) {
	page, sheet := draw.Rect{W: 500, H: 300}, draw.Rect{X: 300, Y: 50, W: 400, H: 200}
	for _, c := range []struct {
		name  string
		text  draw.Rect
		cards []draw.Rect
		over  bool
	}{
		{"on the page", draw.Rect{X: 20, Y: 20, W: 200, H: 12}, []draw.Rect{page}, false},
		{"over its right edge", draw.Rect{X: 400, Y: 20, W: 110, H: 12}, []draw.Rect{page}, true},
		{"over its lower edge", draw.Rect{X: 20, Y: 294, W: 100, H: 12}, []draw.Rect{page}, true},
		{"at its very edge", draw.Rect{X: 2, Y: 20, W: 100, H: 12}, []draw.Rect{page}, true},
		{"beside it", draw.Rect{X: 510, Y: 20, W: 100, H: 12}, []draw.Rect{page}, false},
		{"on a sheet over the page's edge", draw.Rect{X: 400, Y: 100, W: 200, H: 12}, []draw.Rect{page, sheet}, false},
		{"over the edge of that sheet", draw.Rect{X: 200, Y: 100, W: 200, H: 12}, []draw.Rect{page, sheet}, true},
		{"with a mark under it", draw.Rect{X: 20, Y: 20, W: 200, H: 12}, []draw.Rect{page, {X: 18, Y: 18, W: 8, H: 16}}, false},
	} {
		if _, over := overEdge(c.text, c.cards); over != c.over {
			t.Errorf("%s: over the edge %v, expected %v", c.name, over, c.over)
		}
	}
}

// keepsClear checks the text of the screen that shows.
func keepsClear(t *testing.T, a *App, where string) {
	t.Helper()
	keepsClearOver(t, a, where, nil)
}

// keepsClearOver is keepsClear for what lies over something else, which is left out of account: below puts it.
func keepsClearOver(t *testing.T, a *App, where string, below func()) {
	t.Helper()
	skip := 0
	if below != nil {
		a.Frame()
		a.frame.Reset(a.scale)
		below()
		skip = 1 + len(a.frame.Sprites) // and the page
	}
	f := a.Frame()
	whole := draw.Rect{X: -0.5, Y: -0.5, W: a.size.X + 1, H: a.size.Y + 1}
	var all []placed
	var cards []draw.Rect // back to front
	for i := skip; i < len(f.Sprites); i++ {
		s := &f.Sprites[i]
		if s.Turned {
			continue
		}
		at := draw.Pt(s.X/a.scale, s.Y/a.scale).Sub(s.Art.Origin)
		art := draw.Rect{X: s.X / a.scale, Y: s.Y / a.scale, W: s.Art.Size.X, H: s.Art.Size.Y}.Inset(-1)
		rest := s.Art.Cards
		for n, w := range s.Art.Words {
			w.Box = w.Box.Move(at)
			for len(rest) > 0 && rest[0].Words <= n {
				cards, rest = append(cards, rest[0].Box.Move(at)), rest[1:]
			}
			if c, over := overEdge(w.Box, cards); over {
				t.Errorf("%s: %q runs over the edge of a card: %+v, %+v", where, w.Text, w.Box, c)
			}
			if !whole.Holds(w.Box) {
				t.Errorf("%s: %q lies at %+v, beyond the edge of %+v", where, w.Text, w.Box, a.size)
			}
			if !art.Holds(w.Box) {
				t.Errorf("%s: %q is cut off by what it is painted on: %+v in %+v", where, w.Text, w.Box, art)
			}
			if strings.HasSuffix(w.Text, "…") && w.Text != "Say…" {
				t.Errorf("%s: no room for %q", where, w.Text)
			}
			all = append(all, placed{w, i})
		}
		for _, c := range rest {
			cards = append(cards, c.Box.Move(at))
		}
	}
	for i, p := range all {
		for _, q := range all[:i] {
			if p.Text != q.Text && p.Box.Inset(1).Overlaps(q.Box.Inset(1)) {
				t.Errorf("%s: %q lies over %q", where, p.Text, q.Text)
			}
		}
	}
}

// itemsKeepClear checks what can be worked on the screen that shows.
func itemsKeepClear(t *testing.T, a *App, where string) {
	t.Helper()
	a.collect()
	whole := draw.Rect{X: -0.5, Y: -0.5, W: a.size.X + 1, H: a.size.Y + 1}
	_, onPlace := a.screen.(*place)
	_, sheet := a.screen.(*talk) // lies over the place
	for i := range a.items {
		it := &a.items[i]
		if !whole.Holds(it.Box) {
			t.Errorf("%s: %s lies at %+v, outside", where, it.Key, it.Box)
		}
		if onPlace && it.Widget != nil && (it.Box.Y < stripH || it.Box.Bottom() > a.size.Y-footH) {
			t.Errorf("%s: %s lies at %+v, on a strip", where, it.Key, it.Box)
		}
		if px := math.Min(it.Box.W, it.Box.H) * a.scale; px < 24 && a.scale >= 1 {
			t.Errorf("%s: %s is only %.0f px", where, it.Key, px)
		}
		for j := range a.items[:i] {
			if o := &a.items[j]; !sheet && it.Box.Inset(1).Overlaps(o.Box.Inset(1)) {
				t.Errorf("%s: %s lies over %s", where, it.Key, o.Key)
			}
		}
	}
}
