package app

import (
	"fmt"
	"strings"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
	"steadyneedle/sim/unit"
)

func (a *App) messageBox() draw.Rect {
	left := 590.0
	if a.coached() {
		left = a.promptBox().Right() + 10
	}
	return draw.Rect{X: left, Y: 8, W: a.size.X - left - 344, H: 44}
}

func (a *App) sayBox() draw.Rect {
	m := a.messageBox()
	return draw.Rect{X: m.Right() + 8, Y: 11, W: 80, H: 38}
}

func (a *App) lookBox() draw.Rect {
	b := a.sayBox()
	b.X += b.W + 8
	return b
}

// helpBox is the button that explains.
func (a *App) helpBox() draw.Rect {
	b := a.lookBox()
	return draw.Rect{X: b.Right() + 8, Y: b.Y, W: 38, H: b.H}
}

// clockBox is the clock, which opens the menu.
func (a *App) clockBox() draw.Rect {
	x := a.helpBox().Right() + 8
	return draw.Rect{X: x, Y: 6, W: a.size.X - 8 - x, H: 48}
}

// stripItems are the buttons of the upper strip.
func (a *App) stripItems(s *place) []Item {
	var items []Item
	for _, t := range a.tabs(s) {
		items = append(items, Item{Key: t.key, Box: t.box, Label: t.label, Help: t.about, Do: t.do})
	}
	if a.coached() {
		items = append(items, a.askItem())
	}
	return append(items,
		Item{Key: "messages", Box: a.messageBox(), Label: "Messages", Help: "Everything that was said so far. Key M.", Do: func() { a.show(newLog(s)) }},
		Item{Key: "say", Box: a.sayBox(), Label: "Say or signal", Help: "The list of phrases and gestures. Key S.", Do: func() { a.openSpeech(s) }},
		Item{Key: "look", Box: a.lookBox(), Label: "Look round", Help: "Turn your head, or look in the mirror: gestures are only seen by one who looks. Key L.", Do: a.lookRound},
		Item{Key: "help", Box: a.helpBox(), Label: "What is this?", Help: "Explains whatever is pointed at or in focus. Key F1.", Do: func() { a.help = !a.help }},
		Item{Key: "menu", Box: a.clockBox(), Label: "Clock and menu", Help: "The drill's clock, from both brakes set to completion called. A click opens the menu. Key Esc.", Do: func() { a.show(a.newPause(s)) }},
	)
}

func (a *App) stripStill(cv *draw.Canvas) {
	th := a.theme
	top := draw.Rect{W: a.size.X, H: stripH}
	cv.Fill(draw.Box(top), draw.Down(top, draw.Lighter(th.Strip, 0.04), th.Strip))
	cv.Fill(draw.Box(draw.Rect{Y: stripH - 1, W: a.size.X, H: 1}), draw.Solid(th.StripEdge))
	foot := draw.Rect{Y: a.size.Y - footH, W: a.size.X, H: footH}
	cv.Fill(draw.Box(foot), draw.Solid(th.Strip))
	cv.Fill(draw.Box(draw.Rect{Y: foot.Y, W: a.size.X, H: 1}), draw.Solid(th.StripEdge))
	m := a.messageBox()
	cv.Fill(draw.Round(m, 7), draw.Solid(th.Card))
	cv.Fill(draw.Frame(m, 7, 1), draw.Solid(th.StripEdge))
	if a.coached() {
		a.promptStill(cv)
		return
	}
	if _, ok := a.attempt.(view.Stage); ok {
		return // see stageTitle: what is simulated may change at any time
	}
	info := a.attempt.Info()
	title := draw.Style{Size: 18, Weight: draw.Bold, Color: th.Text}
	cv.Text(draw.Pt(318, 27), draw.Left, title, title.Fit(cv.Scale, 260, info.Title))
	under := draw.Style{Size: 15, Color: th.Soft}
	cv.Text(draw.Pt(318, 47), draw.Left, under, under.Fit(cv.Scale, 260, info.Under))
}

// stageTitle says what is being shown; while a fault is set, that it is simulated.
func (a *App) stageTitle(s view.Stage) {
	const x, w = 318.0, 260.0
	title, under := draw.Style{Size: 18, Weight: draw.Bold, Color: a.theme.Text}, draw.Style{Size: 15, Color: a.theme.Soft}
	head, line := s.Info().Title, s.Info().Under
	if faults := simulated(s); len(faults) > 0 {
		title.Color, under.Color = a.theme.Caution, a.theme.Caution
		head, line = "Simulated", strings.Join(faults, ", ")
	}
	if title.Width(a.scale, head) > w { // a long title takes both lines
		title.Size = 16
		under, line = title, ""
		if lines := title.Wrap(a.scale, w, head); len(lines) > 1 {
			head, line = lines[0], strings.Join(lines[1:], " ")
		}
	}
	a.shelf.Text(&a.frame, draw.Pt(x, 27), draw.Left, title, title.Fit(a.scale, w, head))
	a.shelf.Text(&a.frame, draw.Pt(x, 47), draw.Left, under, under.Fit(a.scale, w, line))
}

