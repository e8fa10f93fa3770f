package draw

import (
	"strings"
	"sync"

	"golang.org/x/image/font"
)

// Measuring text takes longer than all else that a frame does, and frames measure the same words again and
// again: what was measured is remembered.

type measured struct {
	weight Weight
	px     int
	text   string
}

type fitted struct {
	measured
	width float64
	scale float64
	track float64
}

// remembered is how much is kept at most; then all is measured anew.
const remembered = 4096

var (
	measureLock sync.Mutex
	widths      = map[measured]float64{} // px
	fits        = map[fitted]string{}
)

// Width is how wide text is at a scale, in units.
func (s Style) Width(scale float64, text string) float64 {
	key := measured{s.Weight, s.px(scale), text}
	measureLock.Lock()
	defer measureLock.Unlock()
	w, ok := widths[key]
	if !ok {
		if len(widths) >= remembered {
			clear(widths)
		}
		w = float64(font.MeasureString(face(s.Weight, key.px), plain.Replace(text))) / 64
		widths[key] = w
	}
	w /= scale
	if s.Track != 0 {
		w += s.Track * float64(len([]rune(plain.Replace(text))))
	}
	return w
}

// Wrap breaks text into lines no wider than width.
func (s Style) Wrap(scale, width float64, text string) []string {
	var lines []string
	for _, para := range strings.Split(text, "\n") {
		line := ""
		for _, word := range strings.Fields(para) {
			try := word
			if line != "" {
				try = line + " " + word
			}
			if line != "" && s.Width(scale, try) > width {
				lines = append(lines, line)
				try = word
			}
			line = try
		}
		lines = append(lines, line)
	}
	return lines
}

// Fit shortens text with an ellipsis until it is no wider than width.
func (s Style) Fit(scale, width float64, text string) string {
	if s.Width(scale, text) <= width {
		return text
	}
	key := fitted{measured{s.Weight, s.px(scale), text}, width, scale, s.Track}
	measureLock.Lock()
	short, ok := fits[key]
	measureLock.Unlock()
	if ok {
		return short
	}
	r := []rune(text)
	for len(r) > 0 && s.Width(scale, string(r)+"…") > width {
		r = r[:len(r)-1]
	}
	short = strings.TrimRight(string(r), " ") + "…"
	measureLock.Lock()
	defer measureLock.Unlock()
	if len(fits) >= remembered {
		clear(fits)
	}
	fits[key] = short
	return short
}
