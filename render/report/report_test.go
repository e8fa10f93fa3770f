package report

import (
	"bytes"
	"encoding/xml"
	"io"
	"math"
	"strings"
	"testing"

	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/world"
)

func sample() *Sheet {
	return &Sheet{
		Title: "Reverse lay", Under: "Engine 41", Score: 74, Full: 100, Pass: 80, ClockS: 734, Length: 3600, Caution: Caution,
		Findings: []Finding{{Rule: "intake-fast", At: 1200, Severity: "error", Place: "at the panel", Title: "Intake <opened> too fast",
			Expected: "3 s or more", Measured: "1.2 s", Why: "The surge reaches the pump.", Follows: []string{"Surge"}}},
		Series: []Series{{Name: "Discharge 1", Unit: "psi", V: []float64{0, 50, math.NaN(), 134, 135}}, {Name: "Engine speed", Unit: "rpm", V: []float64{700, 900, 1400}}},
		Band:   &Band{Lo: 120, Hi: 150, From: 600, To: 3000},
		Facts:  [][2]string{{"Seed", "1"}},
	}
}

// The page stands alone: no address is fetched, nothing of the findings is markup, and the drawing in it
// is well formed.
func TestHTML(t *testing.T) {
	var b bytes.Buffer
	if err := HTML(&b, sample()); err != nil {
		t.Fatal(err)
	}
	page := b.String()
	for _, want := range []string{"Training aid only", "Not passed: 74 of 100", "clock 12:14", "Intake &lt;opened&gt; too fast", "00:20 from the start", "Came of it", "tolerance of the line"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	for _, bad := range []string{"http://", "https://", "src=", "NaN", "<opened>"} {
		if strings.Contains(page, bad) {
			t.Errorf("the page holds %q", bad)
		}
	}
	svg := page[strings.Index(page, "<svg") : strings.Index(page, "</svg>")+6]
	d := xml.NewDecoder(strings.NewReader(svg))
	for {
		if _, err := d.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatalf("the drawing: %v", err)
		}
	}
}

// A sheet is drawn up from a real attempt, ended early, at any moment.
func TestOf(t *testing.T) {
	d, err := scenarios.Open(nil).Drill("reverse-lay", scenarios.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	a, err := attempt.New(d, attempt.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for a.Now() < 5*world.TicksPerSecond {
		a.Tick()
	}
	a.Close()
	s := Of(a, "Engine 41")
	if s.Passed || !s.Early || s.Length != 5*world.TicksPerSecond || len(s.Steps) < 50 || len(s.Missed()) > 0 || len(s.Series) < 15 || len(s.Series[0].V) < 5 {
		t.Errorf("sheet %+v", s)
	}
	if err := HTML(io.Discard, s); err != nil {
		t.Error(err)
	}
}
