package demo

import (
	"fmt"
	"slices"

	"steadyneedle/sim/world"
)

// Trigger is what an armed thing waits for: a moment, or a reading beyond a level.
type Trigger struct {
	Signal string // by its name on the board; "": the moment At counts
	Below  bool   // the level is to be fallen below, not risen above
	Level  float64
	At     world.Tick
}

// armed is a thing that the instructor has set to come by itself.
type armed struct {
	control world.ControlID
	value   float64
	on      Trigger
	cell    int        // of the signal on the board
	since   world.Tick // it waits from then on
	sprung  world.Tick // when it came; unsprung: it is still to come
	came    bool       // before, on a way that was left by going back
}

const unsprung = world.Tick(-1)

// Arm lets a control be set later, as the instructor's own action: at a tick, or as soon as a reading
// stands beyond a level. Of what is still to come for a control the last trigger counts.
func (p *Player) Arm(control world.ControlID, value float64, on Trigger) error {
	now := p.Attempt.Now()
	cell := -1
	switch {
	case on.Signal == "" && on.At < now:
		return fmt.Errorf("%.1f s is over", on.At.Seconds())
	case on.Signal == "":
	default:
		if cell = p.cellOf(on.Signal); cell < 0 {
			return fmt.Errorf("there is no reading %q", on.Signal)
		}
		if on.Level != on.Level {
			return fmt.Errorf("%s: the level is not a number", on.Signal)
		}
	}
	act := world.Action{At: now, By: world.Instructor, From: world.Panel, Control: control, Value: value}
	if err := p.Attempt.Scene.World.Check(act); err != nil {
		return err
	}
	p.Disarm(control)
	p.armed = append(p.armed, armed{control: control, value: value, on: on, cell: cell, since: now, sprung: unsprung})
	return nil
}

// Disarm forgets what is still to come for a control. What has come is kept: who goes back before it meets it
// again.
func (p *Player) Disarm(control world.ControlID) {
	p.armed = slices.DeleteFunc(p.armed, func(a armed) bool { return a.control == control && a.sprung == unsprung })
}

// Armed is what a control waits for, if it is still to be set by itself; of several, which only a going back
// leaves, what was armed for first.
func (p *Player) Armed(control world.ControlID) (Trigger, bool) {
	for i := range p.armed {
		if a := &p.armed[i]; a.control == control && a.sprung == unsprung {
			return a.on, true
		}
	}
	return Trigger{}, false
}

func (p *Player) cellOf(signal string) int {
	for i, name := range p.Attempt.Scene.Board.Names() {
		if name == signal {
			return i
		}
	}
	return -1
}

// due reports whether the moment has come.
func (p *Player) due(a *armed) bool {
	if p.Attempt.Now() < a.since {
		return false
	}
	if a.cell < 0 {
		return p.Attempt.Now() >= a.on.At
	}
	v := p.Attempt.Scene.Board.V[a.cell]
	if a.on.Below {
		return v < a.on.Level
	}
	return v > a.on.Level
}

// spring does what is due.
func (p *Player) spring() {
	for i := range p.armed {
		a := &p.armed[i]
		if a.sprung == unsprung && p.due(a) {
			a.sprung = p.Attempt.Now()
			_ = p.Do(a.control, a.value) // Arm has checked it; what became impossible meanwhile stays undone
		}
	}
}

// rearm lets what came at a moment that has been gone back from come again, as it did. What has not come yet
// waits from now on.
func (p *Player) rearm() {
	now := p.Attempt.Now()
	for i := range p.armed {
		switch a := &p.armed[i]; {
		case a.sprung == unsprung && !a.came:
			a.since = min(a.since, now)
		case a.sprung >= now:
			a.sprung, a.came = unsprung, true
		}
	}
}
