package app

import (
	"fmt"
	"strconv"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/sim/demo"
)

// tally is a show of hands: a count for each option of the question that stands.
type tally struct {
	step   int
	counts []int
	at     int // the option that figures go to
}

// hands is the tally of the question that stands.
func (s *show) hands() *tally {
	p := s.stage.Player()
	if s.tally.step != p.Index() || len(s.tally.counts) != len(p.Step().Ask.Options) {
		s.tally = tally{step: p.Index(), counts: make([]int, len(p.Step().Ask.Options))}
	}
	return &s.tally
}

// vote gives the player what was counted.
func (s *show) vote() {
	t := s.hands()
	if err := s.stage.Player().Vote(t.counts); err != nil {
		s.note = sentence(err.Error())
	}
}

func (s *show) optionBox(i int) draw.Rect {
	whole := s.right.Right() - s.left.X
	y := s.left.Y + s.text*3.4 + float64(i)*(s.text*1.9)
	return draw.Rect{X: s.left.X + 30, Y: y, W: whole - 60, H: s.text * 1.6}
}

// fewerBox is the button that takes back a hand, at the end of an option's row.
func (s *show) fewerBox(i int) draw.Rect {
	b := s.optionBox(i)
	return draw.Rect{X: b.Right() - 52, Y: b.Y + 3, W: 46, H: b.H - 6}
}

// question puts what the class is asked, with the counts.
func (s *show) question(a *App) {
	ask, t := s.stage.Player().Step().Ask, s.hands()
	box := s.left
	box.W = s.right.Right() - s.left.X
	text := a.eyes.Units.Prose(ask.Text)
	a.frame.Put(a.shelf.Once("show/question", fmt.Sprintf("show/question/%s/%v/%v/%d", text, box, t.counts, t.at), box, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(box, 10), draw.Solid(theme.Paper.Sheet))
		st := draw.Style{Size: s.text * 1.1, Weight: draw.Bold, Color: theme.Paper.Ink}
		cv.Paragraph(draw.Pt(box.X+30, box.Y+s.text*1.5), box.W-60, s.text*1.25, st, text)
		for i, o := range ask.Options {
			b := s.optionBox(i)
			cv.Fill(draw.Round(b, 8), draw.Solid(theme.Paper.Row))
			if i == t.at {
				cv.Fill(draw.Frame(b, 8, 3), draw.Solid(theme.Paper.Chosen))
			}
			line := draw.Style{Size: s.text, Color: theme.Paper.Ink}
			cv.Middle(draw.Pt(b.X+16, b.Center().Y), draw.Left, line, line.Fit(cv.Scale, b.W-190, a.eyes.Units.Prose(o)))
			line.Weight = draw.Bold
			cv.Middle(draw.Pt(s.fewerBox(i).X-16, b.Center().Y), draw.Right, line, strconv.Itoa(t.counts[i]))
		}
	}), draw.Point{})
	for i := range ask.Options {
		a.button(s.fewerBox(i), "−1", false)
	}
}

// tallyItems let a hand be counted by a click.
func (s *show) tallyItems(*App) []Item {
	if s.stage.Player().Phase() != demo.Asking {
		return nil
	}
	var items []Item
	t := s.hands()
	for i := range t.counts {
		row, fewer := s.optionBox(i), s.fewerBox(i)
		row.W = fewer.X - 10 - row.X
		items = append(items,
			Item{Key: fmt.Sprint("option-", i), Box: row, Label: "One more for this answer", Help: "One more hand for this answer; figures set the count. Up and Down choose.", Do: func() { t.at, t.counts[i] = i, min(mostHands, t.counts[i]+1) }},
			Item{Key: fmt.Sprint("fewer-", i), Box: fewer, Label: "One fewer for this answer", Help: "One hand fewer for this answer. Backspace takes a figure back.", Do: func() { t.at, t.counts[i] = i, max(0, t.counts[i]-1) }})
	}
	return items
}

// mostHands is the largest class.
const mostHands = 999

// tallyKey takes figures and arrows while a question stands.
func (s *show) tallyKey(_ *App, k Key) bool {
	if s.stage.Player().Phase() != demo.Asking {
		return false
	}
	t := s.hands()
	switch {
	case k.Name == "Up":
		t.at = (t.at + len(t.counts) - 1) % len(t.counts)
	case k.Name == "Down":
		t.at = (t.at + 1) % len(t.counts)
	case k.Name == "Backspace":
		t.counts[t.at] /= 10
	case len(k.Name) == 1 && k.Name[0] >= '0' && k.Name[0] <= '9':
		if n := t.counts[t.at]*10 + int(k.Name[0]-'0'); n <= mostHands {
			t.counts[t.at] = n
		}
	default:
		return false
	}
	return true
}
