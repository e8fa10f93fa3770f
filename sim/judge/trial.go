package judge

import (
	"fmt"
	"slices"
	"strconv"

	"steadyneedle/sim/world"
)

// Bench is a copy of the world that a test may do with as it likes; *world.World is one. People do
// nothing on it.
type Bench interface {
	Now() world.Tick
	Step(due []world.Action)
	Truth() *world.Truth
	Check(world.Action) error
	Control(name string) (world.ControlID, bool)
	Signal(name string) (world.SignalID, bool)
}

// experiment is one test on a copy. step makes one tick and says when it is over.
type experiment interface {
	step() (over bool)
	verdict() (passed bool, why how, measured float64)
}

// tests are those that a rule can name: how to set one up, and its numbers.
var tests = []struct {
	name   string
	limits []limit
	begin  func(*rigging) (experiment, error)
}{
	{"relief-shut", shutLimits, newReliefShut},
	{"relief-holds", holdsLimits, newReliefHolds},
	{"relief-standby", standbyLimits, newReliefStandby},
	{"further-lines", furtherLimits, newFurther},
	{"hydrant-lost", lostLimits, newLost},
}

// limit is a number of a test, with its value unless the rule gives another.
type limit struct {
	name  string
	value float64
}

// TestNames lists the tests that outcome rules can name.
func TestNames() []string {
	var list []string
	for _, t := range tests {
		list = append(list, t.name)
	}
	return list
}

// TestLimits lists the numbers that a test takes; none for an unknown test.
func TestLimits(name string) []string {
	var list []string
	for _, t := range tests {
		if t.name == name {
			for _, l := range t.limits {
				list = append(list, l.name)
			}
		}
	}
	return list
}

// checkTest says what is wrong with a test's name or numbers.
func checkTest(f *ForkTest) error {
	names := TestLimits(f.Name)
	if names == nil {
		return fmt.Errorf("no test is named %q; there are %v", f.Name, TestNames())
	}
	var wrong []string
	for name := range f.Limit { //order: sorted below
		if !slices.Contains(names, name) {
			wrong = append(wrong, name)
		}
	}
	if len(wrong) > 0 {
		slices.Sort(wrong)
		return fmt.Errorf("test %s has no limit %q; it has %v", f.Name, wrong[0], names)
	}
	return nil
}

// trial is a test under way.
type trial struct {
	watch *watch
	at    world.Tick
	place world.Place
	names [maxNames]float64
	run   experiment
	ticks int // made so far
}

// maxTrialTicks ends a test that does not come to an end by itself.
const maxTrialTicks = 300 * world.TicksPerSecond

// startTrial copies the world as it is at this moment; the test is run by Work or Settle.
func (j *Judge) startTrial(w *watch, now world.Tick) {
	if w.rule.Once && w.count > 0 {
		return
	}
	bench, err := j.fork()
	if err != nil {
		j.fault = fmt.Errorf("rule %s: copying the world: %w", w.rule.ID, err)
		return
	}
	rig, err := newRigging(bench)
	if err != nil {
		j.fault = fmt.Errorf("rule %s: %w", w.rule.ID, err)
		return
	}
	t := &trial{watch: w, at: now, place: world.Place(j.board.V[j.placeCell])}
	for _, known := range tests {
		if known.name == w.rule.Test.Name {
			rig.test, rig.limits = w.rule.Test, known.limits
			if t.run, err = known.begin(rig); err != nil {
				j.fault = fmt.Errorf("rule %s: %w", w.rule.ID, err)
				return
			}
		}
	}
	for i, cell := range w.expected.cells {
		if x := j.board.V[cell]; x == x {
			t.names[i] = x
		}
	}
	j.trials = append(j.trials, t)
}

// Pending reports whether tests on copies are still to be run.
func (j *Judge) Pending() bool { return len(j.trials) > 0 }

// Work runs tests for at most so many ticks of their copies, so that a window never stalls.
func (j *Judge) Work(ticks int) {
	for ; ticks > 0 && len(j.trials) > 0; ticks-- {
		t := j.trials[0]
		t.ticks++
		if t.run.step() || t.ticks >= maxTrialTicks {
			j.trials = j.trials[1:]
			j.conclude(t)
		}
	}
}

// Settle runs all tests to their end.
func (j *Judge) Settle() error {
	for len(j.trials) > 0 {
		j.Work(maxTrialTicks)
	}
	return j.fault
}

func (j *Judge) conclude(t *trial) {
	passed, why, measured := t.run.verdict()
	if passed {
		return
	}
	before := len(j.records)
	j.report(t.watch, t.at, t.at, cause{place: t.place, hasPlace: true, how: why, number: measured, hasNumber: true})
	if len(j.records) > before {
		j.records[before].names = t.names // as they were when the copy was made
	}
}

// trialWords puts a failed test's measurement into words.
func trialWords(h how, v float64) string {
	switch h {
	case noLift:
		return "it did not lift within " + Number(v, "psi") + " of the line's reading"
	case earlyLift:
		return "it lifted " + Number(-v, "psi") + " below the line's reading"
	case lateLift:
		return "with the lines shut the pressure stood " + Number(v, "psi") + " higher"
	case lampOn:
		return "by-passing " + Number(v, "gpm") + " in normal flow"
	case seated:
		return "with the lines shut it stayed on its seat"
	case tooLittle:
		return "with that many lines " + Number(v, "psi") + " would be left at the intake"
	case fewerLines:
		return "the supply carried " + strconv.FormatFloat(v, 'f', 1, 64) + " of them"
	case lostFlow:
		return "with the hydrant gone " + Number(v, "gpm") + " came from the tank in the end"
	case notReached:
		return "it did not lift by " + Number(v, "psi")
	}
	return Number(v, "psi")
}
