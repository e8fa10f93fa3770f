package app

import (
	"image"
	"testing"

	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/sim/world"
)

func (a *App) pixels() *image.RGBA { return stage.Compose(a.Frame(), a.w, a.h) }

// differ is the share of pixels that two pictures do not share.
func differ(a, b *image.RGBA) float64 {
	n := 0
	for i := 0; i < len(a.Pix); i += 4 {
		if a.Pix[i] != b.Pix[i] || a.Pix[i+1] != b.Pix[i+1] || a.Pix[i+2] != b.Pix[i+2] {
			n++
		}
	}
	return float64(n) / float64(len(a.Pix)/4)
}

// TestPanelLights: the switch changes the picture by day a little and by night all of it.
func TestPanelLights(t *testing.T) {
	for _, c := range []struct {
		look     Look
		off, lit *theme.Theme
		least    float64
	}{{DayLook, &theme.Day, &theme.Day, 0.05}, {NightLook, &theme.Dark, &theme.Night, 0.5}} {
		a := begin(t, false)
		a.look = c.look
		a.Resize(1024, 640)
		a.walk(world.Panel)
		a.seconds(8)
		before := a.pixels()
		if a.theme != c.off {
			t.Errorf("with the lights off the panel is in %s colors, want %s", a.theme.Name, c.off.Name)
		}
		a.clickOn(t, "panel_lights")
		after := a.pixels()
		if a.theme != c.lit {
			t.Errorf("with the lights on the panel is in %s colors, want %s", a.theme.Name, c.lit.Name)
		}
		if d := differ(before, after); d < c.least {
			t.Errorf("%s: the lights change %.0f %% of the picture, want %.0f at least", c.lit.Name, d*100, c.least*100)
		}
	}
}

// TestLooks: key F3 goes through all colors and comes back; a name that is none is refused.
func TestLooks(t *testing.T) {
	a := begin(t, false)
	for _, want := range []*theme.Theme{&theme.Day, &theme.Night, &theme.HighContrast, &theme.Day} {
		a.keyPress("F3")
		a.Frame()
		if a.theme != want {
			t.Errorf("F3 put on %s, want %s", a.theme.Name, want.Name)
		}
	}
	if l, err := LookNamed("contrast"); l != Contrast || err != nil {
		t.Errorf("contrast: %v, %v", l, err)
	}
	if _, err := LookNamed("pink"); err == nil {
		t.Error("a look called pink was found")
	}
}

// TestLampTest: every lamp of the panel burns for two seconds, and then says again what it has to say.
func TestLampTest(t *testing.T) {
	a := begin(t, false)
	a.Resize(1024, 640)
	a.walk(world.Panel)
	a.seconds(8)
	a.clickOn(t, "lamp-test")
	a.focus = ""
	burning := a.pixels()
	a.seconds(2.1)
	if d := differ(burning, a.pixels()); d < 0.005 {
		t.Errorf("after the test %.2f %% of the picture has changed", d*100)
	}
}
