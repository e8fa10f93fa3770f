package theme

import (
	"strings"
	"testing"

	"steadyneedle/render/draw"
)

// Ratios: WCAG 2.2, success criteria 1.4.3 (text 4.5:1) and 1.4.11 (graphics 3:1), and 1.4.6 (text 7:1) for
// the theme of high contrast; the label colors of lines, which an open standard gives, keep to 4.5:1.
func TestContrast(t *testing.T) {
	if got := Contrast(draw.Hex(0xffffff), draw.Hex(0)); got < 20.9 || got > 21.1 {
		t.Fatalf("white on black: %.2f, want 21", got)
	}
	for _, th := range All {
		text := []struct {
			name     string
			fore, on draw.Color
		}{
			{"text on room", th.Text, th.Room}, {"text on strip", th.Text, th.Strip},
			{"text on plate", th.Text, th.PlateHi}, {"text in well", th.Text, th.Well},
			{"soft on strip", th.Soft, th.Strip}, {"soft on plate", th.Soft, th.PlateHi},
			{"soft in well", th.Soft, th.Well}, {"heading on plate", th.Heading, th.PlateHi},
			{"card text", th.CardText, th.Card}, {"card text, raised", th.CardText, th.CardHi},
			{"card soft", th.CardSoft, th.Card}, {"card soft, raised", th.CardSoft, th.CardHi},
			{"ink on dial", th.Ink, th.Face}, {"ink on dial edge", th.Ink, th.FaceEdge},
			{"soft ink", th.InkSoft, th.FaceEdge}, {"label", th.Label, th.LabelBack},
			{"accent", th.AccentText, th.Accent}, {"speaker", th.Say, th.Strip},
			{"good", th.Good, th.Card}, {"bad", th.Bad, th.Card}, {"caution", th.Caution, th.Card},
			{"building", th.BuildingText, th.Building},
			{"caution on room", th.Caution, th.Room}, {"soft on room", th.Soft, th.Room},
			{"word in a lens", th.Label, th.LabelBack},
		}
		for _, p := range Plates {
			text = append(text, struct {
				name     string
				fore, on draw.Color
			}{"plate " + p.Name, p.Text, p.Back})
		}
		least := 4.5
		if th.Plain { // 1.4.6, enhanced
			least = 7
		}
		for _, c := range text {
			if got := Contrast(c.fore, c.on); got < least && !(th.Plain && strings.HasPrefix(c.name, "plate ") && got >= 4.5) {
				t.Errorf("%s: %s has contrast %.2f, want %g", th.Name, c.name, got, least)
			}
		}
		shapes := []struct {
			name     string
			fore, on draw.Color
		}{
			{"needle", th.Needle, th.FaceEdge}, {"lance", th.Lance, th.FaceEdge},
			{"range mark", th.Warn, th.FaceEdge},
			{"focus on plate", th.Focus, th.PlateHi}, {"focus on card", th.Focus, th.CardHi},
			{"green", th.Green, th.Unlit}, {"amber", th.Amber, th.Unlit}, {"red", th.Red, th.Unlit},
			{"water", th.Water, th.Groove}, {"dry pipe", th.Dry, th.Groove},
			{"hose", th.Hose, th.Road}, {"supply", th.Supply, th.Road}, {"large supply", th.LargeSupply, th.Road}, {"curb", th.Curb, th.Road},
			{"metal on plate", th.SteelHi, th.PlateHi}, {"bezel on plate", th.BezelHi, th.PlateLo},
			{"card edge of a switch", th.CardSoft, th.Card},
		}
		for _, c := range shapes {
			if got := Contrast(c.fore, c.on); got < 3 {
				t.Errorf("%s: %s has contrast %.2f, want 3", th.Name, c.name, got)
			}
		}
	}
}

// What a class reads, by the same ratios.
func TestPaperContrast(t *testing.T) {
	p := &Paper
	for _, c := range []struct {
		name     string
		fore, on draw.Color
		least    float64
	}{
		{"ink", p.Ink, p.Sheet, 7}, {"ink on a row", p.Ink, p.Row, 7}, {"soft", p.Soft, p.Sheet, 4.5}, {"soft on a plot", p.Soft, p.Plot, 4.5},
		{"chalk", p.Chalk, p.Board, 7}, {"alarm", p.Alarm, p.Board, 7}, {"chalk on a cover", p.Chalk, p.Cover, 7}, {"good", p.Good, p.Sheet, 4.5}, {"bad", p.Bad, p.Sheet, 4.5},
		{"mark", p.Mark, p.Plot, 3}, {"chosen", p.Chosen, p.Row, 3},
	} {
		if got := Contrast(c.fore, c.on); got < c.least {
			t.Errorf("%s: contrast %.2f, want %g", c.name, got, c.least)
		}
	}
	for i, l := range p.Lines { // their names are written in the same color
		if got := Contrast(l, p.Sheet); got < 4.5 {
			t.Errorf("line %d: contrast %.2f, want 4.5", i, got)
		}
	}
}