func (a *App) stripMoving(s *place) {
	for _, t := range a.tabs(s) {
		a.button(t.box, t.word, t.on)
	}
	a.button(a.sayBox(), "Say…", false)
	looking := false
	if id, ok := a.eyes.Control("look_round"); ok {
		looking = a.eyes.Value(id) >= 0.5
	}
	a.button(a.lookBox(), "Look", looking)
	if a.coached() {
		a.promptMoving()
	}
	if s, ok := a.attempt.(view.Stage); ok {
		a.stageTitle(s)
	}
	a.button(a.helpBox(), "?", a.help)
	a.lastMessage()
	a.clock()
	a.foot()
}

// button is a plain button of the strips and sheets.
func (a *App) button(b draw.Rect, text string, on bool) {
	th := a.theme
	art := a.shelf.Get(fmt.Sprintf("button/%s/%s/%v/%v/%v", th.Name, text, b.W, b.H, on), draw.Rect{W: b.W, H: b.H}, func(cv *draw.Canvas) {
		r := draw.Rect{W: b.W, H: b.H}
		back, fore, weight := th.CardHi, th.CardText, draw.Bold
		if on {
			back, fore = th.Accent, th.AccentText
		}
		cv.Fill(draw.Round(r, 7), draw.Down(r, draw.Lighter(back, 0.08), back))
		if !on {
			cv.Fill(draw.Frame(r, 7, 1), draw.Solid(th.Rule))
		}
		cv.Middle(r.Center(), draw.Center, draw.Style{Size: 16, Weight: weight, Color: fore}, text)
	})
	a.frame.Put(art, draw.Pt(b.X, b.Y))
}

func (a *App) lastMessage() {
	heard := a.attempt.Heard()
	if len(heard) == 0 {
		return
	}
	m, th := a.messageBox(), a.theme
	l := heard[len(heard)-1]
	who := draw.Style{Size: 15, Weight: draw.Bold, Color: th.Say}
	if l.Mine {
		who.Color = th.Soft
	}
	a.shelf.Text(&a.frame, draw.Pt(m.X+12, m.Y+17), draw.Left, who, l.Who)
	first, second, _ := a.inStrip(l.Who, l.Text)
	if first != "" {
		a.shelf.Text(&a.frame, draw.Pt(m.X+12+a.whoWidth(l.Who), m.Y+17), draw.Left, messageStyle(th), first)
	}
	a.shelf.Text(&a.frame, draw.Pt(m.X+12, m.Y+37), draw.Left, messageStyle(th), second)
}

func messageStyle(th *theme.Theme) draw.Style { return draw.Style{Size: 16, Color: th.Text} }

// whoWidth is the room that a speaker's name takes before what is said.
func (a *App) whoWidth(who string) float64 {
	return draw.Style{Size: 15, Weight: draw.Bold}.Width(a.scale, who) + 10
}

// inStrip lays a message out in its box: below the speaker's name if one line holds it, or else from beside
// the name on. What even that does not hold is cut, and whole is false.
func (a *App) inStrip(who, text string) (first, second string, whole bool) {
	st, w := messageStyle(a.theme), a.messageBox().W-24
	if st.Width(a.scale, text) <= w {
		return "", text, true
	}
	room := w - a.whoWidth(who)
	words := strings.Fields(text)
	n := 0
	for n < len(words) && st.Width(a.scale, strings.Join(words[:n+1], " ")) <= room {
		n++
	}
	first, second = strings.Join(words[:n], " "), strings.Join(words[n:], " ")
	return first, st.Fit(a.scale, w, second), st.Width(a.scale, second) <= w
}

