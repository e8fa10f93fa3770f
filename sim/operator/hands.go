package operator

import (
	"math"
	"strconv"

	"steadyneedle/sim/world"
)

const (
	giveUpS = 120.0
	// slowS: a move that takes less is made at its own pace by everyone, and a slower one is never
	// hurried below quickestS, for rules govern how fast a valve may be moved.
	slowS, quickestS = 3.0, 3.5
	// lagS is allowed to a control that travels slower than the hand.
	lagS = 3.0
)

// work goes on with a move and says whether it is over.
func (o *Operator) work(m *Move, a *moveAsks, now world.Tick, looked bool, out []world.Action) ([]world.Action, bool) {
	first := !o.began
	if first {
		if !looked {
			return out, false // look before beginning
		}
		o.began, o.since, o.moving = true, now, false
		if a.cond.given() && !a.cond.true(o.eyes.board.V) {
			return out, true
		}
	}
	over := false
	switch m.Verb {
	case Go:
		out, over = o.walkTo(m, first, now, out)
	case Set:
		out, over = o.set(m, a, first, now, looked, out)
	case Turn:
		out, over = o.turn(m, a, first, now, looked, out)
	case Bring:
		out, over = o.bringTo(m, a, first, now, looked, out)
	case Wait:
		over = a.until.given() && a.until.true(o.eyes.board.V) ||
			!a.until.given() && now >= o.since+world.TicksIn(m.WaitS)
	case Tell:
		v := 1.0
		if a.to.given() {
			v = a.to.value(o.eyes.board.V)
		}
		out, over = o.emit(m.Control, v, now, out), true
	case Press:
		out, over = o.press(m, a, first, now, out)
	}
	if !over && o.stuck == "" && now > o.since+world.TicksIn(o.patience(m)) {
		o.giveUp(o.waitedFor(m))
	}
	return out, over
}

// patience is how long a move may take, s.
func (o *Operator) patience(m *Move) float64 {
	p := m.GiveUpS
	if p == 0 {
		p = giveUpS
	}
	switch m.Verb {
	case Wait:
		if m.Until == nil {
			p = max(p, m.WaitS+1)
		}
	case Set, Turn:
		p = max(p, m.OverS/min(1, o.hands.Speed)+o.controls[m.Control].TravelS+2*lagS)
	}
	return p
}

func (o *Operator) waitedFor(m *Move) string {
	waited := "waited " + strconv.FormatFloat(o.patience(m), 'g', 4, 64) + " s "
	switch {
	case m.Verb == Go:
		return waited + "to get to " + m.Place.String()
	case m.Verb == Bring:
		return waited + "for " + m.Watch.Text + " to stand at " +
			strconv.FormatFloat(o.bring.want, 'f', 1, 64) + "; it reads " + strconv.FormatFloat(o.bring.last, 'f', 1, 64)
	case m.Until != nil:
		return waited + "for: " + m.Until.Text
	}
	return waited + "for " + o.controls[m.Control].Name
}

// emit appends an action, kept within the control's range.
func (o *Operator) emit(id world.ControlID, v float64, now world.Tick, out []world.Action) []world.Action {
	c := &o.controls[id]
	if v != v {
		o.giveUp(c.Name + ": the number for it is not known")
		return out
	}
	v = max(c.Min, min(c.Max, v))
	return append(out, world.Action{At: now, By: world.Candidate, From: o.eyes.place, Control: id, Value: v})
}

func (o *Operator) walkTo(m *Move, first bool, now world.Tick, out []world.Action) ([]world.Action, bool) {
	if o.eyes.place == m.Place {
		return out, true
	}
	if first {
		for i := range o.controls {
			if o.controls[i].Kind == world.Walk {
				return o.emit(world.ControlID(i), float64(m.Place), now, out), false
			}
		}
	}
	return out, false
}

// grasp takes hold of a control where it is.
func (o *Operator) grasp(id world.ControlID) {
	if cell := o.position[id]; cell >= 0 {
		o.hand = o.eyes.board.V[cell]
	}
}

// pace is how far a hand moves a control in one tick; 0 at once.
func (o *Operator) pace(m *Move) float64 {
	over := m.OverS
	if over >= slowS {
		over = max(over/o.hands.Speed, min(over, quickestS))
	}
	if over <= 0 {
		return 0
	}
	c := &o.controls[m.Control]
	return (c.Max - c.Min) / float64(over*world.TicksPerSecond)
}

// reach moves the hand one tick toward the goal.
func (o *Operator) reach(m *Move, now world.Tick, out []world.Action) []world.Action {
	step := o.pace(m)
	d := o.goal - o.hand
	if step > 0 && math.Abs(d) > step {
		if d < 0 {
			step = -step
		}
		o.hand += step
	} else {
		o.hand, o.moving = o.goal, false
	}
	return o.emit(m.Control, o.hand, now, out)
}

// aim sets the goal within what the control can do.
func (o *Operator) aim(id world.ControlID, v float64) {
	c := &o.controls[id]
	o.goal = max(c.Min, min(c.Max, v))
	o.moving = o.goal != o.hand
}

func (o *Operator) set(m *Move, a *moveAsks, first bool, now world.Tick, looked bool, out []world.Action) ([]world.Action, bool) {
	c := &o.controls[m.Control]
	if first {
		o.grasp(m.Control)
		to := a.to.value(o.eyes.board.V)
		if to != to {
			o.giveUp(c.Name + ": the number for it is not known")
			return out, false
		}
		o.aim(m.Control, to)
		if !o.moving {
			return out, true
		}
	}
	if o.moving {
		out = o.reach(m, now, out)
		o.let = now + world.TicksIn(c.TravelS+lagS)
		return out, !o.moving && c.TravelS == 0
	}
	if cell := o.position[m.Control]; looked && cell >= 0 && math.Abs(o.eyes.board.V[cell]-o.goal) <= float64(0.001*(c.Max-c.Min)) {
		return out, true
	}
	return out, now >= o.let // it will not go further; what needs it will tell
}

func (o *Operator) turn(m *Move, a *moveAsks, first bool, now world.Tick, looked bool, out []world.Action) ([]world.Action, bool) {
	if first {
		o.grasp(m.Control)
		o.aim(m.Control, a.to.value(o.eyes.board.V))
	}
	if a.until.true(o.eyes.board.V) {
		return out, true
	}
	if o.moving {
		out = o.reach(m, now, out)
	}
	return out, !o.moving && !a.until.given()
}

func (o *Operator) press(m *Move, a *moveAsks, first bool, now world.Tick, out []world.Action) ([]world.Action, bool) {
	if first {
		return o.emit(m.Control, 1, now, out), false
	}
	if a.until.given() && a.until.true(o.eyes.board.V) || m.OverS > 0 && now >= o.since+world.TicksIn(m.OverS) {
		return o.emit(m.Control, 0, now, out), true
	}
	return out, false
}
