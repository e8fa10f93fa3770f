package app

import (
	"fmt"
	"math"
)

// Sizes that the interface can be set to, in pixels a unit; fit is larger than none of them.
var zooms = [...]float64{1, 1.1, 1.25, 1.5, 1.75, 2}

// scaleKey takes the keys that make the interface larger and smaller.
func (a *App) scaleKey(k Key) bool {
	if !k.Ctrl {
		return false
	}
	switch k.Name {
	case "Equal", "Add":
		if k.Down {
			a.setZoom(a.nextZoom(1))
		}
	case "Minus", "Subtract":
		if k.Down {
			a.setZoom(a.nextZoom(-1))
		}
	case "0":
		if k.Down {
			a.setZoom(0)
		}
	default:
		return false
	}
	return true
}

// nextZoom is the next size up or down from what shows now; 0, to fill the window, above the largest.
func (a *App) nextZoom(by int) float64 {
	if by > 0 {
		for _, z := range zooms {
			if z > a.scale+1e-6 {
				return z
			}
		}
		return 0
	}
	for i := len(zooms) - 1; i >= 0; i-- {
		if zooms[i] < a.scale-1e-6 {
			return zooms[i]
		}
	}
	return a.zoom
}

// setZoom sets the size of the interface. Larger than the window allows is as large as it allows.
func (a *App) setZoom(z float64) {
	a.zoom = z
	a.fit()
	a.relayout()
	if z > 0 && z < min(float64(a.w)/1280, float64(a.h)/720) {
		a.say(fmt.Sprintf("The interface is at %.0f %%.", math.Round(a.scale*100)))
		return
	}
	a.say("The interface fills the window.")
}
