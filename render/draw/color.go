package draw

import "image/color"

// Color is a color with straight (not premultiplied) alpha.
type Color = color.NRGBA

// Hex makes an opaque color from 0xRRGGBB.
func Hex(rgb uint32) Color {
	return straight(uint8(rgb>>16), uint8(rgb>>8), uint8(rgb), 255)
}

// Fade returns c with its alpha set to a, 0 to 1.
func Fade(c Color, a float64) Color {
	c.A = uint8(clamp01(a)*255 + 0.5)
	return c
}

// Mix returns the color t of the way from a to b.
func Mix(a, b Color, t float64) Color {
	t = clamp01(t)
	m := func(x, y uint8) uint8 { return uint8(float64(x) + (float64(y)-float64(x))*t + 0.5) }
	return straight(m(a.R, b.R), m(a.G, b.G), m(a.B, b.B), m(a.A, b.A))
}

// Lighter returns c moved toward white by t, 0 to 1.
func Lighter(c Color, t float64) Color { return Mix(c, straight(255, 255, 255, c.A), t) }

// Darker returns c moved toward black by t, 0 to 1.
func Darker(c Color, t float64) Color { return Mix(c, straight(0, 0, 0, c.A), t) }

func clamp01(x float64) float64 { return max(0, min(1, x)) }

func straight(r, g, b, a uint8) Color { return Color{R: r, G: g, B: b, A: a} }
