package app

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/sim/demo"
	"steadyneedle/sim/world"
)

// tempos are how fast time can pass in front of a class.
var tempos = []float64{0.25, 0.5, 1, 2, 4, 8}

// leaveShow goes back to the list; time runs as usual again.
func (a *App) leaveShow() {
	a.tempo, a.frozen = 1, false
	a.leave()
	a.show(&demos{})
}

func (s *show) faster(a *App, by int) {
	at := 2
	for i, t := range tempos {
		if t == a.tempo {
			at = i
		}
	}
	a.tempo = tempos[max(0, min(len(tempos)-1, at+by))]
}

// step makes a tenth of a second, frozen.
func (s *show) step(a *App) {
	a.frozen = true
	for range world.TicksPerSecond / 10 {
		s.stage.Tick()
	}
	a.eyes.See(s.stage.Reading())
}

// back goes back so many seconds.
func (s *show) back(a *App, seconds float64) {
	now := s.stage.Player().Attempt.Now()
	s.turned(a, s.stage.Back(now-world.TicksIn(seconds)))
}

// swap changes over to what was left by going back.
func (s *show) swap(a *App) {
	if s.stage.Left() == nil {
		a.say("There is no other way yet: go back first.")
		return
	}
	s.turned(a, s.stage.Swap())
}

// turned shows another way, or says why it could not be taken.
func (s *show) turned(a *App, err error) {
	if err != nil {
		a.say(sentence(err.Error()))
	}
	s.way++
	a.behind = 0
	a.eyes.See(s.stage.Reading())
	a.stale = true
}

func (s *show) taken() bool { return s.stage.Player().Phase() == demo.Interrupted }

func (s *show) handsWord() string {
	if s.taken() {
		return "Let it go on"
	}
	return "Take over"
}

func (s *show) take(a *App) {
	p := s.stage.Player()
	switch {
	case p.Demonstration.Free: // there is nothing to interrupt
		s.panel(a)
	case s.taken():
		p.Resume()
	default:
		p.Interrupt()
		s.panel(a)
	}
	a.stale = true
}

func (s *show) goWord() string {
	if !s.warned {
		return "Begin"
	}
	switch s.stage.Player().Phase() {
	case demo.Asking:
		return "Run it"
	case demo.Ended:
		return "Leave"
	}
	return "Go on"
}

func (s *show) goOn(a *App) {
	if !s.warned {
		s.warned, a.frozen, a.stale = true, false, true
		return
	}
	p := s.stage.Player()
	switch p.Phase() {
	case demo.Asking:
		s.vote()
		p.Go()
	case demo.Waiting:
		p.Go()
	case demo.Ended:
		a.leaveShow()
		return
	}
	a.frozen = false
	a.stale = true
}

// paceWord says how fast time passes before a class.
func (a *App) paceWord() string {
	switch {
	case a.frozen:
		return "frozen"
	case a.tempo == 0.25:
		return "×¼"
	case a.tempo == 0.5:
		return "×½"
	}
	return fmt.Sprintf("×%g", a.tempo)
}

// clock tells the time, and how fast it passes.
func (s *show) clock(a *App) {
	text := clockText(s.stage.Player().Attempt.Now().Seconds()) + "   " + a.paceWord()
	st := draw.Style{Size: s.text, Weight: draw.Bold, Color: theme.Paper.Chalk}
	a.shelf.Text(&a.frame, draw.Pt(s.leaveBox(a).X-18, s.top()*0.71), draw.Right, st, text)
}

// Fast runs a demonstration to a moment, through its stops, and shows it: plots, gauges, both, three, panel,
// faults or arming.
func (a *App) Fast(to world.Tick, what string) error {
	s, ok := a.screen.(*show)
	if !ok {
		return fmt.Errorf("nothing is being shown")
	}
	if to > 0 {
		s.warned, a.frozen = true, false
	}
	p := s.stage.Player()
	for p.Attempt.Now() < to && p.Phase() != demo.Stuck {
		if ph := p.Phase(); ph == demo.Waiting || ph == demo.Asking {
			p.Go()
		}
		s.stage.Tick()
	}
	a.eyes.See(s.stage.Reading())
	switch what {
	case "", "plots":
	case "gauges":
		s.choose(a, 1)
	case "both":
		s.choose(a, 2)
	case "three":
		s.choose(a, 3)
	case "panel":
		s.panel(a)
	case "faults":
		a.show(newRigging(s))
	case "arming":
		r := newRigging(s)
		a.show(newArming(r, r.rows[r.at]))
	default:
		return fmt.Errorf("no view is named %q, expected plots, gauges, both, three, panel, faults or arming", what)
	}
	return nil
}
