package chart

import (
	"math"
	"testing"

	"steadyneedle/render/draw"
)

// Names stand inside the plot, none over another, and carry the value of the moment that is read off.
func TestNames(t *testing.T) {
	l := Line{Name: "intake", Unit: "psi", Top: 250, Low: -20, At: []float64{0, 1, 2}, V: []float64{50, 40, 30}}
	for at, want := range map[float64]string{-1: "intake", 0: "intake 50", 1.5: "intake 40", 9: "intake 30"} {
		if got := l.label(at); got != want {
			t.Errorf("at %v: %q, want %q", at, got, want)
		}
	}
	a := draw.Rect{X: 10, Y: 20, W: 300, H: 200}
	if y := l.y(a, 1e9); y < a.Y-1 {
		t.Errorf("a value beyond the scale is drawn at %v, above %v", y, a.Y)
	}
	if y := l.y(a, -1e9); y > a.Bottom()+1 {
		t.Errorf("a value below the scale is drawn at %v, below %v", y, a.Bottom())
	}
	trace := Trace{From: 0, To: 2}
	if p := trace.points(a, &l); len(p) != 3 || p[0].X != a.X || math.Abs(p[2].X-a.Right()) > 1e-9 {
		t.Errorf("points %v do not span the plot", p)
	}
}

// The axes have one to three round marks, whatever they span.
func TestMarks(t *testing.T) {
	for _, top := range []float64{60, 100, 250, 300, 700, 1500, 2000, 3600} {
		list := marks(top)
		if len(list) < 1 || len(list) > 3 || list[len(list)-1] >= top {
			t.Errorf("marks of an axis to %v: %v", top, list)
		}
	}
}

// The pump's curve falls, the lines' rises, and they meet where the pump works.
func TestCurve(t *testing.T) {
	c := Curve{ShutoffPSI: 195, LossPSI: 2e-5, IntakePSI: 20, TopGPM: 2000, TopPSI: 300}
	c.GPM = 1000
	c.PSI = c.IntakePSI + c.ShutoffPSI - c.LossPSI*c.GPM*c.GPM
	a := draw.Rect{W: 400, H: 300}
	k := c.PSI / (c.GPM * c.GPM)
	at := c.at(a, c.GPM, c.PSI)
	for name, law := range map[string]func(float64) float64{
		"pump":  func(q float64) float64 { return c.IntakePSI + c.ShutoffPSI - c.LossPSI*q*q },
		"lines": func(q float64) float64 { return k * q * q },
	} {
		near := math.Inf(1)
		for _, p := range c.sample(a, law) {
			near = min(near, p.Sub(at).Len())
		}
		if near > a.W/60 {
			t.Errorf("the %s' curve passes the working point at %.1f", name, near)
		}
	}
}

// What lies between the two lines has a word: left over, or short, at the moment that is read off.
func TestMargin(t *testing.T) {
	m := Margin{Unit: "ft", From: 0, To: 3, Have: Line{At: []float64{0, 1, 2}, V: []float64{20, 12, 8}}, Need: Line{At: []float64{0, 1, 2}, V: []float64{5, 10, 14}}}
	for at, want := range map[float64]string{0: "15 ft left", 1: "2 ft left", 2: "6 ft short", -1: ""} {
		if got, _ := m.word(at); got != want {
			t.Errorf("at %v s: %q, want %q", at, got, want)
		}
	}
	if top := m.Top(); math.Abs(top-22) > 1e-9 {
		t.Errorf("the scale ends at %v, want a tenth above 20", top)
	}
}

// A covered line does not tell its value.
func TestCovered(t *testing.T) {
	l := Line{Name: "intake", Covered: true, At: []float64{0}, V: []float64{50}}
	if got := l.label(1); got != "intake ?" {
		t.Errorf("a covered line is named %q", got)
	}
}

// Lines of one unit, and a limit, can be compared: they share a scale that holds them all.
func TestShare(t *testing.T) {
	tr := Trace{Lines: []Line{{Unit: "psi", Low: -15, Top: 200}, {Unit: "rpm", Low: 0, Top: 2200}, {Unit: "psi", Low: -15, Top: 320}}, Limit: &Limit{Unit: "psi", Low: -20, Top: 400}}
	tr.Share()
	for i, want := range [][2]float64{{-20, 400}, {0, 2200}, {-20, 400}} {
		if l := tr.Lines[i]; l.Low != want[0] || l.Top != want[1] {
			t.Errorf("line %d: %v to %v, want %v", i, l.Low, l.Top, want)
		}
	}
	if tr.Limit.Low != -20 || tr.Limit.Top != 400 {
		t.Errorf("limit: %v to %v", tr.Limit.Low, tr.Limit.Top)
	}
}

// A name that ends in a figure is parted from its value.
func TestLabel(t *testing.T) {
	for name, want := range map[string]string{"line 1": "line 1: 60", "intake": "intake 60"} {
		l := Line{Name: name, Top: 100, At: []float64{1}, V: []float64{60}}
		if got := l.label(1); got != want {
			t.Errorf("%q at 60 says %q, want %q", name, got, want)
		}
	}
}
