package main

import (
	"fmt"
	"strconv"
	"strings"

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
	for _, x := range []struct {
		name, given, set string
		take             func(text string) error
	}{
		{"scale", o.scale, s.Scale, c.takeScale},
		{"theme", o.theme, s.Theme, func(text string) (err error) { c.look, err = app.LookNamed(text); return err }},
		{"sound", o.sound, s.Sound, func(text string) (err error) { c.level, c.mix, err = sound.ParseMix(text); return err }},
		{"pad", o.pad, s.Pad, func(text string) (err error) { c.pad, err = input.ParseMap(text); return err }},
		{"units", o.units, s.Units, c.takeUnits},
		{"on_unsafe", o.onUnsafe, s.OnUnsafe, c.takeTerms},
	} {
		text := x.given
		if text == "" {
			text = x.set
		}
		err := x.take(text)
		switch {
		case err == nil:
		case x.given != "":
			return c, wrongChoice{fmt.Errorf("--%s: %w", strings.ReplaceAll(x.name, "_", "-"), err)}
		default:
			return c, brokenFile{s.Told(x.name, err)}
		}
	}
	return c, nil
}

func (c *choices) takeScale(text string) error {
	if text == "fit" {
		return nil
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 100 || n > 200 {
		return fmt.Errorf("found %q, expected fit or a number from 100 to 200", text)
	}
	c.zoom = float64(n) / 100
	return nil
}

func (c *choices) takeUnits(text string) error {
	var ok bool
	if c.units, ok = unit.SystemNamed(text); !ok {
		return fmt.Errorf("found %q, expected us or si", text)
	}
	return nil
}

func (c *choices) takeTerms(text string) error {
	if _, err := settings.Terms(text, &drill.Drill{}); err != nil {
		return err
	}
	c.onUnsafe = func(d *drill.Drill) drill.OnUnsafe {
		terms, _ := settings.Terms(text, d) // the word was looked at above
		return terms
	}
	return nil
}

// wrongChoice is what is wrong on the command line.
type wrongChoice struct{ error }

func (w wrongChoice) Unwrap() error { return w.error }
