package app

import (
	"fmt"

	"steadyneedle/render/panel"
	"steadyneedle/render/theme"
)

// Look is which colors the window wears.
type Look uint8

const (
	ByHour    Look = iota // day or night, as it is on the street
	DayLook               // always as by day
	NightLook             // always as by night
	Contrast              // high contrast
)

var lookNames = [...]string{"auto", "day", "night", "contrast"}

// LookNamed finds a look: auto, day, night or contrast.
func LookNamed(name string) (Look, error) {
	for i, n := range lookNames {
		if n == name {
			return Look(i), nil
		}
	}
	return 0, fmt.Errorf("found %q, expected auto, day, night or contrast", name)
}

// dress takes the theme that look, hour and the panel's lights call for. What was drawn in other
// colors is thrown away.
func (a *App) dress() {
	if th := a.wears(); th != a.theme {
		a.theme = th
		a.relayout()
	}
}

func (a *App) wears() *theme.Theme {
	dark := a.look == NightLook || a.look == ByHour && a.attempt != nil && a.attempt.Info().Night
	switch {
	case a.look == Contrast:
		return &theme.HighContrast
	case !dark:
		return &theme.Day
	case a.unlit():
		return &theme.Dark
	}
	return &theme.Night
}

// unlit reports whether the panel is in view with its lights off.
func (a *App) unlit() bool {
	if g, ok := a.screen.(*gallery); ok {
		return g.unlit
	}
	if a.attempt == nil || a.eyes.Named("panel_lights") >= 0.5 {
		return false
	}
	switch s := a.screen.(type) {
	case *place:
		return isPanel(s.page)
	case *moment:
		return isPanel(s.page)
	case *pause:
		return isPanel(s.back.page)
	case *talk:
		return isPanel(s.back.page)
	case *log:
		return isPanel(s.back.page)
	}
	return false
}

func isPanel(p page) bool {
	_, ok := p.(*panel.Panel)
	return ok
}

// nextLook goes on to the next colors.
func (a *App) nextLook() {
	a.look = (a.look + 1) % Look(len(lookNames))
	a.say([...]string{
		"Colors: by day and by night, as it is on the street. F3 changes them.",
		"Colors: as by day. F3 changes them.", "Colors: as by night. F3 changes them.",
		"Colors: high contrast. F3 changes them.",
	}[a.look])
}
