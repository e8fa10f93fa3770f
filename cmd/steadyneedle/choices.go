package main

import (
	"fmt"
	"strconv"

	"steadyneedle/cmd/internal/settings"
	"steadyneedle/render/app"
	"steadyneedle/render/input"
	"steadyneedle/render/sound"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/unit"
)

// choices are the settings as the window takes them.
type choices struct {
	zoom float64 // pixels a unit; 0: as large as the window lets it be
	pad  input.Map
	look app.Look
	// level is how loud all sound is, mix each source.
	level float64
	mix   sound.Mix
	// units is what everything is shown and typed in.
	units unit.System
	// onUnsafe is what an unsafe act does in a rated attempt at a drill.
	onUnsafe func(*drill.Drill) drill.OnUnsafe
}

// choose reads the settings, over which the command line goes.
func (o *options) choose(s settings.Settings) (choices, error) {
	var c choices
	text, where := over(o.scale, s.Scale)
	if text != "fit" {
		n, err := strconv.Atoi(text)
		if err != nil || n < 100 || n > 200 {
			return c, wrongChoice{where, fmt.Errorf("scale: found %q, expected fit or a number from 100 to 200", text)}
		}
		c.zoom = float64(n) / 100
	}
	text, where = over(o.theme, s.Theme)
	look, err := app.LookNamed(text)
	if err != nil {
		return c, wrongChoice{where, fmt.Errorf("theme: %w", err)}
	}
	c.look = look
	text, where = over(o.sound, s.Sound)
	if c.level, c.mix, err = sound.ParseMix(text); err != nil {
		return c, wrongChoice{where, fmt.Errorf("sound: %w", err)}
	}
	text, where = over(o.pad, s.Pad)
	m, err := input.ParseMap(text)
	if err != nil {
		return c, wrongChoice{where, fmt.Errorf("pad: %w", err)}
	}
	c.pad = m
	text, where = over(o.units, s.Units)
	u, ok := unit.SystemNamed(text)
	if !ok {
		return c, wrongChoice{where, fmt.Errorf("units: found %q, expected us or si", text)}
	}
	c.units = u
	text, where = over(o.onUnsafe, s.OnUnsafe)
	if _, err := settings.Terms(text, &drill.Drill{}); err != nil {
		name := "on_unsafe"
		if where == commandLine {
			name = "on-unsafe"
		}
		return c, wrongChoice{where, fmt.Errorf("%s: %w", name, err)}
	}
	c.onUnsafe = func(d *drill.Drill) drill.OnUnsafe {
		terms, _ := settings.Terms(text, d) // the word was looked at above
		return terms
	}
	return c, nil
}

// Where a choice was made.
const (
	commandLine = "--"
	inSettings  = "settings: "
)

func over(given, set string) (text, where string) {
	if given != "" {
		return given, commandLine
	}
	return set, inSettings
}

// wrongChoice is a choice that cannot be, and where it was made.
type wrongChoice struct {
	where string
	error
}

func (w wrongChoice) Error() string { return w.where + w.error.Error() }
