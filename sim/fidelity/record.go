package fidelity

import "math"

// Test is the record of one comparison.
type Test struct {
	ID        string // unique, stable
	Area      Area
	Title     string
	Objective string // what it shows
	Initial   string // conditions at the beginning of the run
	Steps     string // what is done
	Compared  string // what is measured
	Source    Source
	Unit      string // of expected and measured; empty for a plain number
	Expected  float64
	Tolerance Tolerance
}

// Result is a test with what came of it.
type Result struct {
	Test             // Expected and Tolerance of a sweep are those of its worst point
	Measured float64 // NaN if there is none
	Pass     bool
	Problem  string // why nothing could be measured
	Curve    *Curve // nil: nothing to plot
}

// Width is the result's tolerance in its unit.
func (r *Result) Width() float64 { return r.Tolerance.At(r.Expected) }

// Point is one point of a curve. Expected is NaN where nothing is expected.
type Point struct{ X, Measured, Expected, Tolerance float64 }

// Curve is what is plotted for a test: the measured curve over the expected one and its tolerance.
type Curve struct {
	X, XUnit  string // abscissa
	Y, YUnit  string
	Bounds    bool   // what is expected are bounds, not a curve between them
	Reference string // what is expected is only shown for comparison: what it is
	Points    []Point
}

// Judged reports whether something is expected of the curve's points.
func (c *Curve) Judged() bool {
	_, ok := c.worst()
	return ok && !c.Bounds && c.Reference == ""
}

func (c *Curve) add(x, measured, expected float64, t Tolerance) {
	c.Points = append(c.Points, Point{x, measured, expected, t.At(expected)})
}

// trace adds a point of a time history that nothing is expected of by itself.
func (c *Curve) trace(x, measured float64) {
	c.Points = append(c.Points, Point{x, measured, math.NaN(), 0})
}

// worst is the point that lies farthest out in its own tolerance.
func (c *Curve) worst() (worst Point, ok bool) {
	most := -1.0
	for _, p := range c.Points {
		off := math.Abs(p.Measured-p.Expected) / max(p.Tolerance, 1e-300)
		if p.Expected != p.Expected {
			continue
		}
		if off != off || off > most {
			worst, ok = p, true
			most = off
			if off != off {
				return
			}
		}
	}
	return
}
