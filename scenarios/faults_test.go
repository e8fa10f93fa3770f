package scenarios

import (
	"errors"
	"os"
	"strings"
	"testing"

	"steadyneedle/scenarios/reader"
)

// changed is a test file with one piece replaced, as check sees it.
func changed(t *testing.T, file, from, to string) error {
	t.Helper()
	text, err := os.ReadFile("testdata/shelf/" + file)
	if err != nil {
		t.Fatal(err)
	}
	if from != "" && strings.Count(string(text), from) != 1 {
		t.Fatalf("%s: %q stands there %d times", file, from, strings.Count(string(text), from))
	}
	_, err = small(t).Check("f.yaml", []byte(strings.Replace(string(text), from, to, 1)))
	return err
}

// only expects one fault, at the place where the marker ^ stood in to, that says so.
func only(t *testing.T, file, from, to, say string) {
	t.Helper()
	before, after, marked := strings.Cut(to, "^")
	text, _ := os.ReadFile("testdata/shelf/" + file)
	err := changed(t, file, from, before+after)
	var faults reader.Faults
	if !errors.As(err, &faults) {
		t.Errorf("%s with %q: %v, want a fault", file, to, err)
		return
	}
	if len(faults) != 1 || !strings.Contains(faults[0].Msg, say) {
		t.Errorf("%s with %q:\n%v\nwant one fault with: %s", file, to, faults, say)
		return
	}
	if !marked {
		return
	}
	head := string(text[:strings.Index(string(text), from)]) + before
	line := strings.Count(head, "\n") + 1
	col := len([]rune(head[strings.LastIndex(head, "\n")+1:])) + 1
	if faults[0].Line != line || faults[0].Col != col || faults[0].File != "f.yaml" {
		t.Errorf("%s with %q: %v, want it at %d:%d", file, to, faults[0], line, col)
	}
}

func TestTheTestFilesAreSound(t *testing.T) {
	for _, f := range []string{"drills/small.yaml", "apparatus/twin.yaml", "operators/small/good.yaml", "operators/small/odd.yaml", "rules/extra.yaml"} {
		if err := changed(t, f, "", ""); err != nil {
			t.Error(err)
		}
	}
}

