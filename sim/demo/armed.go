package demo

import (
	"fmt"

	"steadyneedle/sim/world"
)

// armed is a thing that the instructor has set to come by itself.
type armed struct {
	control world.ControlID
	value   float64
	at      world.Tick
}

// Arm lets a control be set at a later tick, as the instructor's own action. A control is armed once: the
// last time counts.
func (p *Player) Arm(control world.ControlID, value float64, at world.Tick) error {
	if at < p.Attempt.Now() {
		return fmt.Errorf("%.1f s is over", at.Seconds())
	}
	act := world.Action{At: at, By: world.Instructor, From: world.Panel, Control: control, Value: value}
	if err := p.Attempt.Scene.World.Check(act); err != nil {
		return err
	}
	p.Disarm(control)
	p.armed = append(p.armed, armed{control, value, at})
	return nil
}

// Disarm forgets what was armed for a control.
func (p *Player) Disarm(control world.ControlID) {
	for i := range p.armed {
		if p.armed[i].control == control {
			p.armed = append(p.armed[:i], p.armed[i+1:]...)
			return
		}
	}
}

// Armed is when a control will be set by itself.
func (p *Player) Armed(control world.ControlID) (world.Tick, bool) {
	for i := range p.armed {
		if p.armed[i].control == control {
			return p.armed[i].at, true
		}
	}
	return 0, false
}

// spring does what is armed for now. What was armed before a going back stays armed only if it is
// still to come.
func (p *Player) spring() {
	now := p.Attempt.Now()
	for i := 0; i < len(p.armed); i++ {
		a := p.armed[i]
		if a.at > now {
			continue
		}
		p.armed = append(p.armed[:i], p.armed[i+1:]...)
		i--
		if a.at == now {
			_ = p.Do(a.control, a.value) // Arm has checked it; what became impossible meanwhile stays undone
		}
	}
}
