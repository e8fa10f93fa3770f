package app

import (
	"math"
	"strings"

	plot "steadyneedle/render/debrief"
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// Trace is what an outside test needs in order to find controls and to wait for states: one per frame.
type Trace struct {
	Tick    int64              `json:"tick"`
	Screen  string             `json:"screen"`
	Phase   string             `json:"phase,omitempty"` // of what is shown to a class
	Place   string             `json:"place"`
	Focus   string             `json:"focus"`
	Notice  string             `json:"notice"` // on the lower strip
	Events  int                `json:"events"` // that hands have made so far
	Frames  int                `json:"frames"` // drawn so far, by who draws
	Items   []TraceItem        `json:"items"`
	Needles map[string]float64 `json:"needles"` // everything that is perceived, by signal
}

// TraceItem is a thing that can be worked, with its rectangle in pixels and where it stands.
type TraceItem struct {
	Key   string       `json:"key"`
	Label string       `json:"label,omitempty"` // of a finding: its rule
	X     float64      `json:"x"`
	Y     float64      `json:"y"`
	W     float64      `json:"w"`
	H     float64      `json:"h"`
	Value float64      `json:"value"`
	Hand  float64      `json:"hand"`            // where the hand wants it
	Parts [][4]float64 `json:"parts,omitempty"` // boxes of a choice's options
}

// Trace fills in t for the present moment.
func (a *App) Trace(t *Trace) {
	a.collect()
	*t = Trace{Screen: a.screen.key(), Focus: a.focus, Events: a.events, Items: t.Items[:0], Needles: t.Needles}
	if a.flash.left > 0 {
		t.Notice = a.flash.text
	}
	if s, ok := a.screen.(*show); ok {
		t.Phase = s.stage.Player().Phase().String()
		if !s.warned {
			t.Phase = "caution"
		}
	}
	for i := range a.items {
		it := &a.items[i]
		item := TraceItem{Key: it.Key, X: round1(it.Box.X * a.scale), Y: round1(it.Box.Y * a.scale), W: round1(it.Box.W * a.scale), H: round1(it.Box.H * a.scale)}
		if d, ok := a.screen.(*debrief); ok {
			item.Label = d.rule(it.Key)
		}
		if it.Widget != nil && a.eyes != nil {
			item.Value, item.Hand = a.eyes.Value(it.Widget.ID), a.hands.at(it.Widget.ID)
			if c, ok := it.Widget.Face.(interface{ Parts() []draw.Rect }); ok {
				for _, b := range c.Parts() {
					item.Parts = append(item.Parts, [4]float64{round1(b.X * a.scale), round1(b.Y * a.scale), round1(b.W * a.scale), round1(b.H * a.scale)})
				}
			}
		}
		t.Items = append(t.Items, item)
	}
	if t.Needles == nil {
		t.Needles = map[string]float64{}
	}
	clear(t.Needles)
	if a.attempt == nil || a.eyes.Now == nil {
		return
	}
	t.Tick, t.Place = int64(a.eyes.Now.At), a.eyes.Place().String()
	for i := range a.eyes.Signals {
		if v := a.eyes.Now.V[i]; !math.IsNaN(v) && a.eyes.Signals[i].Seen != world.Nowhere {
			t.Needles[a.eyes.Signals[i].Name] = math.Round(v*1e4) / 1e4
		}
	}
}

func round1(v float64) float64 { return math.Round(v*10) / 10 }

// Open shows one of the screens by name, for pictures: menu, panel and other places, speech, debrief.
func (a *App) Open(name string) bool {
	switch name {
	case "menu":
		a.show(&menu{})
	case "gallery":
		a.show(&gallery{})
	case "keys":
		a.show(&keysPage{back: a.screen})
	case "caution":
		a.show(&beforehand{title: "Rated attempt"})
	case "pause":
		a.show(a.newPause(a.placeScreen(a.eyes.Place())))
	case "messages":
		a.show(newLog(a.placeScreen(a.eyes.Place())))
	case "speech":
		a.openSpeech(a.placeScreen(a.eyes.Place()))
	case "own-marks":
		a.show(newOwn(a.attempt))
	case "records":
		a.show(newRecords(a))
	case "unsafe":
		a.show(&stop{text: "No chocks. Expected: both chocks set before the throttle. An apparatus that rolls kills."})
	case "decide":
		f := report.Finding{Title: "Throttle raised without both chocks", Place: "at the panel", Expected: "chocks before and behind the left rear wheel",
			Measured: "1030 rpm", Why: "If the drive slips back to the road the apparatus runs over the operator."}
		a.show(&decide{find: &f})
	case "sums":
		a.openSums(a.placeScreen(a.eyes.Place()))
	case "order", "positions", "all-attempts", "calculation":
		d := newDebrief(a, a.attempt)
		a.show(d)
		d.openNamed(a, name)
	case "moment":
		d := newDebrief(a, a.attempt)
		a.show(newMoment(a, d, d.cursor, nil))
	case "waive", "sign":
		d := newDebrief(a, a.attempt)
		a.show(d)
		if name == "sign" || len(d.sheet.Findings) == 0 {
			d.sign(a)
			break
		}
		d.waive(a, &d.sheet.Findings[0])
	case "debrief":
		a.show(newDebrief(a, a.attempt))
	default:
		on, street := strings.CutPrefix(name, "street-")
		p, ok := world.PlaceNamed(on)
		if !ok {
			return false
		}
		if street {
			a.show(a.streetScreen(p))
			return true
		}
		a.show(a.placeScreen(p))
	}
	return true
}

// Take goes to work on an attempt that was begun elsewhere.
func (a *App) Take(at view.Attempt) { a.take(at) }

// openNamed turns a debrief to what a picture is to show.
func (d *debrief) openNamed(a *App, name string) {
	names := map[string]string{"order": "Order of work", "calculation": "Calculation", "all-attempts": "All attempts"}
	for i, l := range d.leaves {
		if l.name() == names[name] {
			d.turnTo(a, i)
		}
	}
	switch name {
	case "positions":
		for d.view != plot.Positions {
			d.turnView(a)
		}
	}
}

// Recall puts in mind how everything was left at a moment of a recorded attempt, for pictures.
func (a *App) Recall(when world.Tick) {
	remember(a.eyes, a.attempt, when)
	a.eyes.See(a.attempt.Reading())
	a.show(a.placeScreen(a.eyes.Place()))
}