func TestFaultsOfADrill(t *testing.T) {
	only(t, "drills/small.yaml", "rules: [fast-throttle]}", "rules: [fast-throttle, ^fast-throtle]}", `unknown rule "fast-throtle", did you mean "fast-throttle"?`)
	f := "drills/small.yaml"
	for _, c := range []struct{ from, to, say string }{
		{"name: small", "name: ^other", `expected "f"`},
		{"apparatus: twin", "apparatus: ^twn", `did you mean "twin"?`},
		{"pass: 70", "pass: 170", "at most that"},
		{"ends: say_complete > 0\nlike", "ends: say_complete > 0 and ^sai > 0\nlike", `unknown name "sai"`},
		{"  discharge: 4", "  discharge: ^5", "expected 1 to 4"},
		{"  discharge: 4", "  discharge: 4\n  people: [{id: helper, name: A firefighter, stands: ^in the bigt of the line}]", `did you mean "in the bight of the line"?`},
		{"  discharge: 4", "  discharge: 4\n  people: [{id: ^Helper, name: A firefighter}]", "small letters"},
		{"  discharge: 4", "  discharge: 4\n  people: [{id: helper, name: A firefighter}, ^{id: helper, name: A neighbor}]", "stands for something else already"},
		{"ends: say_complete > 0\nlike", "on_unsafe: ^later\nends: say_complete > 0\nlike", "expected go-on, stop, ask"},
		{"nozzle: {tip_in: 1.125, rated_psi: 50}", "nozzle: ^{rated_psi: 50}", "either tip_in"},
		{"    nozzle: {tip_in: 1.125, rated_psi: 50}\n", "", "expected a nozzle or branches"},
		{"transmission: drive", "transmission: ^drve", `expected "neutral", "drive"`},
		{"throttle: 0.25", "throttle: ^1.5", "expected 0 to 1"},
		{"throttle: 0.25", "^trottle: 0.5", `did you mean "throttle"?`},
		{"- {static_psi: 60, residual_psi: 40,", "- ^{static_psi: 60, residual_psi: 61,", "expected less"},
		{"- {static_psi: 60, residual_psi: 40, flow_gpm: 500}", "- ^{static_psi: 60, residual_psi: 59, flow_gpm: 6000}", "expected 56 at most"},
		{"title: Short lay", "title: Short lay\n    hydrants: [^{static_psi: 60, residual_psi: 40, flow_gpm: 500}]", "either there or in every variant"},
		{"values: {limit: 150}", "values: {limt: ^150}", `did you mean "limit"?`},
		{"- {name: limit, unit: psi, doc: highest, is: 200}", "- {name: ^throttle, is: 200}\n  - {name: limit, is: 200}", "is taken"},
		{"- {name: limit, unit: psi, doc: highest, is: 200}", "- {name: ^max, is: 200}\n  - {name: limit, is: 200}", "is taken"},
		{"- {name: limit, unit: psi, doc: highest, is: 200}", "- {name: ^Limit 1, is: 200}\n  - {name: limit, is: 200}", "small letters"},
		{"is: discharge_psi * 2", "is: ^discharge_psi > 2", "expected a number"},
		{"after: one,", "after: ^three,", "wait for each other: two after three after two"},
		{"after: one,", "after: ^free,", "comes later in the file"},
		{"after: one,", "after: ^on,", `unknown step "on"`},
		{"id: three,", "id: ^one,", "stands twice"},
		{"id: three,", "only_with: ^relieff, id: three,", `did you mean "relief"?`},
		{"after: one,", "after: one, only_with: ^governer,", `did you mean "governor"?`},
		{"throttle: 0.25", "^governor_mode: 1", "this apparatus has no pressure governor"},
		{"on: [throttle, intake], when", "on: [^transfer], when", "this apparatus has no transfer valve"},
		{"is: discharge_psi * 2", "is: ^governor_raise * 2", "this apparatus has no pressure governor"},
		{"place: panel,", "place: ^pannel,", `did you mean "panel"?`},
		{"done: helmet == 1}\n  - {id: three", "done: ^helmet}\n  - {id: three", "expected a condition"},
		{"    by: crew", "    by: ^candidate", "expected crew, officer"},
		{"delay: radio", "delay: ^slow", "expected at-once, radio or task"},
		{"{say: crew_low}]", "{say: ^officer_hurry}]", "is for the officer"},
		{"{say: crew_low}]", "{say: ^nozzle1}]", "is not said or shown"},
		{"{say: crew_low}]", "^{say: crew_low, set: nozzle1}]", "either set or say"},
		{"{set: nozzle1, value: 0.5}", "{set: nozzle1, value: ^2}", "expected 0 to 1"},
		{"say: officer_pressure, value: limit - 10", "say: ^officer_pressure", "needs a number"},
		{"- {use: fast-throttle}", "- {use: ^fast-trottle}", `did you mean "fast-throttle"?`},
		{"- {use: fast-throttle}", "- {use: fast-throttle, ^need: time > 1}", "kind rate does not use it"},
		{"- {use: fast-throttle}", "- {use: fast-throttle, kind: ^rat}", `did you mean "rate"?`},
		{"on: [throttle, intake], when", "on: [throttle, ^nozzle1], when", "not the candidate's"},
		{"when: throttle > 0.5, first: parking_brake == 1}", "^when: throttle > 0.5}", "lacks a key, expected first"},
		{"when: throttle > 0.5, first", "when: ^value > 0.5, first", "under judgment"},
		{"on: say_static", "on: ^say_complete", "no number goes with"},
		{"on: say_static", "on: [say_static, ^say_residual]", "judges one control"},
		{`expected: "{calculated} or {limit}"`, `expected: "{calculated} or {^lmit}"`, `did you mean "limit"?`},
		{"absorbs: r-order", "absorbs: ^r-oder", `did you mean "r-order"?`},
		{"test: {name: relief-holds, rise_psi: 25}", "test: {name: ^relief-hold}", `did you mean "relief-holds"?`},
		{"test: {name: relief-holds, rise_psi: 25}", "test: {name: relief-holds, ^rise: 25}", "has no number"},
		{"test: {name: relief-holds, rise_psi: 25}", "test: {name: relief-holds, rise_psi: ^x}", "expected a number"},
		{"need: say_tank_full > 0}", "need: say_tank_full > ^> 0}", "unexpected"},
	} {
		if c.say == `expected "f"` {
			continue // a file on its own belongs where its name says
		}
		to := c.to
		if c.say == "lacks a key, expected first" {
			to = strings.Replace(to, "^", "", 1)
		}
		only(t, f, c.from, to, c.say)
	}
}

