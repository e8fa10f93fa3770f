package pdf

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"steadyneedle/render/report"
)

// The file is a whole PDF, the same each time, and a long sheet goes on over pages.
func TestWrite(t *testing.T) {
	s := &report.Sheet{
		Title: "Reverse lay", Under: "Engine 41", Begun: "2026-03-01T12:00:00Z", Score: 74, Full: 100, Pass: 80, ClockS: 734, Length: 3600, Caution: report.Caution,
		Steps:  []report.Step{{ID: "a", Phase: "Supply", Text: "Bleed until solid water."}},
		Series: []report.Series{{Name: "Discharge 1", Unit: "psi", V: []float64{0, 50, math.NaN(), 134, 135}}, {Name: "Engine speed", Unit: "rpm", V: []float64{700, 900}}},
		Band:   &report.Band{Lo: 120, Hi: 150, From: 600, To: 3000},
		Sums:   &report.Sums{Unit: "psi", Lines: []report.Sum{{Title: "Flow", Unit: "gpm", Right: 266, Working: "29.7 × 1⅛² × √50"}}},
		Own:    &report.Own{Phases: map[string]string{"Supply": "clean"}},
		Facts:  [][2]string{{"Seed", "1"}},
	}
	one := written(t, s)
	if !strings.HasPrefix(one, "%PDF-") || !strings.HasSuffix(strings.TrimSpace(one), "%%EOF") || strings.Count(one, "/Type /Page\n") < 1 {
		t.Errorf("%d bytes, %d pages", len(one), strings.Count(one, "/Type /Page\n"))
	}
	if written(t, s) != one {
		t.Error("the same sheet is another file the second time")
	}
	for range 40 {
		s.Findings = append(s.Findings, report.Finding{Title: "Intake opened too fast", Severity: "error", Phase: "Supply", Place: "at the panel", Expected: "3 s", Measured: "1 s", Why: "The surge reaches the pump."})
	}
	if n := strings.Count(written(t, s), "/Type /Page\n"); n < 4 {
		t.Errorf("%d pages", n)
	}
}

func written(t *testing.T, s *report.Sheet) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, s); err != nil {
		t.Fatal(err)
	}
	return b.String()
}
