package app

import (
	"fmt"
	"strings"

	"steadyneedle/render/draw"
	"steadyneedle/render/report"
)

// detailType is how large a finding in full is written.
type detailType struct {
	title, titleLead float64
	text, lead, gap  float64
	top, words       float64 // of the first baseline; room for the words that name a line
	brief            bool    // without time and place: they stand in the list
}

// detailTypes are tried in this order: the first that fits the room is taken.
var detailTypes = []detailType{
	{title: 21, titleLead: 25, text: 17, lead: 21, gap: 4, top: 36, words: 130},
	{title: 19, titleLead: 22, text: 16, lead: 19, gap: 2, top: 32, words: 122},
	{title: 17, titleLead: 19, text: 15, lead: 17, gap: 1, top: 26, words: 116, brief: true},
}

// detailLines are what is told of a finding, each with the word that names it.
func detailLines(s *report.Sheet, find *report.Finding, brief bool) [][2]string {
	var list [][2]string
	add := func(word, text string) {
		if text != "" {
			list = append(list, [2]string{word, text})
		}
	}
	if !brief {
		add("When, where", clockText(find.At.Seconds())+" from the start, "+find.Place)
	}
	add("Expected", find.Expected)
	add("Found", find.Measured)
	add("Why it counts", find.Why)
	add("Decided", sentence(s.Decided(find)))
	add("Waived", s.WaivedFor(find))
	add("Came of it", strings.Join(find.Follows, "; "))
	return list
}

// put writes a finding from the top of a box of width w, its title within room; without a canvas it only
// measures. It returns the height that is taken.
func (k *detailType) put(a *App, cv *draw.Canvas, s *report.Sheet, find *report.Finding, room, w float64) float64 {
	y := k.top
	write := func(x, width, lead float64, st draw.Style, text string) {
		if cv != nil {
			y = cv.Paragraph(draw.Pt(x, y), width, lead, st, text)
			return
		}
		y += lead * float64(len(st.Wrap(a.scale, width, text)))
	}
	write(20, room, k.titleLead, draw.Style{Size: k.title, Weight: draw.Bold, Color: a.theme.CardText}, find.Title)
	y += k.gap + 2
	for _, l := range detailLines(s, find, k.brief) {
		if cv != nil {
			cv.Text(draw.Pt(20, y), draw.Left, draw.Style{Size: min(16, k.text), Weight: draw.Bold, Color: a.theme.CardSoft}, l[0])
		}
		write(20+k.words, w-40-k.words, k.lead, draw.Style{Size: k.text, Color: a.theme.CardText}, l[1])
		y += k.gap
	}
	return y - k.lead + 8 // the last baseline, and what reaches below it
}

// putDetail shows the chosen finding in full, in the largest type that has room.
func (f *findings) putDetail(a *App, d *debrief) {
	th, find := a.theme, &d.sheet.Findings[f.chosen]
	b := f.detail(a, d)
	waived, room := d.sheet.WaivedFor(find), b.W-216
	if d.mayRule() {
		room -= 118
	}
	art := a.shelf.Once("detail", fmt.Sprintf("detail/%s/%d/%s/%v/%v/%v", th.Name, f.chosen, waived, room, b.W, b.H), draw.Rect{W: b.W, H: b.H}, func(cv *draw.Canvas) {
		n := 0
		for n < len(detailTypes)-1 && detailTypes[n].put(a, nil, d.sheet, find, room, b.W) > b.H {
			n++
		}
		detailTypes[n].put(a, cv, d.sheet, find, room, b.W)
	})
	a.frame.Put(art, draw.Pt(b.X, b.Y))
}