func TestFaultsOfAnOperator(t *testing.T) {
	good, odd := "operators/small/good.yaml", "operators/small/odd.yaml"
	for _, c := range []struct{ file, from, to, say string }{
		{good, "drill: small", "drill: ^smal", `did you mean "small"?`},
		{good, "step: two", "step: ^tow", `did you mean "two"?`},
		{good, "{step: one, moves: []}", "{step: ^free, moves: []}", "stands twice"},
		{good, "{go: panel}", "{go: ^pannel}", `did you mean "panel"?`},
		{good, "{go: panel}", "{go: panel, ^say: say_complete}", "both go and say"},
		{good, "{go: panel}", "^{to: 5}", "names no verb"},
		{good, "{go: panel}", "{go: panel, ^to: 5}", "does not use to"},
		{good, "{set: throttle, to: 0.6, over_s: 10}", "^{set: throttle, over_s: 10}", "lacks to"},
		{good, "{set: throttle, to: 0.6, over_s: 10}", "{set: throttle, to: ^6, over_s: 10}", "expected 0 to 1"},
		{good, "{set: throttle, to: 0.6, over_s: 10}", "{set: ^nozzle1, to: 0.6}", "not in anybody's reach"},
		{good, "{set: throttle, to: 0.6, over_s: 10}", "{press: ^governor_raise, over_s: 1}", "this apparatus has no pressure governor"},
		{good, "{go: panel}", "{go: panel, only_with: ^throtle}", `did you mean "throttle"?`},
		{good, "to: neutral", "to: ^neutrl", "neutral"},
		{good, "until: amber == 1", "until: ^relief_lift > 0", "truth that no person sees"},
		{good, "to: calculated", "to: ^secret", "cannot be known by a person: discharge_psi is truth"},
		{good, "{press: horn, over_s: 0.5}", "^{press: horn}", "has no end"},
		{good, "{press: horn, over_s: 0.5}", "{press: ^throttle, over_s: 0.5}", "push button"},
		{good, "{say: say_complete}", "{say: ^crew_low}", "is for the crew"},
		{good, "{say: say_complete}", "{say: ^say_static}", "needs a number"},
		{good, "{say: say_complete}", "{say: ^say_complete, value: 3}", "takes no number"},
		{odd, "breaks: r-order", "breaks: ^r-oder", `did you mean "r-order"?`},
		{odd, "based_on: good", "based_on: ^god", `did you mean "good"?`},
		{odd, "based_on: good", "based_on: ^odd", "in a circle"},
		{odd, "variant: short", "variant: ^shrt", `did you mean "short"?`},
		{odd, "start: {fluid_leak: 1}", "start: {^fluid_lek: 1}", `did you mean "fluid_leak"?`},
		{odd, "{skip: free}", "{skip: ^fre}", `did you mean "free"?`},
		{odd, "{skip: free}", "^{skip: free, replace: one}", "expected one of skip"},
		{odd, "{skip: free}", "^{skip: free, moves: [{pause_s: 1}]}", "none with skip"},
		{odd, "{shift: two, before: one}", "{shift: two, before: ^two}", "beside itself"},
		{odd, "{shift: two, before: one}", "^{shift: two}", "expected one of skip"},
	} {
		only(t, c.file, c.from, c.to, c.say)
	}
}