// bubble opens a message that is too long for its box below it, for as long as it takes to read or until
// the next key or click.
func (a *App) bubble() {
	heard := a.attempt.Heard()
	if len(heard) == 0 {
		return
	}
	l, th := heard[len(heard)-1], a.theme
	st := draw.Style{Size: 17, Color: th.CardText}
	_, _, whole := a.inStrip(l.Who, l.Text)
	readS := 4 + 0.06*float64(len(l.Text))
	age := (a.attempt.Reading().At - l.At).Seconds() / float64(a.opt.Pace)
	if age > readS || a.opened.read == len(heard) || whole {
		return
	}
	if a.opened.message != len(heard) {
		a.opened.message, a.opened.since = len(heard), a.wall
	}
	const w = 560.0
	lines := st.Wrap(a.scale, w-32, l.Text)
	box := draw.Rect{W: w, H: 44 + 23*float64(len(lines))}
	art := a.shelf.Once("bubble", "bubble/"+th.Name+l.Text, box.Inset(-14), func(cv *draw.Canvas) {
		cv.Shadow(draw.Round(box, 10), 0, 4, 14, draw.Fade(th.Shade, 0.9))
		cv.Fill(draw.Round(box, 10), draw.Solid(th.Card))
		cv.Fill(draw.Frame(box, 10, 1.5), draw.Solid(th.Say))
		cv.Text(draw.Pt(16, 27), draw.Left, draw.Style{Size: 16, Weight: draw.Bold, Color: th.Say}, l.Who)
		for i, line := range lines {
			cv.Text(draw.Pt(16, 52+23*float64(i)), draw.Left, st, line)
		}
	})
	m := a.messageBox()
	a.frame.Put(art, draw.Pt(m.Right()-w-62, m.Bottom()+6))
}

// opened is the message that lies open below its box.
type opened struct {
	message int     // which one: the number of messages then
	since   float64 // wall time at which it opened
	read    int     // up to which message all is read
}

// closeBubble closes an open message: hands go on working, and it lies over what they work on. One that has
// just opened stays.
func (a *App) closeBubble() {
	if a.attempt != nil && a.opened.message == len(a.attempt.Heard()) && a.wall-a.opened.since > 2 {
		a.opened.read = a.opened.message
	}
}

func (a *App) clock() {
	th := a.theme
	s, running := a.attempt.Clock()
	big := draw.Style{Size: 25, Weight: draw.Bold, Color: th.Text}
	x := a.size.X - 16
	a.shelf.Text(&a.frame, draw.Pt(x, 31), draw.Right, big, clockText(s))
	word := "stopped"
	switch {
	case running:
		word = "running"
	case s == 0:
		word = "not started"
	}
	if a.class != nil && (a.frozen || a.tempo != 1) {
		word = a.paceWord()
	}
	if a.late > 0 {
		word = "time stretched"
	}
	a.shelf.Text(&a.frame, draw.Pt(x, 50), draw.Right, draw.Style{Size: 15, Color: th.Soft}, word)
}

func clockText(s float64) string { return unit.Clock(s) }

// escapes is where Escape leads from a place.
func (a *App) escapes() string {
	if a.class != nil {
		return "back to the class"
	}
	return "menu"
}

// foot says what is focused and how it is worked, and what is heard.
func (a *App) foot() {
	th := a.theme
	y := a.size.Y - footH/2
	caption := a.caption()
	right := a.size.X - 16
	st := draw.Style{Size: 16, Color: th.Text}
	if caption != "" {
		right -= a.shelf.Middle(&a.frame, draw.Pt(right, y), draw.Right, st, caption) + 24
	} else {
		right -= a.shelf.Middle(&a.frame, draw.Pt(right, y), draw.Right, draw.Style{Size: 15, Color: th.Soft}, "F1 what is this · F2 keys · Tab next · S say · Esc "+a.escapes()) + 24
	}
	if a.flash.left > 0 {
		warn := draw.Style{Size: 16, Weight: draw.Bold, Color: th.Caution}
		a.shelf.Middle(&a.frame, draw.Pt(16, y), draw.Left, warn, warn.Fit(a.scale, right-16, a.flash.text))
		return
	}
	it := a.find(a.hover)
	if it == nil {
		it = a.find(a.focus)
	}
	if it == nil {
		return
	}
	name := draw.Style{Size: 16, Weight: draw.Bold, Color: th.Text}
	x := 16 + a.shelf.Middle(&a.frame, draw.Pt(16, y), draw.Left, name, it.Label)
	if it.Widget == nil {
		return
	}
	if pos := it.Widget.Position(a.eyes.Value(it.Widget.ID)); pos != "" && !a.attempt.Info().Rated {
		x += 10
		x += a.shelf.Middle(&a.frame, draw.Pt(x, y), draw.Left, draw.Style{Size: 16, Color: th.Caution}, pos)
	}
	keys := draw.Style{Size: 15, Color: th.Soft}
	a.shelf.Middle(&a.frame, draw.Pt(x+14, y), draw.Left, keys, keys.Fit(a.scale, right-x-14, it.Widget.Keys()))
}
