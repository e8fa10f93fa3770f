package theme

import "steadyneedle/render/draw"

// Night is the panel after dark with its lights on: the plate sinks back, dials and labels glow warm.
var Night = night()

func night() Theme {
	t := Day
	t.Name = "night"
	t.Room, t.Strip, t.StripEdge = draw.Hex(0x050709), draw.Hex(0x080b0d), draw.Hex(0x1b2126)
	t.PlateHi, t.PlateLo, t.Well = draw.Hex(0x1d2327), draw.Hex(0x13181b), draw.Hex(0x0c1012)
	t.Edge = draw.Hex(0x3a434a)
	t.Text, t.Soft, t.Heading = draw.Hex(0xe2dccb), draw.Hex(0xa3abae), draw.Hex(0x98a2a6)
	t.Card, t.CardHi, t.Rule = draw.Hex(0x12171a), draw.Hex(0x1c2327), draw.Hex(0x2b343a)
	t.CardText, t.CardSoft = draw.Hex(0xe2dccb), draw.Hex(0xa0a9ad)
	t.Face, t.FaceEdge = draw.Hex(0xe9c98b), draw.Hex(0xb98f4d)
	t.Ink, t.InkSoft, t.Lance = draw.Hex(0x161108), draw.Hex(0x372b16), draw.Hex(0x8c1204)
	t.Warn = draw.Hex(0x7c2c04)
	t.BezelHi, t.BezelLo = draw.Hex(0x7d868b), draw.Hex(0x2b3236)
	t.LabelBack, t.Label = draw.Hex(0x07090b), draw.Hex(0xf0dfb6)
	t.Groove, t.Dry, t.Water = draw.Hex(0x050708), draw.Hex(0x57626a), draw.Hex(0x3a93c8)
	t.Steel, t.SteelHi, t.SteelLo = draw.Hex(0x6d767b), draw.Hex(0xaab2b5), draw.Hex(0x333a3f)
	t.Grip, t.GripHi = draw.Hex(0x8b1d15), draw.Hex(0xb84338)
	t.Accent = draw.Hex(0xe2dccb)
	t.Grass, t.Road, t.Curb = draw.Hex(0x16211b), draw.Hex(0x1f2529), draw.Hex(0x7a8386)
	t.Building = draw.Hex(0x352c27)
	t.Roof, t.Leaf, t.Walk = draw.Hex(0x2c2723), draw.Hex(0x1f3026), draw.Hex(0x2f3639)
	t.Glow = draw.Fade(draw.Hex(0xffd796), 0.24)
	return t
}

// Dark is the panel after dark with its lights off: what the street lamps leave of it, cold and dim, and
// still to be read by one who has to.
var Dark = dark()

func dark() Theme {
	t := Night
	t.Name = "dark"
	t.PlateHi, t.PlateLo, t.Well = draw.Hex(0x0e1215), draw.Hex(0x090c0e), draw.Hex(0x05080a)
	t.Edge = draw.Hex(0x232a2f)
	t.Text, t.Soft, t.Heading = draw.Hex(0xa9b6bd), draw.Hex(0x7f8b92), draw.Hex(0x78848b)
	t.Face, t.FaceEdge = draw.Hex(0x8e9ca6), draw.Hex(0x76848d)
	t.Ink, t.InkSoft = draw.Hex(0x05070a), draw.Hex(0x0b0f12)
	t.Needle, t.Lance, t.Warn = draw.Hex(0x05070a), draw.Hex(0x3d0600), draw.Hex(0x320f00)
	t.BezelHi, t.BezelLo = draw.Hex(0x5b666d), draw.Hex(0x1b2125)
	t.LabelBack, t.Label = draw.Hex(0x030405), draw.Hex(0x93a0a7)
	t.Steel, t.SteelHi, t.SteelLo = draw.Hex(0x434d53), draw.Hex(0x6f7b82), draw.Hex(0x20272b)
	t.Grip, t.GripHi = draw.Hex(0x4d1712), draw.Hex(0x75302a)
	t.Dry, t.Water = draw.Hex(0x525e66), draw.Hex(0x3a80ab)
	t.Glow = draw.Color{}
	return t
}
