package judge

import (
	"testing"

	"steadyneedle/sim/world"
)

func TestNever(t *testing.T) {
	rule := Rule{ID: "dry", Kind: Never, When: flag(cellA), For: 300, Unless: flag(cellB)}
	s := newStage(t, 0, rule)
	s.set(cellA, 1)
	s.run(290)
	s.set(cellA, 0)
	s.run(60)
	s.found(0) // shorter than allowed
	s.set(cellA, 1)
	s.run(320) // from tick 350
	s.found(350, "dry")
	s.run(600)
	s.found(350, "dry") // the same episode
	s.set(cellA, 0)
	s.run(60)
	s.set(cellA, 1)
	s.run(400)
	s.found(350, "dry") // merged: it came back within 15 s
	s.set(cellA, 0)
	s.run(16 * 60)
	s.set(cellA, 1)
	s.run(400)
	s.found(350, "dry", "dry")

	s = newStage(t, 0, rule)
	s.set(cellA, 1)
	s.set(cellB, 1)
	s.run(1000)
	s.found(0) // suspended
}

func TestGuardOnAction(t *testing.T) {
	rule := Rule{ID: "chocks", Kind: Guard, On: []world.ControlID{0}, Need: flag(cellA),
		When: yes(func(v []float64) bool { return v[cellValue] > v[cellWheel] })} // raised
	turn := func(v float64) world.Action { return world.Action{Control: 0, Value: v} }

	s := newStage(t, 0, rule)
	s.set(cellWheel, 0.5)
	s.run(60)
	s.run(60, turn(0.4)) // lowered
	s.set(cellA, 1)
	s.run(60)
	s.run(60, turn(0.6)) // raised with what it needs
	s.found(0)
	s.set(cellA, 0)
	s.run(60)
	by := turn(0.7)
	by.By = world.Evaluator
	s.run(60, by) // another's act is not judged
	s.found(0)
	s.run(1, turn(0.7))
	sheet := s.found(360, "chocks")
	if sheet.Findings[0].Place != world.Panel {
		t.Errorf("place %v, want where the action was taken", sheet.Findings[0].Place)
	}
	for range 30 {
		s.run(1, turn(0.8)) // a hand that goes on moving
	}
	s.found(360, "chocks")
}

func TestGuardOnState(t *testing.T) {
	rule := Rule{ID: "unready", Kind: Guard, When: flag(cellA), Need: flag(cellB), For: 60}
	s := newStage(t, 0, rule)
	s.run(60)
	s.set(cellA, 1)
	s.run(30)
	s.set(cellA, 0)
	s.run(30)
	s.found(0) // not for long enough
	s.set(cellB, 1)
	s.set(cellA, 1)
	s.run(6)
	s.set(cellB, 0)
	s.run(200)
	s.found(0) // what it needs held when it began
	s.set(cellA, 0)
	s.run(30)
	s.set(cellA, 1)
	s.run(30)
	s.set(cellB, 1) // too late
	s.run(200)
	s.found(60+60+206+30, "unready")
}

func TestOrder(t *testing.T) {
	rule := Rule{ID: "order", Kind: Order, When: flag(cellA), First: flag(cellB)}
	s := newStage(t, 0, rule)
	s.set(cellB, 1)
	s.run(60)
	s.set(cellB, 0) // it has been
	s.run(60)
	s.set(cellA, 1)
	s.run(60)
	s.found(0)

	s = newStage(t, 0, rule)
	s.run(120)
	s.set(cellA, 1)
	s.run(60)
	s.set(cellB, 1)
	s.run(60)
	s.found(120, "order")
}

