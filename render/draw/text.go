package draw

import (
	"fmt"
	"image"
	"io/fs"
	"math"
	"strings"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"steadyneedle/assets"
)

// Weight is how heavy letters are.
type Weight uint8

const (
	Regular Weight = iota
	Bold
)

// Style is how a piece of text looks. Size is the height of the type in units, Track the space added
// between letters.
type Style struct {
	Size   float64
	Weight Weight
	Color  Color
	Track  float64
}

// Align is where a line of text stands with respect to its point.
type Align uint8

const (
	Left Align = iota
	Center
	Right
)

type faceKey struct {
	weight Weight
	px     int
}

var (
	fontLock sync.Mutex
	fonts    [2]*opentype.Font
	faces    = map[faceKey]font.Face{}
)

// face returns the typeface at a whole number of pixels; it is kept.
func face(w Weight, px int) font.Face {
	fontLock.Lock()
	defer fontLock.Unlock()
	k := faceKey{w, max(6, px)}
	if f, ok := faces[k]; ok {
		return f
	}
	if fonts[w] == nil {
		fonts[w] = load([...]string{"fonts/B612-Regular.ttf", "fonts/B612-Bold.ttf"}[w])
	}
	f, err := opentype.NewFace(fonts[w], &opentype.FaceOptions{Size: float64(k.px), DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		panic(fmt.Sprintf("the program's own typeface is damaged: %v", err))
	}
	faces[k] = f
	return f
}

func load(name string) *opentype.Font {
	data, err := fs.ReadFile(assets.FS, name)
	if err == nil {
		var f *opentype.Font
		if f, err = opentype.Parse(data); err == nil {
			return f
		}
	}
	panic(fmt.Sprintf("the program's own typeface is damaged: %v", err))
}

func (s Style) px(scale float64) int { return int(math.Round(s.Size * scale)) }

// plain spells out the few signs that the typeface lacks.
var plain = strings.NewReplacer("⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "→", "–", "≥", "at least ", "≤", "at most ", "≈", "about ")

// Missing lists the signs of a text that neither the typeface has nor a spelling stands for: each would be
// drawn as an empty box.
func Missing(text string) []rune {
	face(Regular, 16)
	fontLock.Lock()
	defer fontLock.Unlock()
	var list []rune
	for _, r := range plain.Replace(text) {
		if i, err := fonts[Regular].GlyphIndex(nil, r); err != nil || i == 0 && r != '\n' {
			list = append(list, r)
		}
	}
	return list
}

// Text draws one line with its baseline at p.
func (c *Canvas) Text(p Point, a Align, s Style, text string) {
	text = plain.Replace(text)
	x, y := c.px(p)
	w := (s.Width(c.Scale, text) - s.Track) * c.Scale
	switch a {
	case Center:
		x -= w / 2
	case Right:
		x -= w
	}
	left, _ := c.unit(x, y)
	c.Words = append(c.Words, Word{text, Rect{X: left, Y: p.Y - s.Size*CapHeight, W: w / c.Scale, H: s.Size * (CapHeight + below(text))}})
	if c.dry() {
		return
	}
	d := font.Drawer{
		Dst: c.Img, Src: image.NewUniform(s.Color), Face: face(s.Weight, s.px(c.Scale)),
		Dot: fixed.Point26_6{X: fixed.Int26_6(math.Round(x * 64)), Y: fixed.I(int(math.Round(y)))},
	}
	if s.Track == 0 {
		d.DrawString(text)
		return
	}
	for _, r := range text {
		d.DrawString(string(r))
		d.Dot.X += fixed.Int26_6(s.Track * c.Scale * 64)
	}
}

// below is how far text reaches below its baseline, as a share of the type's size.
func below(text string) float64 {
	if strings.ContainsAny(text, "gjpqy,;()") {
		return 0.2
	}
	return 0.02
}

// CapHeight is the height of capitals and figures as a share of the type's size.
const CapHeight = 0.72

// Middle draws one line whose capitals stand centered about p's height.
func (c *Canvas) Middle(p Point, a Align, s Style, text string) {
	c.Text(Pt(p.X, p.Y+s.Size*CapHeight/2), a, s, text)
}

// Paragraph draws wrapped lines from the baseline of the first at p, lead apart, and returns the
// baseline after the last.
func (c *Canvas) Paragraph(p Point, width, lead float64, s Style, text string) float64 {
	for _, line := range s.Wrap(c.Scale, width, text) {
		c.Text(p, Left, s, line)
		p.Y += lead
	}
	return p.Y
}
