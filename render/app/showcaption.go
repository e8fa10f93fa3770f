package app

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// captionRows is how many lines of large type fit below the panes.
const captionRows = 3

// leaflet is a caption by leaves, and which of them shows.
type leaflet struct {
	text   string
	leaves [][]string // nil: not laid out yet
	at     int
}

// captionLines breaks a caption into lines.
func (s *show) captionLines(a *App, text string) []string {
	return draw.Style{Size: s.text}.Wrap(a.scale, s.caption.W-36, text)
}

// leavesW is the room for the number of the leaf, beside a caption that has several.
const leavesW = 96.0

// leaflet is the caption as it stands now, laid out anew only when it is another one or its room has changed.
func (s *show) leaflet(a *App) *leaflet {
	if text := s.captionText(a); text != s.leaf.text {
		s.leaf = leaflet{text: text}
		a.stale = true // it may have leaves to turn, or have none any more
	}
	l := &s.leaf
	if l.leaves == nil {
		l.leaves = s.captionLeaves(a, l.text)
		l.at = min(l.at, len(l.leaves)-1)
	}
	return l
}

// captionLeaves are a caption's lines by leaves: the back row's type leaves room for three at a time.
func (s *show) captionLeaves(a *App, text string) [][]string {
	lines := s.captionLines(a, text)
	if len(lines) <= captionRows {
		return [][]string{lines}
	}
	lines = draw.Style{Size: s.text}.Wrap(a.scale, s.caption.W-36-leavesW, text)
	var leaves [][]string
	for ; len(lines) > captionRows; lines = lines[captionRows:] {
		leaves = append(leaves, lines[:captionRows])
	}
	return append(leaves, lines)
}

// turnLeaf turns the caption on or back; after the last leaf comes the first.
func (s *show) turnLeaf(a *App, by int) {
	l := s.leaflet(a)
	n := len(l.leaves)
	l.at = (l.at + by + n) % n
}

// words puts the caption, in large type.
func (s *show) words(a *App) {
	l, box := s.leaflet(a), s.caption
	leaves, at := l.leaves, l.at
	key := fmt.Sprint("show/words/", l.text, box, at)
	art := a.shelf.Once("show/words", key, box, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(box, 10), draw.Solid(theme.Paper.Board))
		st := draw.Style{Size: s.text, Color: theme.Paper.Chalk}
		lines := leaves[at]
		y := box.Y + s.text*1.05
		if len(leaves) == 1 {
			y += s.text * 0.58 * float64(captionRows-len(lines))
		} else {
			small := draw.Style{Size: 18, Weight: draw.Bold, Color: theme.Paper.Alarm}
			cv.Text(draw.Pt(box.Right()-18, box.Bottom()-14), draw.Right, small, fmt.Sprintf("%d of %d ›", at+1, len(leaves)))
		}
		for _, l := range lines {
			cv.Text(draw.Pt(box.X+18, y), draw.Left, st, l)
			y += s.text * 1.16
		}
	})
	a.frame.Put(art, draw.Point{})
}

// leafItems let a long caption be turned by a click.
func (s *show) leafItems(a *App) []Item {
	if len(s.leaflet(a).leaves) == 1 {
		return nil
	}
	return []Item{{Key: "caption", Box: s.caption, Label: "The rest of it", Help: "Turns to the rest of what is said here. Page Down, Page Up.", Do: func() { s.turnLeaf(a, 1) }}}
}