func TestBand(t *testing.T) {
	rule := Rule{ID: "off", Kind: Band, Value: read(cellNeedle), Target: read(cellWanted), Tolerance: fixed(15),
		While: flag(cellA), For: 300, ShowUnit: "psi", Expected: "{wanted} ± 15 psi",
		Grace: []Grace{{When: flag(cellB)}}}
	start := func(grace world.Tick) *stage {
		s := newStage(t, grace, rule)
		s.set(cellNeedle, 0)
		s.run(120)
		s.set(cellNeedle, 134.8)
		s.run(60)
		s.set(cellA, 1)
		s.run(60)
		s.found(0) // not judged before While, nor for the needle's way up
		return s
	}
	s := start(0) // tick 240
	s.set(cellNeedle, 160)
	s.run(280)
	s.set(cellNeedle, 135)
	s.run(120)
	s.found(0) // back in time
	s.set(cellNeedle, 160)
	s.run(400)
	sheet := s.found(640+30, "off") // averaged over 1 s, 25 psi off passes 15 after 0.6 s
	if f := sheet.Findings[0]; f.Expected != "134.8 psi ± 15 psi" || f.Measured != "160 psi" {
		t.Errorf("expected %q, measured %q", f.Expected, f.Measured)
	}

	s = start(0) // flicker about the limit: half the time outside
	for range 20 {
		s.set(cellNeedle, 134.8+15.5)
		s.run(60)
		s.set(cellNeedle, 134.8+14.5)
		s.run(60)
	}
	s.found(240+55, "off") // the average needs its second
	s = start(0)
	for range 20 { // in and well out of it, never for long
		s.set(cellNeedle, 134.8+17)
		s.run(120)
		s.set(cellNeedle, 134.8+10)
		s.run(120)
	}
	s.found(0)

	s = start(600)
	s.set(cellB, 1)
	s.set(cellNeedle, 180)
	s.run(600)
	s.set(cellB, 0)
	s.set(cellNeedle, 135)
	s.run(120)
	s.found(0) // excused, at the budget's cost
	s.set(cellB, 1)
	s.set(cellNeedle, 180)
	s.run(600)
	s.found(960+38, "off") // the average takes a third of a second, what was left of the budget the rest
}

func TestGraceBudgetIsSharedAndPaidOnce(t *testing.T) {
	band := func(id string) Rule {
		return Rule{ID: id, Kind: Band, Value: read(cellNeedle), Target: fixed(0), Tolerance: fixed(5),
			Grace: []Grace{{When: flag(cellB)}}}
	}
	s := newStage(t, 600, band("one"), band("two"))
	s.set(cellB, 1)
	s.set(cellNeedle, 50)
	s.run(590)
	s.found(0) // both live on one budget, and pay once
	s.run(60)
	if n := len(s.j.Sheet().Findings); n != 2 {
		t.Errorf("%d findings after the budget, want both", n)
	}
}

func TestRate(t *testing.T) {
	rule := Rule{ID: "slam", Kind: Rate, On: []world.ControlID{0}, MinTravelS: 3, Span: 0.5, When: flag(cellC)}
	move := func(s *stage, from, to float64, ticks int) {
		for i := range ticks {
			s.set(cellWheel, from+(to-from)*float64(i+1)/float64(ticks))
			s.run(1)
		}
	}
	s := newStage(t, 0, rule)
	s.run(60)
	move(s, 0, 1, 180) // exactly 3 s
	move(s, 1, 0.6, 12)
	s.run(300) // fast, but short of the span
	move(s, 0.6, 0, 110)
	s.found(0)
	s.run(300)
	at := s.now
	move(s, 0, 1, 60)
	sheet := s.found(at-2, "slam")
	if m := sheet.Findings[0].Measured; m != "1 s for full travel" {
		t.Errorf("measured %q", m)
	}

	s = newStage(t, 0, rule)
	s.run(200)
	s.set(cellC, 1) // the surge
	s.run(60)
	s.found(200, "slam")
}

