package play

import (
	"fmt"
	"math"

	"steadyneedle/render/view"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/judge"
	"steadyneedle/sim/world"
)

var severities = [...]string{judge.Minor: "minor", judge.Error: "error", judge.Unsafe: "unsafe"}

// Sheet is the debrief as things stand.
func (p *Play) Sheet() *view.Sheet {
	s := p.a.Sheet()
	v := &view.Sheet{
		Title: p.info.Title, Under: p.info.Under, Passed: s.Passed && !p.early, Early: p.early, Score: s.Score, Full: s.Full,
		Pass: p.a.Drill.Scale.Pass, ClockS: p.before, ParS: p.a.Drill.ParS, Length: p.a.Now(), Caution: view.Caution,
	}
	for i := range s.Findings {
		v.Findings = append(v.Findings, finding(&s.Findings[i], s.Consequences))
	}
	line := p.a.Drill.Setup.Ground.Discharge
	v.Series = []view.Series{
		series(&p.a.Series, fmt.Sprintf("line%d_gauge", line), fmt.Sprintf("Discharge %d", line), "psi"),
		series(&p.a.Series, "intake_gauge", "Intake", "psi"),
		series(&p.a.Series, "tach", "Engine speed", "rpm"),
	}
	v.Band = p.band(line)
	v.Facts = [][2]string{
		{"Drill", p.a.Drill.Name + " " + p.a.Drill.Variant}, {"Apparatus", p.a.Drill.Apparatus},
		{"Seed", fmt.Sprint(p.a.Drill.Setup.Seed)}, {"Final state", fmt.Sprintf("%016x", p.a.Hash())},
		{"Procedure", p.a.Drill.Procedure},
	}
	return v
}

func finding(f *judge.Finding, followers []judge.Consequence) view.Finding {
	v := view.Finding{
		Rule: f.Rule, At: f.From, Severity: severities[f.Severity], Place: placeWords(f.Place), From: f.Place,
		Title: f.Title, Expected: f.Expected, Measured: f.Measured, Why: f.Why,
	}
	for i := range followers {
		if followers[i].Of == f.Rule {
			v.Follows = append(v.Follows, followers[i].Title)
		}
	}
	return v
}

func placeWords(p world.Place) string {
	switch p {
	case world.Cab:
		return "in the cab"
	case world.Panel:
		return "at the panel"
	case world.Wheels:
		return "at the left rear wheel"
	case world.RearStep:
		return "at the rear step"
	case world.Hydrant:
		return "at the hydrant"
	case world.TankTop:
		return "on the tank top"
	case world.Round:
		return "walking round the scene"
	}
	return "on the way"
}

// series samples a channel once a second. A gauge that is never seen leaves gaps.
func series(s *attempt.Series, name, shown, unit string) view.Series {
	out := view.Series{Name: shown, Unit: unit}
	v := channel(s, name)
	for i, at := range s.At {
		n := int(at / world.TicksPerSecond)
		if v == nil || n < len(out.V) {
			continue
		}
		for len(out.V) < n {
			out.V = append(out.V, math.NaN())
		}
		out.V = append(out.V, v[i])
	}
	return out
}

func channel(s *attempt.Series, name string) []float64 {
	for i := range s.Channels {
		if s.Channels[i].Name == name {
			return s.Channels[i].V
		}
	}
	return nil
}

// band is where the line's pressure belonged while water flowed in it.
func (p *Play) band(line int) *view.Band {
	flow := channel(&p.a.Series, fmt.Sprintf("line%d_gpm", line))
	want, tol := channel(&p.a.Series, "calculated"), channel(&p.a.Series, "tolerance")
	if flow == nil || want == nil || tol == nil {
		return nil
	}
	var b *view.Band
	for i, at := range p.a.Series.At {
		if flow[i] < 20 {
			continue
		}
		if b == nil {
			b = &view.Band{From: at}
		}
		b.To, b.Lo, b.Hi = at, want[i]-tol[i], want[i]+tol[i]
	}
	return b
}
