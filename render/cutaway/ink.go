package cutaway

import (
	"math"

	"steadyneedle/render/draw"
)

// What only the inside of a pump has; sheet and words are the class's.
var (
	metal     = draw.Hex(0x7d858c)
	metalEdge = draw.Hex(0x51585e)
	cavity    = draw.Hex(0xe9e6dd)
	black     = draw.Hex(0x2b3136) // of the relief valve, and its spring
	ring      = draw.Hex(0x6a737a)
	unknown   = draw.Hex(0xc6c3ba) // what is covered
	white     = draw.Hex(0xffffff) // also the arrows of what runs
	gray      = draw.Hex(0xb9bfc4)
	jacket    = draw.Hex(0x8f7a2c) // of a soft hose
)

// levels is how many steps of color there are: more than an eye can tell apart side by side.
const levels = 40

// topPSI is the pressure that is drawn deepest.
const topPSI = 250.0

// covered is the step of a pressure that a class must not see yet.
const covered = -1

// level is the step of a pressure.
func level(psi float64) int {
	if math.IsNaN(psi) {
		return covered
	}
	return int(math.Round(clamp(psi/topPSI) * levels))
}

// water is a step's color: one hue, deeper for more pressure.
func water(level int) draw.Color {
	if level == covered {
		return unknown
	}
	t := float64(level) / levels
	pale, mid, deep := draw.Hex(0xdceefa), draw.Hex(0x6fa8d6), draw.Hex(0x0a3867)
	if t < 0.45 {
		return draw.Mix(pale, mid, t/0.45)
	}
	return draw.Mix(mid, deep, (t-0.45)/0.55)
}
