package theme

import "steadyneedle/render/draw"

// HighContrast is for eyes and projectors that need it: black plates, white lines, plain faces, no
// shading that carries nothing.
var HighContrast = highContrast()

func highContrast() Theme {
	t := Day
	t.Name, t.Plain = "contrast", true
	black, white := draw.Hex(0x000000), draw.Hex(0xffffff)
	t.Room, t.Strip, t.StripEdge = black, black, white
	t.PlateHi, t.PlateLo, t.Well = draw.Hex(0x101010), draw.Hex(0x101010), black
	t.Edge, t.Shade = white, black
	t.Text, t.Soft, t.Heading = white, draw.Hex(0xf0f0f0), white
	t.Card, t.CardHi, t.CardText, t.CardSoft, t.Rule = black, draw.Hex(0x181818), white, draw.Hex(0xe8e8e8), draw.Hex(0xb8b8b8)
	t.Face, t.FaceEdge, t.Ink, t.InkSoft = white, white, black, black
	t.Needle, t.Lance, t.Warn = black, draw.Hex(0xb00000), draw.Hex(0x8a2a00)
	t.BezelHi, t.BezelLo = white, draw.Hex(0x8a8a8a)
	t.LabelBack, t.Label = black, white
	t.Groove, t.Dry, t.Water = black, draw.Hex(0x8c8c8c), draw.Hex(0x4fc3ff)
	t.Steel, t.SteelHi, t.SteelLo = draw.Hex(0xd0d0d0), white, draw.Hex(0x8a8a8a)
	t.Grip, t.GripHi = draw.Hex(0xe0392b), draw.Hex(0xff7466)
	t.Focus, t.FocusDark, t.Hover = draw.Hex(0x00ffd5), black, white
	t.Accent, t.AccentText, t.Say = white, black, draw.Hex(0x8fdcff)
	t.Green, t.Amber, t.Red, t.Unlit = draw.Hex(0x2dff7e), draw.Hex(0xffc400), draw.Hex(0xff6a5c), draw.Hex(0x181818)
	t.Good, t.Bad, t.Caution = draw.Hex(0x6dffae), draw.Hex(0xff9c90), draw.Hex(0xffd84d)
	t.Grass, t.Road, t.Curb, t.Walk = draw.Hex(0x0c1a10), draw.Hex(0x161616), white, draw.Hex(0x2c2c2c)
	t.Building, t.BuildingText, t.Roof, t.Leaf = draw.Hex(0x3a2a20), white, draw.Hex(0x26221f), draw.Hex(0x1f3a28)
	t.Rig, t.Hose, t.Supply, t.LargeSupply = draw.Hex(0xd8372b), draw.Hex(0xffd21f), draw.Hex(0x8fdcff), draw.Hex(0xd3bfff)
	t.Glow = draw.Fade(white, 0.1)
	return t
}