func TestDue(t *testing.T) {
	within := Rule{ID: "late", Kind: Due, From: flag(cellA), Within: 600, Done: flag(cellB)}
	s := newStage(t, 0, within)
	s.run(100)
	s.set(cellA, 1)
	s.run(300)
	s.set(cellB, 1)
	s.run(60)
	s.set(cellB, 0) // done in time, and undone: not this rule's business
	s.run(600)
	s.found(0)

	s = newStage(t, 0, within)
	s.run(100)
	s.set(cellA, 1)
	s.run(590)
	s.found(0)
	s.run(20)
	s.set(cellB, 1)
	s.run(20)
	s.found(700, "late")

	by := Rule{ID: "missing", Kind: Due, By: flag(cellC), Done: flag(cellB)}
	s = newStage(t, 0, by)
	s.set(cellB, 1)
	s.run(100)
	s.set(cellB, 0)
	s.run(100)
	s.set(cellC, 1)
	s.run(60)
	s.found(200, "missing") // at that moment it must hold
	s = newStage(t, 0, by)
	s.run(100)
	s.set(cellB, 1)
	s.run(100)
	s.set(cellC, 1)
	s.run(60)
	s.set(cellB, 0)
	s.run(600)
	s.found(0)

	s = newStage(t, 0, within) // the attempt ends at the deadline's very tick
	s.set(cellA, 1)
	s.run(606)
	if err := s.j.Finalize(); err != nil {
		t.Fatal(err)
	}
	s.found(600, "late")
}

func TestAnswer(t *testing.T) {
	needle := read(cellNeedle)
	needle.Text = "needle"
	rule := Rule{ID: "static", Kind: Answer, On: []world.ControlID{2}, Target: needle, Tolerance: fixed(5), By: flag(cellA)}
	say := func(v float64) world.Action { return world.Action{Control: 2, Value: v} }
	start := func(r Rule) *stage {
		s := newStage(t, 0, r)
		s.set(cellNeedle, 65)
		s.run(120)
		return s
	}
	s := start(rule)
	s.run(60, say(70)) // right, to the limit
	s.set(cellNeedle, 40)
	s.run(120) // the needle may move afterwards
	s.set(cellA, 1)
	s.run(60)
	s.found(0)

	s = start(rule)
	s.run(60, say(50))
	s.run(60, say(66)) // put right before it counts
	s.set(cellA, 1)
	s.run(60)
	s.found(0)

	s = start(rule)
	s.run(60, say(50))
	s.found(0) // not judged yet
	s.set(cellA, 1)
	s.run(60)
	if f := s.found(120, "static").Findings[0]; f.Measured != "50 psi" || f.Seen < 180 {
		t.Errorf("measured %q, seen at %d", f.Measured, f.Seen)
	}

	s = start(rule)
	s.set(cellA, 1)
	s.run(60)
	if f := s.found(120, "static").Findings[0]; f.Measured != "not said" {
		t.Errorf("measured %q", f.Measured)
	}

	s = start(rule) // what is asked for has only just been settled
	s.set(cellNeedle, 20)
	s.run(2)
	s.run(60, say(20))
	s.set(cellA, 1)
	s.run(60)
	s.found(0)

	s = start(rule) // the needle shivers: its mean was right, where it stood when it was said was not
	for range 15 {
		s.set(cellNeedle, 58)
		s.run(6)
		s.set(cellNeedle, 72)
		s.run(6)
	}
	s.run(60, say(65))
	s.set(cellA, 1)
	s.run(60)
	s.found(0)

	worked := rule // a number worked out does not shiver: what it was before the last reading is no answer
	worked.Target = read(cellNeedle)
	s = start(worked)
	s.set(cellNeedle, 58)
	s.run(12)
	s.run(60, say(65))
	s.set(cellA, 1)
	s.run(60)
	s.found(132, "static")

	rule.By = nil
	s = start(rule)
	s.run(60, say(71))
	s.found(120, "static")
}

func TestSaid(t *testing.T) {
	by := Rule{ID: "unconfirmed", Kind: Said, By: flag(cellA), Need: flag(cellB)}
	s := newStage(t, 0, by)
	s.set(cellB, 1)
	s.run(60)
	s.set(cellA, 1)
	s.run(60)
	s.set(cellB, 0)
	s.run(60)
	s.found(0)
	s = newStage(t, 0, by)
	s.run(60)
	s.set(cellA, 1)
	s.run(60)
	s.found(60, "unconfirmed")

	false_ := Rule{ID: "false", Kind: Said, On: []world.ControlID{1}, When: flag(cellA)}
	s = newStage(t, 0, false_)
	s.run(60, world.Action{Control: 1, Value: 1})
	s.found(0)
	s.set(cellA, 1)
	s.run(60)
	s.run(60, world.Action{Control: 1, Value: 1})
	s.found(120, "false")
}
