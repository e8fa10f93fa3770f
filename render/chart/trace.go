package chart

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// Trace plots readings against time. Each series has a scale of its own family: pressures share one,
// speeds another, so that what belongs together can be compared.
type Trace struct {
	Box   draw.Rect
	Text  float64 // size of type, units
	Title string
	From  float64 // s, left edge
	To    float64 // s, right edge
	Lines []Line
	At    float64 // s, a moment that is read off; NaN: the newest
	Limit *Limit  // nil: none
}

// Limit is a level across the plot, with its name.
type Limit struct {
	Name, Unit  string
	V, Low, Top float64 // and the scale that it is on
}

// Share puts all that has the same unit on one scale, wide enough for each of them.
func (t *Trace) Share() {
	type scale struct {
		unit      string
		low, high *float64
	}
	var list []scale
	for i := range t.Lines {
		l := &t.Lines[i]
		list = append(list, scale{l.Unit, &l.Low, &l.Top})
	}
	if l := t.Limit; l != nil {
		list = append(list, scale{l.Unit, &l.Low, &l.Top})
	}
	for i := range list {
		for k := range list {
			if a, b := list[i], list[k]; a.unit == b.unit {
				*a.low, *b.low = min(*a.low, *b.low), min(*a.low, *b.low)
				*a.high, *b.high = max(*a.high, *b.high), max(*a.high, *b.high)
			}
		}
	}
}

// Line is one series.
type Line struct {
	Name, Unit string
	Top        float64 // upper end of its scale
	Low        float64 // lower end
	At, V      []float64
	Ghost      bool // of a branch that was left
	Covered    bool // a class must not see how it goes on
	Color      int
}

// Least is the height of a trace's box in which so many names, of lines and limit, do not lie over each other.
func Least(text float64, names int) float64 {
	return 32 + text*1.15 + text*1.12*float64(names)
}

// Draw paints it whole. Names stand at the right end, each with its value at the moment that is read off.
func (t *Trace) Draw(cv *draw.Canvas) {
	a := frame(cv, t.Box, t.Text, t.Title, fmt.Sprintf("%.0f s", t.To-t.From))
	t.body(cv, a, func(draw.Rect) {})
}

// body paints the lines and their names; under is painted below the lines.
func (t *Trace) body(cv *draw.Canvas, a draw.Rect, under func(plot draw.Rect)) {
	plot, labels := t.field(cv.Scale, a)
	for k := 1; k < 6; k++ {
		x := cv.Snap(plot.X + plot.W*float64(k)/6)
		cv.Fill(draw.Box(draw.Rect{X: x, Y: a.Y, W: 1, H: a.H}), draw.Solid(draw.Fade(rule, 0.7)))
	}
	under(plot)
	t.limit(cv, plot)
	var at []float64
	for i := range t.Lines {
		l := &t.Lines[i]
		stroke(cv, t.points(plot, l), l.Color, l.Ghost)
		at = append(at, l.y(plot, l.value(t.read())))
	}
	if !math.IsNaN(t.At) {
		x := plot.X + plot.W*(t.At-t.From)/(t.To-t.From)
		cv.Fill(draw.Box(draw.Rect{X: cv.Snap(x) - 1, Y: a.Y, W: 2, H: a.H}), draw.Solid(mark))
	}
	t.names(cv, plot, labels, at, draw.Style{Size: t.Text, Weight: draw.Bold})
}

// field is where the lines run: an area less the room for their names, which are given too.
func (t *Trace) field(scale float64, a draw.Rect) (draw.Rect, []string) {
	name := draw.Style{Size: t.Text, Weight: draw.Bold}
	room := 0.0
	labels := make([]string, len(t.Lines))
	for i := range t.Lines {
		l := &t.Lines[i]
		if l.Ghost {
			continue
		}
		labels[i] = l.label(t.read())
		room = max(room, name.Width(scale, labels[i]))
	}
	if t.Limit != nil {
		room = max(room, name.Width(scale, t.Limit.Name))
	}
	a.W -= room + 18
	return a, labels
}

