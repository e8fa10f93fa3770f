package scenarios

import (
	"errors"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/crew"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/judge"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/world"
)

func small(t *testing.T) *Shelf {
	t.Helper()
	return Open(os.DirFS("testdata/shelf"))
}

func mustDrill(t *testing.T, o Options) *drill.Drill {
	t.Helper()
	d, err := small(t).Drill("small", o)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// engine41.yaml says in full what rig.Default holds, so that the two never drift apart.
func TestEngine41IsTheDefault(t *testing.T) {
	def, err := Open(nil).Apparatus("engine41")
	if err != nil {
		t.Fatal(err)
	}
	want := rig.Default()
	want.Name = "engine41"
	if !reflect.DeepEqual(def, want) {
		t.Errorf("got  %+v\nwant %+v", def, want)
	}
}

// What only some apparatus have begins from its default, and a governor takes the relief valve's place.
func TestApparatusWithOtherParts(t *testing.T) {
	def, err := Open(nil).Apparatus("engine41-governor")
	if err != nil || def.Relief != nil || !reflect.DeepEqual(*def.Governor, rig.DefaultGovernor()) ||
		!reflect.DeepEqual(*def.IntakeRelief, rig.DefaultIntakeRelief()) || !reflect.DeepEqual(*def.ThermalRelief, rig.DefaultThermalRelief()) {
		t.Errorf("engine41-governor: %v, %+v", err, def)
	}
	def, err = Open(nil).Apparatus("engine43")
	if err != nil || def.Relief == nil || def.Governor != nil || !reflect.DeepEqual(*def.Pump.Transfer, rig.DefaultTransfer()) {
		t.Errorf("engine43: %v, %+v", err, def)
	}
}

// Every shipped apparatus runs the shipped drill, or says why not in one line.
func TestDrillOnOtherApparatus(t *testing.T) {
	d, err := Open(nil).Drill("reverse-lay", Options{Apparatus: "engine41-governor"})
	if err != nil {
		t.Fatal(err)
	}
	for i := range d.Rules {
		if strings.HasPrefix(d.Rules[i].ID, "relief-") {
			t.Errorf("rule %s on an apparatus without a relief valve", d.Rules[i].ID)
		}
	}
	for i := range d.Steps {
		switch s := &d.Steps[i]; s.ID {
		case "relief", "standby-relief":
			t.Errorf("step %s on an apparatus without a relief valve", s.ID)
		case "residual":
			if !reflect.DeepEqual(s.After, []string{"confirm", "recirculate"}) {
				t.Errorf("residual waits for %v, want what the relief step waited for in its place", s.After)
			}
		}
	}
	for _, name := range []string{"engine43", "brush41"} {
		if _, err := Open(nil).Drill("reverse-lay", Options{Apparatus: name}); err != nil {
			t.Error(err)
		}
	}
	_, err = small(t).Drill("small", Options{Apparatus: "engine41-governor"})
	if err == nil || strings.Contains(err.Error(), "\n") || !strings.Contains(err.Error(), "drill small does not go with apparatus engine41-governor") || !strings.Contains(err.Error(), "no hand throttle") {
		t.Errorf("small drill on the governor: %v", err)
	}
}

func TestApparatusSaysOnlyWhatDiffers(t *testing.T) {
	def, err := small(t).Apparatus("twin")
	if err != nil {
		t.Fatal(err)
	}
	want := rig.Default()
	if def.Engine.IdleRPM != 650 || def.Engine.GovernedRPM != want.Engine.GovernedRPM {
		t.Errorf("engine %+v", def.Engine)
	}
	if n := len(def.Discharges); n != 4 || def.Discharges[3].Valve != want.Discharges[0].Valve || def.Discharges[1].DrainCv != 2 {
		t.Errorf("discharges %+v: a new one begins as the default's last", def.Discharges)
	}
}

func TestDrillHoldsWhatItsFileSays(t *testing.T) {
	d := mustDrill(t, Options{Variant: "long"})
	if d.Title != "Small drill" || d.ParS != 600 || d.GraceS != 60 || d.Scale != (drill.Scale{Full: 100, Minor: 5, Error: 10, Unsafe: 50, Pass: 70, UnsafeFails: true}) || d.Plan.FireAt != "3 Kiln Lane" {
		t.Errorf("head: %+v", d)
	}
	if d.Setup.Ground.Discharge != 4 || d.Setup.Ground.FireToPlugFt != 500 || d.Setup.Ground.Line.Nozzle.TipIn != 1.125 || d.Setup.Ground.Hydrant.StaticPSI < 60 {
		t.Errorf("ground: %+v", d.Setup.Ground)
	}
	for c, v := range map[string]float64{"engine_run": 1, "transmission": 1, "throttle": 0.25, "line_leak": 12} {
		if d.Setup.Start[c] != v {
			t.Errorf("start: %s is %v, want %v", c, d.Setup.Start[c], v)
		}
	}
	if s := d.Steps[3]; len(d.Steps) != 4 || s.ID != "three" || !reflect.DeepEqual(s.After, []string{"two", "free"}) || s.Place != world.Panel || s.Done == nil {
		t.Errorf("steps: %+v", d.Steps)
	}
	ask := d.Cues[0]
	if ask.By != world.Crew || ask.Delay != crew.Radio || ask.Extra != 120 || ask.Again != 900 || len(ask.Do) != 2 || ask.Until == nil || ask.Once {
		t.Errorf("cue: %+v", ask)
	}
	controls := world.ControlsOf(&d.Setup)
	if controls[ask.Do[0].Control].Name != "nozzle1" || ask.Do[0].Value.Value(nil, nil) != 0.5 || ask.Do[1].Value != nil {
		t.Errorf("deeds: %+v", ask.Do)
	}
}

func TestRulesHoldWhatTheirFilesSay(t *testing.T) {
	d := mustDrill(t, Options{})
	rule := map[string]judge.Rule{}
	for _, r := range d.Rules {
		rule[r.ID] = r
	}
	if len(rule) != 11 {
		t.Errorf("%d rules, want 11", len(rule))
	}
	if r := rule["over"]; r.For != 300 || r.Severity != judge.Unsafe || !reflect.DeepEqual(r.Absorbs, []string{"fast-throttle", "unbelted-roll"}) {
		t.Errorf("over: %+v: its for_s is overridden, and what the drill lacks is not absorbed", r)
	}
	if r := rule["over-again"]; r.For != 120 || r.Severity != judge.Error || r.When.Text != "discharge_gauge > limit + 50" {
		t.Errorf("over-again: %+v", r)
	}
	controls := world.ControlsOf(&d.Setup)
	if r := rule["r-guard"]; len(r.On) != 2 || controls[r.On[1]].Name != "intake" || r.When == nil || r.Need == nil || r.Unless == nil {
		t.Errorf("r-guard: %+v", r)
	}
	if r := rule["r-outcome"]; r.Test == nil || r.Test.Name != "relief-holds" || r.Test.Limit["rise_psi"] != 25 {
		t.Errorf("r-outcome: %+v", r)
	}
	if r := rule["r-band"]; len(r.Grace) != 1 || r.Grace[0].When.Slots == 0 || r.Kind != judge.Band {
		t.Errorf("r-band: %+v", r)
	}
}

// The table is: the world's signals, value, the drill's values.
func TestExpressionsReadTheTable(t *testing.T) {
	d := mustDrill(t, Options{Variant: "short"})
	signals := world.SignalsOf(&d.Setup)
	table := make([]float64, len(signals)+1+len(d.Values))
	for i, s := range signals {
		if s.Name == "sections_laid" {
			table[i] = 10
		}
	}
	for i, v := range d.Values {
		table[len(signals)+1+i] = v.Is.Value(table, make([]float64, v.Is.Slots))
	}
	if got := table[len(signals)+1]; got != 150 {
		t.Errorf("limit is %v, want the variant's 150", got)
	}
	if got, want := table[len(signals)+2], 50+2*2.66*2.66*5; got < want-1e-9 || got > want+1e-9 {
		t.Errorf("calculated is %v, want %v", got, want)
	}
	for _, r := range d.Rules {
		if r.ID != "r-guard" {
			continue
		}
		table[len(signals)] = 0.5
		if !r.When.True(table, nil) {
			t.Error("value is not the cell after the signals")
		}
		table[len(signals)] = 0.05
		if r.When.True(table, nil) {
			t.Error("the guard holds for a value of 0.05")
		}
	}
}

func TestDrawsFollowTheSeed(t *testing.T) {
	seen := map[string]int{}
	for seed := uint64(1); seed <= 200; seed++ {
		d := mustDrill(t, Options{Seed: seed})
		again := mustDrill(t, Options{Seed: seed})
		if d.Variant != again.Variant || d.Setup.Ground.Hydrant != again.Setup.Ground.Hydrant || !reflect.DeepEqual(d.Setup.Start, again.Setup.Start) || d.Setup.Seed != seed {
			t.Fatalf("seed %d draws differently the second time", seed)
		}
		seen[d.Variant]++
		if d.Setup.Ground.Hydrant.StaticPSI == 60 {
			seen["60 psi"]++
		}
		if v, open := d.Setup.Start["compartments"]; open && v == 0 {
			seen["open"]++
		}
		if _, leak := d.Setup.Start["fluid_leak"]; leak {
			t.Fatal("a fault with chance 0 was planted")
		}
		want := 0.25
		if d.Variant == "short" {
			want = 0.5
		}
		if d.Setup.Start["throttle"] != want || d.Setup.Start["line_leak"] != 12 {
			t.Fatalf("start %v", d.Setup.Start)
		}
	}
	for what, share := range map[string]float64{"long": 0.5, "60 psi": 1.0 / 3, "open": 0.5} {
		if n := float64(seen[what]) / 200; n < share-0.13 || n > share+0.13 {
			t.Errorf("%s: drawn in a share of %.2f, want about %.2f", what, n, share)
		}
	}
}

func TestUnknownNamesAreWrongUse(t *testing.T) {
	s := small(t)
	_, drillErr := s.Drill("smal", Options{})
	_, variantErr := s.Drill("small", Options{Variant: "lng"})
	_, rigErr := s.Drill("small", Options{Apparatus: "twn"})
	_, scriptErr := s.Script(mustDrill(t, Options{}), "god")
	for want, err := range map[string]error{"small": drillErr, "long": variantErr, "twin": rigErr, "good": scriptErr} {
		if !errors.Is(err, ErrUnknown) || !strings.Contains(err.Error(), `did you mean "`+want+`"?`) {
			t.Errorf("%v: want an unknown name, and %s suggested", err, want)
		}
	}
}

func TestScript(t *testing.T) {
	s := small(t)
	d := mustDrill(t, Options{})
	p, err := s.Script(d, "good")
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Steps) != 4 || p.Steps[0].ID != "free" || p.Steps[2].ID != "two" || !reflect.DeepEqual(p.Steps[2].After, []string{"one"}) || p.Slots == 0 {
		t.Errorf("script: %+v", p)
	}
	m := p.Steps[2].Moves
	if m[0].Verb != operator.Go || m[0].Place != world.Panel || m[1].OverS != 10 || m[1].To.Value(nil, nil) != 0.6 || m[2].Verb != operator.Turn || m[2].Until == nil ||
		m[3].Verb != operator.Bring || m[3].Within != 2 || m[4].GiveUpS != 200 || m[5].WaitS != 3 || m[6].Verb != operator.Press || m[7].OverS != 0.5 || m[7].Line == 0 {
		t.Errorf("moves: %+v", m)
	}
	if last := p.Steps[3].Moves; last[1].To.Value(nil, nil) != 0 || last[2].Verb != operator.Tell || last[2].To != nil {
		t.Errorf("last moves: %+v", last)
	}
}

