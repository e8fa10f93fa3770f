package scenarios

import (
	"strings"
	"testing"
)

const smallDemonstration = `name: small
title: Small
teaches: A thing.
caution: Not on apparatus.
apparatus: engine41
ground:
  arrived: true
  hydrant: {static_psi: 65, residual_psi: 45, flow_gpm: 1000}
  supply: {size_in: 4, loss_c: 0.2}
  line: {trunk: {size_in: 2.5, loss_c: 2}, nozzle: {tip_in: 1, rated_psi: 50}}
  fire_to_hydrant_ft: 200
  hydrant_setback_ft: 12
  discharge: 1
plot: [intake_psi]
steps:
  - id: one
    caption: Look.
    ask: {question: "Which?", options: [This, That], right: 2, because: So it is., hide: [tach], holds: before > 0}
    moves: [{set: throttle, to: "0.2", over_s: 3}]
    keep: [{name: before, unit: psi, is: discharge_psi}]
    claims: [{text: It holds., measured: before, unit: psi, holds: before >= 0}]
    stop: true
`

// What is wrong in a demonstration's file is told with its place, all of it at once.
func TestDemonstrationFaults(t *testing.T) {
	shelf := Open(nil)
	if _, err := shelf.Check("small.yaml", []byte(smallDemonstration)); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ from, to, want string }{
		{"plot: [intake_psi]", "plot: [intake_pis]", `small.yaml:14:8: plot: unknown name "intake_pis"`},
		{"right: 2", "right: 5", "small.yaml:16:9: right: found 5, expected 1 to 2"},
		{"holds: before > 0}", "holds: befor > 0}", `unknown name "befor"`},
		{", holds: before > 0}", "}", "holds"},
		{"hide: [tach]", "hide: [tash]", `small.yaml:18:91: hide: unknown signal "tash"`},
		{"set: throttle", "set: throttel", `small.yaml:19:19: unknown control "throttel"`},
		{"name: before, unit", "name: tach, unit", "small.yaml:20:19: the name \"tach\" is taken"},
		{"holds: before >= 0", "holds: before >=", "small.yaml:21:"},
		{"holds: before >= 0", "holds: befor >= 0", `unknown name "befor"`},
		{"caution: Not on apparatus.\n", "", "caution"},
		{"    stop: true\n", "    limit: {name: A level, unit: psi, is: \"max(discharge_psi, 10)\"}\n", "small.yaml:22:44: limit: looks back over time"},
		{"    stop: true\n", "    stop: true\n  - {id: one, caption: Again., moves: []}\n", `step "one" stands twice`},
		{"apparatus: engine41\n", "apparatus: engine14\n", `"engine14"`},
	} {
		text := strings.Replace(smallDemonstration, c.from, c.to, 1)
		if text == smallDemonstration {
			t.Fatalf("%q is not in the file", c.from)
		}
		_, err := shelf.Check("small.yaml", []byte(text))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, want %s", c.to, err, c.want)
		}
	}
}

// A ground that is no group of keys is one fault, not a demonstration that is sound and cannot be made.
func TestGroundOfADemonstration(t *testing.T) {
	head, rest, _ := strings.Cut(smallDemonstration, "ground:\n")
	_, steps, _ := strings.Cut(rest, "plot:")
	for _, ground := range []string{"3", "[1, 2]", ""} {
		_, err := Open(nil).Check("small.yaml", []byte(head+"ground: "+ground+"\nplot:"+steps))
		if err == nil || !strings.Contains(err.Error(), "ground: expected a group of keys") {
			t.Errorf("ground: %s: %v", ground, err)
		}
	}
}
