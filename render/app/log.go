package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/view"
)

// log is everything that was said, newest at the bottom.
type log struct {
	back *place
	up   int // lines scrolled back
}

func newLog(s *place) *log { return &log{back: s} }

func (l *log) key() string { return "log" }

func (l *log) layout(a *App) { l.back.layout(a) }

func (l *log) sheet(a *App) draw.Rect {
	return draw.Rect{X: a.size.X/2 - 460, Y: stripH + 16, W: 920, H: a.size.Y - stripH - footH - 32}
}

func (l *log) close(a *App) { a.resume(l.back) }

func (l *log) items(a *App) []Item {
	r := l.sheet(a)
	return append(a.stripItems(l.back), Item{
		Key: "close", Box: draw.Rect{X: r.Right() - 112, Y: r.Y + 12, W: 96, H: 36}, Label: "Close", Help: "Key Esc.", Do: func() { l.close(a) },
	})
}

func (l *log) still(a *App, cv *draw.Canvas) {
	a.stripStill(cv)
	th, r := a.theme, l.sheet(a)
	cv.Fill(draw.Round(r, 12), draw.Solid(th.Card))
	cv.Fill(draw.Frame(r, 12, 1.5), draw.Solid(th.Rule))
	cv.Text(draw.Pt(r.X+24, r.Y+38), draw.Left, draw.Style{Size: 21, Weight: draw.Bold, Color: th.CardText}, "Everything said and shown")
}

const logLine = 30.0

func (l *log) moving(a *App) {
	th, r := a.theme, l.sheet(a)
	a.stripMoving(l.back)
	a.button(draw.Rect{X: r.Right() - 112, Y: r.Y + 12, W: 96, H: 36}, "Close", false)
	heard := l.lines(a, r.W-254)
	rows := int((r.H - 80) / logLine)
	l.up = max(0, min(l.up, len(heard)-rows))
	end := len(heard) - l.up
	start := max(0, end-rows)
	if len(heard) == 0 {
		a.shelf.Text(&a.frame, draw.Pt(r.X+24, r.Y+90), draw.Left, draw.Style{Size: 17, Color: th.CardSoft}, "Nothing has been said yet.")
	}
	for i, line := range heard[start:end] {
		y := r.Y + 86 + float64(i)*logLine
		who := draw.Style{Size: 16, Weight: draw.Bold, Color: th.Say}
		if line.Mine {
			who.Color = th.CardSoft
		}
		text := draw.Style{Size: 17, Color: th.CardText}
		if line.Who != "" {
			a.shelf.Text(&a.frame, draw.Pt(r.X+24, y), draw.Left, draw.Style{Size: 15, Color: th.CardSoft}, clockText(line.At.Seconds()))
			a.shelf.Text(&a.frame, draw.Pt(r.X+90, y), draw.Left, who, line.Who)
		}
		a.shelf.Text(&a.frame, draw.Pt(r.X+230, y), draw.Left, text, line.Text)
	}
}

// lines breaks what was said into lines of a width; only the first of each names the speaker.
func (l *log) lines(a *App, width float64) []view.Line {
	var all []view.Line
	st := draw.Style{Size: 17}
	for _, h := range a.attempt.Heard() {
		for i, part := range st.Wrap(a.scale, width, h.Text) {
			line := h
			line.Text = part
			if i > 0 {
				line.Who = ""
			}
			all = append(all, line)
		}
	}
	return all
}

func (l *log) scroll(_ *App, notches float64) bool {
	l.up += sign(notches) * 3
	return true
}

func (l *log) onKey(a *App, k Key) bool {
	if !k.Down {
		return false
	}
	switch k.Name {
	case "Escape", "M", "m":
		l.close(a)
	case "Up":
		l.up++
	case "Down":
		l.up--
	case "PageUp":
		l.up += 10
	case "PageDown":
		l.up -= 10
	default:
		return false
	}
	return true
}