func TestEditsOfAScript(t *testing.T) {
	s := small(t)
	o, err := s.Conditions("small", "odd", Options{})
	if err != nil || o.Seed != 7 || o.Variant != "short" || o.Start["fluid_leak"] != 1 {
		t.Fatalf("conditions %+v, %v", o, err)
	}
	if kept, _ := s.Conditions("small", "odd", Options{Seed: 3}); kept.Seed != 3 {
		t.Error("a seed that was asked for gave way to the operator's")
	}
	d := mustDrill(t, o)
	if d.Setup.Start["fluid_leak"] != 1 {
		t.Error("the operator's fault was not planted")
	}
	p, err := s.Script(d, "odd")
	if err != nil {
		t.Fatal(err)
	}
	var ids []string
	after := map[string][]string{}
	for _, st := range p.Steps {
		ids = append(ids, st.ID)
		after[st.ID] = st.After
	}
	if !reflect.DeepEqual(ids, []string{"two", "one", "three"}) || len(after["two"]) != 0 || !reflect.DeepEqual(after["one"], []string{"two"}) {
		t.Errorf("steps %v after %v: two is shifted before one, which now waits for it; free is skipped", ids, after)
	}
	if !reflect.DeepEqual(after["three"], []string{"one"}) {
		t.Errorf("three waits for %v, want what the shifted step had waited for, and not the skipped one", after["three"])
	}
	m := p.Steps[2].Moves
	if m[0].WaitS != 1 || m[len(m)-1].WaitS != 2 || p.Breaks != "r-order" {
		t.Errorf("moves before and after: %+v", m)
	}
}

