package app

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/view"
)

// badges marks everything that can be asked about while the explanation is on.
func (a *App) badges() {
	th := a.theme
	art := a.shelf.Get("badge/"+th.Name, draw.Around(draw.Point{}, 26, 26), func(cv *draw.Canvas) {
		o := draw.Point{}
		cv.Shadow(draw.Circle(o, 9), 0, 1.5, 4, draw.Fade(th.Shade, 0.8))
		cv.Fill(draw.Circle(o, 9.5), draw.Solid(th.FocusDark))
		cv.Fill(draw.Circle(o, 8.5), draw.Solid(th.Focus))
		cv.Middle(o, draw.Center, draw.Style{Size: 15, Weight: draw.Bold, Color: th.FocusDark}, "?")
	})
	put := func(b draw.Rect) { a.frame.Put(art, draw.Pt(b.X+1, b.Y+1)) }
	for i := range a.items {
		if it := &a.items[i]; it.Widget != nil || it.Help != "" {
			put(it.Box)
		}
	}
	if s, ok := a.screen.(interface{ notes() []view.Note }); ok {
		for _, n := range s.notes() {
			put(n.Box.Inset(min(n.Box.W, n.Box.H) * 0.06))
		}
	}
}

// explain opens a small sheet beside the thing that is pointed at, or focused.
func (a *App) explain() {
	note := a.noteFor()
	if note == nil {
		return
	}
	const w = 350.0
	th := a.theme
	st := draw.Style{Size: 16, Color: th.CardText}
	lines := st.Wrap(a.scale, w-32, note.Text)
	h := 50 + float64(len(lines))*21
	at := draw.Pt(note.Box.Right()+14, note.Box.Y)
	if at.X+w > a.size.X-8 {
		at.X = note.Box.X - w - 14
	}
	at.X = max(8, at.X)
	at.Y = max(8, min(at.Y, a.size.Y-h-8))
	art := a.shelf.Get("note/"+th.Name+note.Title+note.Text, draw.Rect{X: -10, Y: -10, W: w + 20, H: h + 24}, func(cv *draw.Canvas) {
		r := draw.Rect{W: w, H: h}
		cv.Shadow(draw.Round(r, 10), 0, 4, 14, draw.Fade(th.Shade, 0.8))
		cv.Fill(draw.Round(r, 10), draw.Solid(th.Card))
		cv.Fill(draw.Frame(r, 10, 1.5), draw.Solid(th.Focus))
		cv.Text(draw.Pt(16, 29), draw.Left, draw.Style{Size: 17, Weight: draw.Bold, Color: th.CardText}, note.Title)
		cv.Paragraph(draw.Pt(16, 54), w-32, 21, st, note.Text)
	})
	a.frame.Put(art, at)
}

// noteFor is the explanation of what is pointed at, or else of what is focused.
func (a *App) noteFor() *view.Note {
	if it := a.find(a.hover); it != nil {
		return a.noteOf(it)
	}
	if s, ok := a.screen.(interface{ notes() []view.Note }); ok {
		for _, n := range s.notes() {
			if !n.Box.Has(a.pointer) {
				continue
			}
			if a.rated() {
				n.Text = "What it tells is for you to say."
			}
			return &n
		}
	}
	if it := a.find(a.focus); it != nil {
		return a.noteOf(it)
	}
	return nil
}

func (a *App) rated() bool { return a.attempt != nil && !a.attempt.Over() && a.attempt.Info().Rated }

// noteOf says of a control what it does to the water, and how it is worked; in a rated attempt only how. It is
// nil for what says on its face all that there is to say.
func (a *App) noteOf(it *Item) *view.Note {
	text := it.Help
	if it.Widget != nil {
		text = ""
		if !a.rated() {
			text = it.Widget.Units.Prose(view.About(it.Widget.Def.Name)) + "\n"
		}
		text += "How: " + it.Widget.Keys() + "."
	}
	if text == "" {
		return nil // its label says it all
	}
	return &view.Note{Box: it.Box, Title: it.Label, Text: text}
}

// hintS is how long the first hint stays, in seconds.
const hintS = 10

// hintText is what one needs to know in order to find out the rest.
const hintText = "Point at anything and press F1 to learn what it does. Tab goes on, ↑↓ work what is in focus, S says or signals, F2 shows all keys."

// putHint shows the first hint to one who has not worked here before.
func (a *App) putHint() {
	left := a.hintUntil - a.wall
	if left <= 0 {
		return
	}
	if _, ok := a.screen.(*place); !ok {
		return
	}
	th := a.theme
	st := draw.Style{Size: 17, Color: th.CardText}
	const w = 640.0
	lines := st.Wrap(a.scale, w-92, hintText)
	box := draw.Rect{W: w, H: 26 + 24*float64(len(lines))}
	art := a.shelf.Get(fmt.Sprintf("hint/%s", th.Name), box.Inset(-14), func(cv *draw.Canvas) {
		cv.Shadow(draw.Round(box, 12), 0, 5, 16, draw.Fade(th.Shade, 0.9))
		cv.Fill(draw.Round(box, 12), draw.Solid(th.Card))
		cv.Fill(draw.Frame(box, 12, 2), draw.Solid(th.Focus))
		c := draw.Pt(36, box.H/2)
		cv.Fill(draw.Circle(c, 17), draw.Solid(th.Focus))
		cv.Middle(c, draw.Center, draw.Style{Size: 24, Weight: draw.Bold, Color: th.FocusDark}, "?")
		for i, line := range lines {
			cv.Text(draw.Pt(70, 31+24*float64(i)), draw.Left, st, line)
		}
	})
	a.frame.Thin(art, draw.Pt((a.size.X-w)/2, a.size.Y-footH-box.H-18), min(1, left*2))
}
