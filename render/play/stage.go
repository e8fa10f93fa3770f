package play

import (
	"math"

	"steadyneedle/render/view"
	"steadyneedle/sim/demo"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// Stage is a demonstration as the window meets it.
type Stage struct {
	*Play
	player *demo.Player
	index  map[string]int
	left   *demo.Strand
}

var _ view.Stage = (*Stage)(nil)

// NewStage wraps a player. under says the apparatus in a few words.
func NewStage(p *demo.Player, under string, units unit.System) *Stage {
	s := &Stage{Play: New(p.Attempt, under, false).In(units), player: p, index: map[string]int{}}
	for i, name := range p.Attempt.Scene.Board.Names() {
		s.index[name] = i
	}
	return s
}

// Player plays the demonstration.
func (s *Stage) Player() *demo.Player { return s.player }

// Rig is the apparatus.
func (s *Stage) Rig() *rig.Def { return &s.a.Drill.Setup.Rig }

// Truth is what is so, by signal.
func (s *Stage) Truth(name string) float64 {
	if i, ok := s.index[name]; ok {
		return s.a.Scene.Board.V[i]
	}
	return math.NaN()
}

// Act does one thing as the instructor.
func (s *Stage) Act(c world.ControlID, v float64) error { return s.player.Do(c, v) }

// Tick makes one step.
func (s *Stage) Tick() {
	s.player.Tick()
	s.look()
}

// Back goes back to a moment.
func (s *Stage) Back(to world.Tick) error {
	left, err := s.player.Rewind(max(to, s.player.Earliest()))
	if err != nil {
		return err
	}
	if left.To > left.From {
		s.left = &left
	}
	s.again()
	return nil
}

// Left is what was left by the last going back.
func (s *Stage) Left() *demo.Strand { return s.left }

// Swap returns to what was left.
func (s *Stage) Swap() error {
	if s.left == nil {
		return nil
	}
	left, err := s.player.Return(s.left)
	if err != nil {
		return err
	}
	s.left = &left
	s.again()
	return nil
}

// again makes what was heard what had been heard by now.
func (s *Stage) again() {
	s.hearAgain(s.a.Now(), s.a.Scene.World.Truth().V)
	s.look()
}
