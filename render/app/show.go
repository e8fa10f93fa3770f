package app

import (
	"fmt"
	"slices"

	"steadyneedle/render/cutaway"
	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
	"steadyneedle/sim/demo"
)

// show is the screen for a class: two things side by side, large, and below them what is being shown.
type show struct {
	stage   view.Stage
	pair    int         // which two stand side by side
	below   *demo.Below // what stands below the plot against time; nil: what the demonstration says
	left    draw.Rect
	right   draw.Rect
	caption draw.Rect
	text    float64 // type that the back row reads
	cut     *cutaway.Drawing
	tally   tally
	way     int     // how often another way was taken, by going back or changing over
	readS   float64 // s, the moment that is read off the plots; 0: the newest
	note    string
	picked  trigger // what was armed for last
	leaf    leaflet
	spoken  float64 // psi that a phrase with a number says; 0: as it is at first
	warned  bool    // the caution has been read
}

// BackRow is the size of type, in units, that is read from the back of a class: capitals of 16 minutes of
// arc at 8 m, on a picture 2 m wide that is so many units wide.
func BackRow(width float64) float64 {
	const minutes, away, wide = 16, 8.0, 2.0
	const perMinute = 3.14159265358979 / (180 * 60)
	capital := minutes * perMinute * away / wide * width
	return capital / draw.CapHeight
}

// sides are what can stand side by side.
var sides = []struct{ name, help string }{
	{"Inside + plots", "The inside of the pump, beside readings against time and the pump's curve. Key 1."},
	{"Gauges + plots", "Large gauges beside the plots. Key 2."},
	{"Inside + gauges", "The inside of the pump beside large gauges. Key 3."},
	{"All three", "The inside of the pump beside two gauges and readings against time. Key 4."},
}

const showFoot = 44.0

// top is the height of the upper strip.
func (s *show) top() float64 { return s.text * 1.57 }

func (s *show) key() string { return "show" }

func (s *show) layout(a *App) {
	s.text = BackRow(min(a.size.X, a.size.Y*16/9))
	low := showFoot + 3*s.text*1.16 + 14
	body := draw.Rect{X: 10, Y: s.top() + 4, W: a.size.X - 20, H: a.size.Y - s.top() - low - 10}
	share := 0.585
	if s.pair == 1 {
		share = 0.5
	}
	s.left, s.right = body, body
	s.left.W = body.W*share - 5
	s.right.X, s.right.W = s.left.Right()+10, body.W-s.left.W-10
	s.leaf.leaves = nil
	s.caption = draw.Rect{X: 10, Y: body.Bottom() + 6, W: a.size.X - 20, H: low - showFoot - 4}
	s.cut = nil
	if s.pair != 1 {
		s.cut = cutaway.New(s.left, s.text, a.eyes.Units, s.stage.Rig().Pump.Transfer != nil)
	}
}

func (s *show) items(a *App) []Item {
	var items []Item
	items = append(items, Item{Key: "leave", Box: s.leaveBox(a), Label: "Leave", Help: "Leave the demonstration, and go back to the list. Key Esc.", Do: a.leaveShow})
	for i, b := range s.buttons(a) {
		items = append(items, Item{Key: fmt.Sprint("show-", i), Box: b.box, Label: b.name, Help: b.help, Do: b.do})
	}
	if s.cut != nil && !s.covered() {
		for _, n := range s.cut.Notes() {
			items = append(items, Item{Key: "part-" + n.Title, Box: n.Box, Label: n.Title, Help: n.Text})
		}
	}
	items = append(items, s.leafItems(a)...)
	items = append(items, s.readItems(a)...)
	return append(items, s.tallyItems(a)...)
}

// leaveBox is the way out, at the end of the upper strip.
func (s *show) leaveBox(a *App) draw.Rect {
	const w, h = 84.0, 36.0
	return draw.Rect{X: a.size.X - 10 - w, Y: (s.top() - h) / 2, W: w, H: h}
}

// showButton is one of the instructor's, on the lowest strip.
type showButton struct {
	name, help string
	on         bool
	box        draw.Rect
	do         func()
}

func (s *show) buttons(a *App) []showButton {
	list := []showButton{
		{name: s.goWord(), help: "Go on: end a stop, or begin what was asked about. Space.", do: func() { s.goOn(a) }},
		{name: "Freeze", help: "Stop time, and let it run again. Key F.", on: a.frozen, do: func() { a.frozen = !a.frozen }},
		{name: "Slower", help: "Half as fast; a quarter at the least. Key −.", do: func() { s.faster(a, -1) }},
		{name: "Faster", help: "Twice as fast; eight times at the most. Key +.", do: func() { s.faster(a, 1) }},
		{name: "Back 10 s", help: "Go back ten seconds; what is left stays, and is plotted thin. Key B.", do: func() { s.back(a, 10) }},
		{name: "Other way", help: "Change over to what was left by going back, and keep this in its place. Key O.", do: func() { s.swap(a) }},
		{name: s.handsWord(), help: "Interrupt the script and take the panel, or let it go on. Key T.", on: s.taken(), do: func() { s.take(a) }},
		{name: "Panel", help: "The whole panel, to work it. Key P; Escape comes back.", do: func() { s.panel(a) }},
		{name: "Faults", help: "Faults, nozzles, people and voices: now, or armed for later. Key X.", do: func() { a.show(newRigging(s)) }},
		{name: "Plot", help: "Below the plot against time: the pump's curve, its suction head, or both. Key N.", do: func() { s.nextLower(a) }},
	}
	for i, p := range sides {
		list = append(list, showButton{name: p.name, help: p.help, on: s.pair == i, do: func() { s.choose(a, i) }})
	}
	if s.stage.Player().Demonstration.Free {
		list = slices.DeleteFunc(list, func(b showButton) bool { return b.name == "Take over" })
	}
	if !s.warned {
		list = list[:1]
	}
	x := 10.0
	for i := range list {
		w := draw.Style{Size: 16, Weight: draw.Bold}.Width(a.scale, list[i].name) + 16
		list[i].box = draw.Rect{X: x, Y: a.size.Y - showFoot + 4, W: w, H: showFoot - 10}
		x += w + 5
	}
	return list
}