// What is kept in a recording must be enough to make the same drill and script again.
func TestTextsAreEnoughToPlayAgain(t *testing.T) {
	s := small(t)
	d := mustDrill(t, Options{Seed: 9, Variant: "short"})
	texts, err := s.TextsOf(d, "odd")
	if err != nil {
		t.Fatal(err)
	}
	var paths []string
	for _, x := range texts {
		paths = append(paths, x.Path)
		if len(x.Sum) != 64 {
			t.Errorf("%s: sum %q", x.Path, x.Sum)
		}
	}
	want := []string{"apparatus/twin.yaml", "drills/small.yaml", "operators/small/good.yaml", "operators/small/odd.yaml", "rules/common.yaml", "rules/extra.yaml"}
	if !reflect.DeepEqual(paths, want) {
		t.Errorf("texts %v, want %v", paths, want)
	}
	alone := FromTexts(texts)
	again, err := alone.Drill("small", Options{Seed: 9, Variant: "short"})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(again.Setup, d.Setup) || len(again.Rules) != len(d.Rules) {
		t.Error("another drill came out")
	}
	if _, err := alone.Script(again, "odd"); err != nil {
		t.Error(err)
	}
}

func TestUsersFileLiesOverTheShipped(t *testing.T) {
	mine := textFS{"apparatus/engine41.yaml": []byte("name: engine41\ntitle: Mine\n")}
	def, err := Open(mine).Apparatus("engine41")
	if err != nil || def.Title != "Mine" {
		t.Errorf("%q, %v", def.Title, err)
	}
	list, err := Open(mine).List()
	if err != nil || !slices.Contains(list.Apparatus, Item{"engine41", "Mine"}) || len(list.Drills) == 0 || len(list.Operators) < 20 || list.Demonstrations == nil {
		t.Errorf("%+v, %v", list, err)
	}
	broken := textFS{"drills/x.yaml": []byte("name: [")}
	list, err = Open(broken).List()
	var faults reader.Faults
	if !errors.As(err, &faults) || len(list.Drills) == 0 {
		t.Errorf("a broken file must be told of and must not hide the others: %v, %+v", err, list.Drills)
	}
}
