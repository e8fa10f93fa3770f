package cutaway

import (
	"math"

	"steadyneedle/render/draw"
)

// Paper colors: the sheet is light in every theme, for a projector washes a dark one out.
var (
	Paper     = draw.Hex(0xf5f2ea)
	Ink       = draw.Hex(0x15181b)
	Soft      = draw.Hex(0x4a5157)
	metal     = draw.Hex(0x7d858c)
	metalEdge = draw.Hex(0x51585e)
	cavity    = draw.Hex(0xe9e6dd)
	warm      = draw.Hex(0xa33f00)
	jacket    = draw.Hex(0x8f7a2c) // of a soft hose
)

// levels is how many steps of color there are: more than an eye can tell apart side by side.
const levels = 40

// topPSI is the pressure that is drawn deepest.
const topPSI = 250.0

// level is the step of a pressure.
func level(psi float64) int {
	return int(math.Round(clamp(psi/topPSI) * levels))
}

// water is a step's color: one hue, deeper for more pressure.
func water(level int) draw.Color {
	t := float64(level) / levels
	pale, mid, deep := draw.Hex(0xdceefa), draw.Hex(0x6fa8d6), draw.Hex(0x0a3867)
	if t < 0.45 {
		return draw.Mix(pale, mid, t/0.45)
	}
	return draw.Mix(mid, deep, (t-0.45)/0.55)
}