func (s *show) onKey(a *App, k Key) bool {
	if !k.Down || k.Ctrl {
		return s.armUnseen(k)
	}
	if k.Name == "PageDown" || k.Name == "PageUp" {
		s.turnLeaf(a, map[string]int{"PageDown": 1, "PageUp": -1}[k.Name])
		return true
	}
	if !s.warned && k.Name != "Space" && k.Name != "Escape" {
		return false // nothing begins before the caution has been read
	}
	if s.tallyKey(a, k) {
		return true
	}
	switch k.Name {
	case "Space":
		s.goOn(a)
	case "F", "f":
		a.frozen = !a.frozen
	case "Equal", "Add":
		s.faster(a, 1)
	case "Minus", "Subtract":
		s.faster(a, -1)
	case "Period", "Decimal":
		s.step(a)
	case "B", "b":
		s.back(a, 10)
	case "O", "o":
		s.swap(a)
	case "T", "t":
		s.take(a)
	case "P", "p":
		s.panel(a)
	case "X", "x":
		a.show(newRigging(s))
	case "N", "n":
		s.nextLower(a)
	case "1", "2", "3", "4":
		s.choose(a, int(k.Name[0]-'1'))
	case "Left", "Right":
		return s.readOff(a, k.Name == "Right")
	case "Escape":
		a.leaveShow()
	default:
		return false
	}
	return true
}

// choose puts other things side by side. What never moves lies below all of them alike, and stays.
func (s *show) choose(a *App, pair int) {
	s.pair = pair
	s.layout(a)
	a.stale, a.changed = true, true
}

// panel goes to the whole panel.
func (s *show) panel(a *App) { a.show(a.placeScreen(a.eyes.Place())) }

func (s *show) still(a *App, cv *draw.Canvas) {
	whole := draw.Rect{W: a.size.X, H: a.size.Y}
	cv.Fill(draw.Box(whole), draw.Solid(theme.Paper.Desk))
	cv.Fill(draw.Box(draw.Rect{W: a.size.X, H: s.top()}), draw.Solid(theme.Paper.Board))
	cv.Fill(draw.Box(draw.Rect{Y: a.size.Y - showFoot, W: a.size.X, H: showFoot}), draw.Solid(a.theme.Strip))
}

func (s *show) moving(a *App) {
	s.picture(a)
	if !s.announce(a) {
		s.hint(a)
	}
}

// picture is what the class sees, and the instructor's buttons.
func (s *show) picture(a *App) {
	s.panes(a)
	s.title(a)
	s.clock(a)
	s.words(a)
	a.button(s.leaveBox(a), "Leave", false)
	for _, b := range s.buttons(a) {
		a.button(b.box, b.name, b.on)
	}
}

// announce says what a.say was told, above the caption, which stays open; it reports whether there was
// anything.
func (s *show) announce(a *App) bool {
	if a.flash.left <= 0 {
		return false
	}
	s.aside(a, a.flash.text, a.theme.Caution, s.caption.Y-6)
	return true
}

// hintRestS is how long the pointer may rest until what it says of a thing goes: the class reads what lies below.
const hintRestS = 4.0

// hint says what is pointed at, to whoever stands at the screen: above the lowest strip, or above the caption if
// it is that. It goes when that is clicked.
func (s *show) hint(a *App) {
	text, col, above := s.note, a.theme.Caution, a.size.Y-showFoot
	if a.hover == "caption" {
		above = s.caption.Y - 6
	}
	it := a.find(a.hover)
	if text == "" && it != nil && it.Help != "" && !a.help && a.wall-a.stirred < hintRestS { // help says it beside the thing
		text, col = it.Help, a.theme.Text
	}
	if text != "" {
		s.aside(a, text, col, above)
	}
}

// aside is a small card with a word to the instructor, its lower edge a little above a height.
func (s *show) aside(a *App, text string, col draw.Color, above float64) {
	st := draw.Style{Size: 17, Color: col}
	lines := st.Wrap(a.scale, a.size.X*0.6, text)
	w := 0.0
	for _, l := range lines {
		w = max(w, st.Width(a.scale, l))
	}
	box := draw.Rect{X: 10, W: w + 32, H: float64(len(lines))*23 + 14}
	box.Y = above - box.H - 4
	a.frame.Put(a.shelf.Once("show/hint", fmt.Sprint("show/hint/", a.theme.Name, text, box), box, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(box, 8), draw.Solid(a.theme.Card))
		cv.Fill(draw.Frame(box, 8, 1.5), draw.Solid(a.theme.Rule))
		for i, l := range lines {
			cv.Text(draw.Pt(box.X+16, box.Y+25+float64(i)*23), draw.Left, st, l)
		}
	}), draw.Point{})
}
