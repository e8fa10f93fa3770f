package main

import (
	"strings"
	"testing"

	"steadyneedle/cmd/internal/settings"
	"steadyneedle/render/app"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/unit"
)

func TestChoices(t *testing.T) {
	set := settings.Settings{Units: "si", Scale: "150", Pad: "axis 2 throttle", Theme: "contrast", Sound: "all 10", OnUnsafe: "stop"}
	c, err := (&options{}).choose(set)
	if err != nil || c.zoom != 1.5 || c.units != unit.SI || c.level != 0.1 || c.look != app.Contrast || len(c.pad.Axes) != 1 {
		t.Errorf("settings: %+v, %v", c, err)
	}
	if got := c.onUnsafe(&drill.Drill{OnUnsafe: drill.Ask}); got != drill.Stop {
		t.Errorf("the settings go over the drill: %v", got)
	}
	c, err = (&options{scale: "fit", pad: "button 0 horn", onUnsafe: "drill"}).choose(set)
	if err != nil || c.onUnsafe(&drill.Drill{OnUnsafe: drill.Ask}) != drill.Ask || c.zoom != 0 || len(c.pad.Axes) != 0 || len(c.pad.Buttons) != 1 {
		t.Errorf("the command line goes over the settings: %+v, %v", c, err)
	}
	for say, o := range map[string]options{
		`--scale: found "90"`: {scale: "90"},
		`--theme: found "pink", expected auto, day, night or contrast`: {theme: "pink"},
		`--scale: found "large"`:                  {scale: "large"},
		`--sound: "motor": expected all, engine`:  {sound: "motor 3"},
		`--units: found "metric"`:                 {units: "metric"},
		`--pad: entry 1, "axis x throttle"`:       {pad: "axis x throttle"},
		`--on-unsafe: found "no", expected go-on`: {onUnsafe: "no"},
	} {
		if _, err := o.choose(set); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("%v, want %s", err, say)
		}
	}
	if _, err := (&options{}).choose(settings.Settings{Units: "us", Scale: "fit", Theme: "auto", Pad: "lever"}); err == nil || !strings.Contains(err.Error(), "settings: pad: entry 1") {
		t.Errorf("a faulty setting: %v", err)
	}
}
