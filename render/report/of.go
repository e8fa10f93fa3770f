package report

import (
	"fmt"

	"steadyneedle/sim/attempt"
	"steadyneedle/sim/judge"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

var haltWords = [...]string{attempt.Safety: "Stopped for safety", attempt.CalledOff: "Void: called away", attempt.AtUnsafe: "Ended at an unsafe act"}

var severities = [...]string{judge.Minor: "minor", judge.Error: "error", judge.Unsafe: "unsafe"}

// Of draws up the sheet of an attempt as things stand. under says apparatus and mode in a few words. An
// attempt that was ended before its drill was has no verdict.
func Of(a *attempt.Attempt, under string) *Sheet {
	s := a.Sheet()
	early, ended := a.Early(), ""
	if halt := a.Halted(); halt != attempt.NotHalted {
		ended = haltWords[halt]
	} else if early {
		ended = "Ended early"
	}
	h := a.Header()
	v := &Sheet{
		Format: SheetFormat, Ended: ended, Begun: h.Begun, Drill: h.Drill, Variant: h.Variant, Apparatus: h.Apparatus, Operator: h.Operator,
		TakenOver: h.From != "",
		Mode:      h.Mode, Seed: h.Seed, Physics: h.Physics, Build: h.Build, Hash: fmt.Sprintf("%016x", a.Hash()), Procedure: a.Drill.Procedure,
		Title: a.Drill.Title, Under: under, Passed: s.Passed && !early, Early: early, Score: s.Score, Full: s.Full,
		Pass: a.Drill.Scale.Pass, ParS: a.Drill.ParS, Length: a.Now(), Caution: Caution,
	}
	if cell, ok := a.Scene.Board.Cell("clock"); ok {
		v.ClockS = a.Scene.Board.V[cell]
	}
	v.Steps = steps(a, s, early)
	for i := range s.Findings {
		f := FindingOf(&s.Findings[i])
		f.Phase = phaseOf(a, v.Steps, &s.Findings[i])
		for k := range s.Consequences {
			if s.Consequences[k].Of == f.Rule {
				f.Follows = append(f.Follows, s.Consequences[k].Title)
			}
		}
		v.Findings = append(v.Findings, *f)
	}
	v.Help, v.Hints = hints(a)
	for _, m := range a.Marks() {
		v.Marks = append(v.Marks, Remark{m.At, m.Text})
	}
	v.OnUnsafe = "An unsafe act " + a.UnsafeTerms().Words()
	for _, d := range a.Decisions() {
		v.Decisions = append(v.Decisions, Decision{d.At, d.Rule, d.Title, d.Words()})
	}
	v.Ruling = RulingOf(a)
	v.Series = allSeries(a)
	v.Band = band(a, a.Drill.Setup.Ground.Discharge)
	v.Facts = facts(v)
	return v
}

// Again gives a sheet that was kept what is drawn from its attempt.
func Again(kept *Sheet, a *attempt.Attempt) *Sheet {
	v := *kept
	v.Series, v.Band, v.Facts = allSeries(a), band(a, a.Drill.Setup.Ground.Discharge), facts(kept)
	return &v
}

func facts(v *Sheet) [][2]string {
	list := [][2]string{
		{"Drill", v.Drill + " " + v.Variant}, {"Apparatus", v.Apparatus},
		{"Seed", fmt.Sprint(v.Seed)}, {"Final state", v.Hash}, {"Procedure", v.Procedure},
	}
	if v.Begun != "" {
		list = append(list, [2]string{"Begun", v.Begun})
	}
	if v.OnUnsafe != "" {
		list = append(list, [2]string{"Terms", v.OnUnsafe})
	}
	for _, d := range v.Decisions {
		list = append(list, [2]string{"Decided at " + unit.Clock(d.At.Seconds()), d.Text()})
	}
	for _, m := range v.Marks {
		list = append(list, [2]string{"Mark at " + unit.Clock(m.At.Seconds()), m.Text})
	}
	return list
}

// FindingOf puts one of the judge's findings on a sheet; its phase and what came of it are not told.
func FindingOf(f *judge.Finding) *Finding {
	return &Finding{
		Rule: f.Rule, At: f.From, Severity: severities[f.Severity], Place: PlaceWords(f.Place), From: f.Place,
		Title: f.Title, Expected: f.Expected, Measured: f.Measured, Why: f.Why,
	}
}

// PlaceWords says where somebody stands, as part of a sentence.
func PlaceWords(p world.Place) string {
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

func channel(s *attempt.Series, name string) []float64 {
	for i := range s.Channels {
		if s.Channels[i].Name == name {
			return s.Channels[i].V
		}
	}
	return nil
}

// band is where the line's pressure belonged while water flowed in it.
func band(a *attempt.Attempt, line int) *Band {
	flow := channel(&a.Series, fmt.Sprintf("line%d_gpm", line))
	want, tol := channel(&a.Series, "calculated"), channel(&a.Series, "tolerance")
	if flow == nil || want == nil || tol == nil {
		return nil
	}
	var b *Band
	for i, at := range a.Series.At {
		if flow[i] < 20 {
			continue
		}
		if b == nil {
			b = &Band{From: at}
		}
		b.To, b.Lo, b.Hi = at, want[i]-tol[i], want[i]+tol[i]
	}
	return b
}
