package app

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// captionRows is how many lines of large type fit below the panes.
const captionRows = 3

// turnedTo is where a caption that is longer than that has been turned to.
type turnedTo struct {
	text string // of which caption
	at   int
}

// captionLines breaks a caption into lines.
func (s *show) captionLines(a *App, text string) []string {
	return draw.Style{Size: s.text}.Wrap(a.scale, s.caption.W-36, text)
}

// leavesW is the room for the number of the leaf, beside a caption that has several.
const leavesW = 96.0

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

// leafOf is which of so many leaves of a caption shows.
func (s *show) leafOf(text string, of int) int {
	if s.leaf.text != text {
		s.leaf = turnedTo{text: text}
	}
	return min(s.leaf.at, of-1)
}

// turnLeaf turns the caption on or back; after the last leaf comes the first.
func (s *show) turnLeaf(a *App, by int) {
	text := s.captionText(a)
	n := len(s.captionLeaves(a, text))
	s.leaf.at = (s.leafOf(text, n) + by + n) % n
	a.stale = true
}

// words puts the caption, in large type.
func (s *show) words(a *App) {
	text, box := s.captionText(a), s.caption
	if text != s.leaf.text {
		a.stale = true // it may have leaves to turn, or have none any more
	}
	leaves := s.captionLeaves(a, text)
	at := s.leafOf(text, len(leaves))
	key := fmt.Sprint("show/words/", text, box, at)
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
	if len(s.captionLeaves(a, s.captionText(a))) == 1 {
		return nil
	}
	return []Item{{Key: "caption", Box: s.caption, Label: "The rest of it", Help: "Turns to the rest of what is said here. Page Down, Page Up.", Do: func() { s.turnLeaf(a, 1) }}}
}