// When is the moment that stands at x, s; beyond the lines it is that of their end. scale is px a unit.
func (t *Trace) When(scale, x float64) float64 {
	f, _ := t.field(scale, area(t.Box, t.Text))
	return t.From + (t.To-t.From)*max(0, min(1, (x-f.X)/f.W))
}

// read is the moment whose values stand beside the names.
func (t *Trace) read() float64 {
	if math.IsNaN(t.At) {
		return t.To
	}
	return t.At
}

func (l *Line) label(at float64) string {
	v := l.value(at)
	switch {
	case l.Covered:
		return l.Name + " ?"
	case math.IsNaN(v):
		return l.Name
	}
	digits := 0
	if math.Abs(v) < 10 && l.Top < 20 {
		digits = 1
	}
	number := fmt.Sprintf("%.*f", digits, v)
	if strings.Trim(number, "-0.") == "" {
		number = strings.TrimPrefix(number, "-") // no minus nought
	}
	between := " "
	if last := l.Name[len(l.Name)-1]; last >= '0' && last <= '9' { // "line 1" is not at ten
		between = ": "
	}
	return l.Name + between + strings.Replace(number, "-", "−", 1)
}

// value is the series' at a moment; NaN before it begins.
func (l *Line) value(at float64) float64 {
	v := math.NaN()
	for i := len(l.At) - 1; i >= 0; i-- {
		if l.At[i] <= at+1e-9 {
			return l.V[i]
		}
	}
	return v
}

func (l *Line) y(a draw.Rect, v float64) float64 {
	share := (v - l.Low) / (l.Top - l.Low)
	return a.Bottom() - 4 - (a.H-8)*max(-0.01, min(1.01, share))
}

func (t *Trace) points(a draw.Rect, l *Line) []draw.Point {
	var list []draw.Point
	for i := range l.At {
		if l.At[i] < t.From || l.At[i] > t.To || math.IsNaN(l.V[i]) {
			continue
		}
		list = append(list, draw.Pt(a.X+a.W*(l.At[i]-t.From)/(t.To-t.From), l.y(a, l.V[i])))
	}
	return list
}

// tag is a name beside the end of its line.
type tag struct {
	y    float64
	text string
	col  draw.Color
}

// names puts each name beside its line's end, pushed apart where they would lie over each other.
func (t *Trace) names(cv *draw.Canvas, a draw.Rect, labels []string, at []float64, st draw.Style) {
	var tags []tag
	for i := range labels {
		if labels[i] != "" && !math.IsNaN(at[i]) {
			tags = append(tags, tag{at[i], labels[i], colors[t.Lines[i].Color%len(colors)]})
		}
	}
	if l := t.Limit; l != nil {
		tags = append(tags, tag{l.y(a), l.Name, theme.Paper.Bad})
	}
	apart(tags, a, st.Size*1.12)
	for _, g := range tags {
		st.Color = g.col
		cv.Middle(draw.Pt(a.Right()+10, g.y), draw.Left, st, g.text)
	}
}

// apart sorts tags from top to bottom and moves them until none lies over another.
func apart(tags []tag, a draw.Rect, gap float64) {
	sort.SliceStable(tags, func(i, k int) bool { return tags[i].y < tags[k].y })
	for i := range tags {
		tags[i].y = max(tags[i].y, a.Y+gap*0.5)
		if i > 0 {
			tags[i].y = max(tags[i].y, tags[i-1].y+gap)
		}
	}
	for i := len(tags) - 1; i >= 0; i-- {
		tags[i].y = min(tags[i].y, a.Bottom()-gap*0.5-gap*float64(len(tags)-1-i))
	}
}

// limit draws the level, dotted.
func (t *Trace) limit(cv *draw.Canvas, a draw.Rect) {
	if t.Limit == nil {
		return
	}
	y := t.Limit.y(a)
	for _, piece := range draw.Dashes(draw.Polyline(draw.Pt(a.X, y), draw.Pt(a.Right(), y)), 5, 5) {
		cv.Fill(draw.Stroke(piece, 2.4), draw.Solid(theme.Paper.Bad))
	}
}

func (l *Limit) y(a draw.Rect) float64 {
	on := Line{Low: l.Low, Top: l.Top}
	return on.y(a, l.V)
}