func TestFaultsOfAnApparatusAndOfRules(t *testing.T) {
	twin, extra := "apparatus/twin.yaml", "rules/extra.yaml"
	for _, c := range []struct{ file, from, to, say string }{
		{twin, "idle_rpm: 650", "idle_rpm: ^65", "expected a number from 400 to 1200"},
		{twin, "{label: Three, color: blue}", "{label: Three, color: blue, valve: {law: ^needle}}", "expected ball, gate or butterfly"},
		{twin, "idle_rpm: 650", "^idle: 650", `did you mean "idle_rpm"?`},
		{twin, "{idle_rpm: 650}", "{idle_rpm: 650, torque_rpm_lbft: ^[[600, 500], [600, 700]]}", "rising speeds"},
		{twin, "{idle_rpm: 650}", "{idle_rpm: 650}\nrelief: {amber_off_lift: ^0.2}", "expected less"},
		{twin, "{idle_rpm: 650}", "{idle_rpm: 650}\nrelief: {standby_psi: ^55, lowest_psi: 60}", "beyond the wheel"},
		{twin, "{idle_rpm: 650}", "{idle_rpm: 650}\ngovernor: {}\nrelief: ^{turns: 8}", "expected one of the two"},
		{twin, "{idle_rpm: 650}", "{idle_rpm: 650}\ngovernor: {preset_psi: ^290, highest_psi: 280}", "expected 30 to 280"},
		{twin, "{idle_rpm: 650}", "{idle_rpm: 650}\ngovernor: {cut_rpm: ^2400}", "cannot hold 2400"},
		{twin, "{idle_rpm: 650}", "{idle_rpm: 650}\npump: {transfer: {travel_s: ^60}}", "expected a number from 0.5 to 20"},
		{twin, "{idle_rpm: 650}", "{idle_rpm: 650}\nsupply_hose: [{size_in: 4, loss_c: 0.2, coupling_in: 4, lengths_ft: [25]}, ^{size_in: 4, loss_c: 0.2, coupling_in: 4, lengths_ft: [50]}]", "4 in is listed already"},
		{twin, "{idle_rpm: 650}", "{idle_rpm: 650}\nsupply_hose: ^[{size_in: 4, loss_c: 0.2, coupling_in: 4, lengths_ft: [15, 20, 25, 50, 100]}, {size_in: 5, loss_c: 0.08, coupling_in: 4, lengths_ft: [15, 25, 50, 100]}]", "expected at most 8"},
		{twin, "{idle_rpm: 650}", "{idle_rpm: 650}\nsupply_hose: [{size_in: 4, loss_c: 0.2, coupling_in: 4, lengths_ft: [25, ^900]}]", "expected a number from 5 to 200"},
		{twin, "{idle_rpm: 650}", "{idle_rpm: 650}\nline_hose: [{size_in: 3, loss_c: 0.8}, ^{size_in: 3, loss_c: 0.7}]", "3 in is listed already"},
		{twin, "title: Twin\n", "", "is missing"},
		{extra, "id: over", "id: ^fast-throttle", "stands twice"},
		{extra, "kind: never", "kind: ^nver", `did you mean "never"?`},
		{extra, "severity: unsafe", "severity: ^bad", "expected minor, error or unsafe"},
		{extra, "    span: 0.5\n", "", "expected on with min_travel_s with span, or when"},
	} {
		only(t, c.file, c.from, c.to, c.say)
	}
}

// Every fault of a file is told at once.
func TestAllFaultsAtOnce(t *testing.T) {
	err := changed(t, "drills/small.yaml", "title: Small drill\nobjective: Do it.", "titel: x\nobjective: 5\npar: 3")
	var faults reader.Faults
	if !errors.As(err, &faults) || len(faults) != 4 {
		t.Errorf("%v\nwant 4: two unknown keys, a number for text, a missing title", err)
	}
}

func TestWhatIsNoFileOfTheShelf(t *testing.T) {
	for text, say := range map[string]string{
		"a: 1":       "cannot tell what this file describes",
		"[1, 2]":     "cannot tell what this file describes",
		"":           "file is empty",
		"name: x: y": "expected YAML",
	} {
		if _, err := Open(nil).Check("f.yaml", []byte(text)); err == nil || !strings.Contains(err.Error(), say) || !strings.HasPrefix(err.Error(), "f.yaml:1:") {
			t.Errorf("%q: %v, want %s", text, err, say)
		}
	}
}

// Whatever a file holds, it is sound or has faults with places: nothing panics, nothing else is said.
func FuzzCheck(f *testing.F) {
	for _, name := range []string{"drills/small.yaml", "apparatus/twin.yaml", "operators/small/good.yaml", "operators/small/odd.yaml", "rules/extra.yaml"} {
		text, err := os.ReadFile("testdata/shelf/" + name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	for _, s := range []string{"objective: x", "ground: {line: {branches: [1]}}\nsteps: [1]\napparatus: twin", "drill: small\nedits: [{}]\nbased_on: good", "rules: [[]]", "rules: [{id: [1]}]", "engine: {torque_rpm_lbft: []}", "objective: x\nrules: [{use: {}}]\nground: {}\nsteps: [{}]\napparatus: twin", "drill: ../x\nsteps: []", "name: ../../x\nengine: {}", "objective: x\nname: [1]\nvariants: [{ground: 3}]\nsteps: [{id: a}]\nground: {}\napparatus: twin"} {
		f.Add([]byte(s))
	}
	s := Open(os.DirFS("testdata/shelf"))
	f.Fuzz(func(t *testing.T, text []byte) {
		_, err := s.Check("f.yaml", text)
		var faults reader.Faults
		if err != nil && !errors.As(err, &faults) {
			t.Fatalf("not a fault with a place: %v", err)
		}
		for _, x := range faults {
			if x.Line < 1 || x.Col < 1 || x.File == "" {
				t.Fatalf("fault without a place: %v", x)
			}
		}
	})
}
