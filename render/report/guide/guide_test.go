package guide

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"html/template"
	"math"
	"regexp"
	"strings"
	"testing"

	"steadyneedle/render/report"
	"steadyneedle/sim/fidelity"
)

// results are one good test, one that failed with a sweep, one that measured nothing.
func results() []fidelity.Result {
	record := fidelity.Test{ID: "one", Area: fidelity.Steady, Title: "First <test>", Objective: "Why.", Initial: "At rest.", Steps: "Wait.",
		Compared: "pressure", Unit: "psi", Expected: 50, Tolerance: fidelity.Tolerance{Tier: fidelity.Formula, Width: 1},
		Source: fidelity.Source{Mark: fidelity.Practice, Text: "a habit"}}
	good := fidelity.Result{Test: record, Measured: 50.4, Pass: true}
	swept := fidelity.Result{Test: record, Measured: 53}
	swept.ID, swept.Area = "two", fidelity.Transients
	swept.Curve = &fidelity.Curve{X: "flow", XUnit: "gpm", Y: "net & gross", YUnit: "psi", Points: []fidelity.Point{
		{X: 0, Measured: 50, Expected: 50, Tolerance: 1}, {X: 100, Measured: 53, Expected: 50, Tolerance: 1}}}
	none := fidelity.Result{Test: record, Measured: math.NaN(), Problem: "priming: not within 60 s"}
	none.ID = "three"
	return []fidelity.Result{good, swept, none}
}

func TestGuide(t *testing.T) {
	var out bytes.Buffer
	if err := HTML(&out, &Guide{Build: "abc", Physics: 7, Made: "June 1, 2026", Results: results()}); err != nil {
		t.Fatal(err)
	}
	page := out.String()
	for _, want := range []string{
		template.HTMLEscapeString(report.Caution), "Do not reproduce them", "build abc; model number 7; made June 1, 2026", "1 of 3 tests passed, 2 failed",
		`id="one"`, "First &lt;test&gt;", "At rest.", "50.0 ± 1.0 psi (engineering formula)", "50.4 psi", "a habit (common practice, no published source)",
		`href="#two"`, "at the worst point", "net &amp; gross (psi), measured", "flow (gpm)", "priming: not within 60 s",
		`id="devices"`, fidelity.Devices()[0].Shown, `id="sources"`, `id="assumptions"`, fidelity.Assumptions()[0].What, `id="unchecked"`, "No real apparatus", `id="weak"`,
	} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q", want)
		}
	}
	if found := regexp.MustCompile(`(?i)(src|href)="(https?:|//)|@import|url\(`).FindString(page); found != "" {
		t.Errorf("the page needs something else: %q", found)
	}
	if strings.Contains(page, "NaN") || strings.Contains(page, "Inf") {
		t.Error("a number that is none is written out")
	}
}

// Every picture is well-formed, and stays within its frame.
func TestGuidePlots(t *testing.T) {
	trace := &fidelity.Curve{X: "time", Y: "rise", Bounds: true}
	for k := range 100 {
		trace.Points = append(trace.Points, fidelity.Point{X: float64(k), Measured: math.Sin(float64(k)), Expected: 0, Tolerance: 2})
	}
	compared := &fidelity.Curve{X: "time", Y: "rise", Reference: "another method", Points: trace.Points}
	bare := &fidelity.Curve{X: "time", Y: "rise", Points: []fidelity.Point{{X: 0, Measured: 1, Expected: math.NaN()}, {X: 1, Measured: 1, Expected: math.NaN()}}}
	for name, c := range map[string]*fidelity.Curve{"bounds": trace, "reference": compared, "bare": bare, "sweep": results()[1].Curve} {
		svg := string(curve(&fidelity.Result{Curve: c}))
		if err := xml.Unmarshal([]byte(svg), new(any)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		for _, m := range regexp.MustCompile(`[ML]([-0-9.]+) ([-0-9.]+)`).FindAllStringSubmatch(svg, -1) {
			var x, y float64
			fmt.Sscan(m[1], &x)
			fmt.Sscan(m[2], &y)
			if x < 0 || x > wide || y < 0 || y > high {
				t.Errorf("%s: %s lies outside", name, m[0])
			}
		}
		for word, want := range map[string]bool{">allowed<": c.Bounds, ">another method<": c.Reference != "", ">expected<": name == "sweep"} {
			if strings.Contains(svg, word) != want {
				t.Errorf("%s: %s is there: %v", name, word, !want)
			}
		}
	}
	for _, r := range results() {
		if bar := string(toleranceBar(&r)); strings.Contains(bar, "#a3210f") == r.Pass && !math.IsNaN(r.Measured) {
			t.Errorf("%s: %s", r.ID, bar)
		}
	}
}

func TestAxis(t *testing.T) {
	for _, c := range []struct{ lo, hi, step float64 }{{0, 30, 5}, {0, 1, 0.2}, {99, 101, 0.5}, {-3, 4, 1}, {0, 1550, 200}} {
		a := newAxis(c.lo, c.hi, 0, 100)
		if math.Abs(a.step-c.step) > 1e-9 || a.lo > c.lo || a.hi < c.hi || len(a.marks()) < 4 || len(a.marks()) > 10 {
			t.Errorf("%v to %v: %+v, %d marks", c.lo, c.hi, a, len(a.marks()))
		}
	}
}
