package settings

import (
	"fmt"

	"steadyneedle/sim/drill"
)

// Settings are what a program runs with.
type Settings struct {
	Shelf    string // folder of the user's own drills, apparatus, rules and operators; empty: none
	Attempts string // folder where sheets and recordings are kept; empty: nowhere
	Units    string // us or si
	Pad      string // what the axes and buttons of a game-pad work, see input.ParseMap; empty: nothing
	Sound    string // how loud: off, or percents, see sound.ParseMix; empty: as it begins
	Theme    string // colors of the window: auto (as it is on the street), day, night or contrast
	Scale    string // size of the window's interface: fit, or 100 to 200 (percent)
	OnUnsafe string // what an unsafe act does in a rated attempt: go-on, stop, ask, or drill (as the drill says)

	whence func(name string, err error) error // nil: these are the defaults
}

// Told is an error about the value of a setting, with where it was given.
func (s Settings) Told(name string, err error) error {
	if s.whence == nil {
		return fmt.Errorf("settings: %s: %w", name, err)
	}
	return s.whence(name, err)
}

// check says what is wrong with a value, and with which.
func (s Settings) check() (name string, err error) {
	if s.Units != "us" && s.Units != "si" {
		return "units", fmt.Errorf("found %q, expected us or si", s.Units)
	}
	_, err = Terms(s.OnUnsafe, &drill.Drill{})
	return "on_unsafe", err
}
