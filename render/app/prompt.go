package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/sim/prompter"
	"steadyneedle/sim/world"
)

// prompt is what the interface remembers of the prompter's words.
type prompt struct {
	heeded int      // hints taken in
	words  []string // comments that wait to be read
	left   float64  // s for the first of them
}

// coached reports whether the candidate gets help in this attempt.
func (a *App) coached() bool { return a.attempt != nil && a.attempt.Help() > 0 }

// promptBox is where the next step stands on the upper strip.
func (a *App) promptBox() draw.Rect { return draw.Rect{X: 312, Y: 3, W: 362, H: 54} }

// askItem is the button that the next step is asked for with.
func (a *App) askItem() Item {
	return Item{Key: "ask", Box: a.promptBox().Inset(3), Label: "What is next?", Help: "Asks the prompter for the next step. It is noted on the sheet. Key H.", Do: a.ask}
}

// ask asks for the next step.
func (a *App) ask() {
	if _, ok := a.attempt.Ask(); !ok {
		a.say("There is no help in this attempt: it went without, twice. The sheet comes at the end.")
	}
	a.heed()
}

// heed takes in what the prompter has said since: unsafe acts are explained at once.
func (a *App) heed() {
	all := a.attempt.Hints()
	for ; a.prompt.heeded < len(all); a.prompt.heeded++ {
		switch h := all[a.prompt.heeded]; h.Cause {
		case prompter.Danger:
			a.hands.letGo()
			a.show(&stop{text: h.Text, at: h.At})
		case prompter.Comment:
			a.prompt.words = append(a.prompt.words, h.Text)
		}
	}
}

// promptStill paints the ground of the next step.
func (a *App) promptStill(cv *draw.Canvas) {
	b := a.promptBox()
	cv.Fill(draw.Round(b, 7), draw.Solid(draw.Mix(a.theme.Strip, a.theme.Focus, 0.1)))
	cv.Fill(draw.Round(draw.Rect{X: b.X, Y: b.Y + 6, W: 4, H: b.H - 12}, 2), draw.Solid(a.theme.Focus))
}

// promptMoving puts the step that was told, until it is done.
func (a *App) promptMoving() {
	b, th := a.promptBox(), a.theme
	st := draw.Style{Size: 15, Color: th.Text}
	text := a.attempt.Prompt()
	if text == "" {
		text, st.Color = "H: ask for the next step", th.Soft
	}
	lines := st.Wrap(a.scale, b.W-22, text)
	y := b.Center().Y - 9*float64(len(lines)-1)
	for i, line := range lines {
		a.shelf.Middle(&a.frame, draw.Pt(b.X+14, y+18*float64(i)), draw.Left, st, line)
	}
}

// comment puts what waits to be read over the place, one after the other.
func (a *App) comment() {
	p := &a.prompt
	if len(p.words) == 0 {
		return
	}
	if p.left == 0 {
		p.left = 5 + 0.06*float64(len(p.words[0]))
	}
	const w = 470.0
	th := a.theme
	st := draw.Style{Size: 16, Color: th.CardText}
	lines := st.Wrap(a.scale, w-36, p.words[0])
	box := draw.Rect{W: w, H: 46 + 21*float64(len(lines))}
	art := a.shelf.Once("comment", "comment/"+th.Name+p.words[0], box.Inset(-14), func(cv *draw.Canvas) {
		cv.Shadow(draw.Round(box, 10), 0, 4, 14, draw.Fade(th.Shade, 0.9))
		cv.Fill(draw.Round(box, 10), draw.Solid(th.Card))
		cv.Fill(draw.Frame(box, 10, 1.5), draw.Solid(th.Focus))
		cv.Text(draw.Pt(18, 27), draw.Left, draw.Style{Size: 16, Weight: draw.Bold, Color: th.Focus}, "Of the part that is done")
		for i, line := range lines {
			cv.Text(draw.Pt(18, 52+21*float64(i)), draw.Left, st, line)
		}
	})
	a.frame.Put(art, draw.Pt(12, stripH+6))
}

// readOn lets time pass for what is being read.
func (p *prompt) readOn(seconds float64) {
	if p.left <= 0 {
		return
	}
	if p.left -= seconds; p.left <= 0 {
		p.words, p.left = p.words[1:], 0
	}
}

// stop lies over a rehearsal in which something unsafe was done: the world waits while it is explained.
type stop struct {
	text string
	at   world.Tick
}

func (s *stop) key() string { return "unsafe" }

func (s *stop) layout(*App) {}

func (s *stop) box(a *App) draw.Rect { return draw.Around(draw.Pt(a.size.X/2, a.size.Y/2), 680, 330) }

// backS is how far one goes back to do it again.
const backS = 15

func (s *stop) items(a *App) []Item {
	b := s.box(a)
	y := b.Bottom() - 62.0
	items := []Item{{Key: "go-on", Box: draw.Rect{X: b.Right() - 184, Y: y, W: 160, H: 44}, Label: "Go on", Help: "Key Esc.", Do: func() { a.resume(a.placeScreen(a.eyes.Place())) }}}
	if a.opt.Store != nil {
		items = append(items, Item{Key: "go-back", Box: draw.Rect{X: b.X + 24, Y: y, W: 300, H: 44}, Label: "Go back 15 s and do it again",
			Help: "A rehearsal may be rewound; what came after is forgotten.", Do: func() { a.takeOver(a.attempt, s.at-backS*world.TicksPerSecond) }})
	}
	return items
}

func (s *stop) still(a *App, cv *draw.Canvas) {
	th, b := a.theme, s.box(a)
	a.panelOf(cv, b)
	cv.Fill(draw.Frame(b, 10, 2), draw.Solid(th.Bad))
	cv.Text(draw.Pt(b.X+28, b.Y+48), draw.Left, draw.Style{Size: 24, Weight: draw.Bold, Color: th.Bad}, "Unsafe")
	cv.Text(draw.Pt(b.Right()-28, b.Y+46), draw.Right, draw.Style{Size: 15, Color: th.CardSoft}, "at "+clockText(s.at.Seconds())+" from the start; the world waits")
	y := cv.Paragraph(draw.Pt(b.X+28, b.Y+90), b.W-56, 25, draw.Style{Size: 18, Color: th.CardText}, s.text)
	cv.Paragraph(draw.Pt(b.X+28, max(y+10, b.Bottom()-104)), b.W-56, 19, draw.Style{Size: 15, Color: th.CardSoft},
		"Department procedure, the maker's manual and your instructor come first.")
}

func (s *stop) moving(a *App) {
	for _, it := range s.items(a) {
		a.button(it.Box, it.Label, it.Key == "go-on")
	}
}

func (s *stop) onKey(a *App, k Key) bool {
	if k.Down && k.Name == "Escape" {
		a.resume(a.placeScreen(a.eyes.Place()))
		return true
	}
	return false
}
