package theme

import "steadyneedle/render/draw"

// Theme is one set of colors.
type Theme struct {
	Name string

	Room, Strip, StripEdge  draw.Color // behind everything; the strips above and below
	PlateHi, PlateLo, Well  draw.Color // the panel's plate, top and bottom; recessed fields
	Edge, Shade             draw.Color // light on an edge; shadow
	Text, Soft, Heading     draw.Color // on room, strip and plate
	Card, CardHi, CardText  draw.Color
	CardSoft, Rule          draw.Color
	Face, FaceEdge, Ink     draw.Color // dial
	InkSoft, Needle, Lance  draw.Color
	Warn                    draw.Color // range marks on a dial
	BezelHi, BezelLo        draw.Color
	LabelBack, Label        draw.Color
	Groove, Dry, Water      draw.Color // the engraved way of the water
	Steel, SteelHi, SteelLo draw.Color
	Grip, GripHi            draw.Color // painted handwheels
	Focus, FocusDark        draw.Color
	Hover                   draw.Color
	Accent, AccentText      draw.Color // the chosen thing
	Say                     draw.Color // who speaks
	Green, Amber, Red       draw.Color // lamps, lit
	Unlit                   draw.Color
	Good, Bad, Caution      draw.Color // words on sheets
	Grass, Road, Curb       draw.Color // street plan
	Building, BuildingText  draw.Color
	Rig, Hose               draw.Color
	Supply, LargeSupply     draw.Color // supply hose of 4 in, and larger
	Roof, Leaf, Walk        draw.Color // street plan: roofs, trees, sidewalk
	Glow                    draw.Color // what the panel's lights throw on the plate while they burn
	Plain                   bool       // no grain, no shadows: edges alone part things
}

// Day is the panel in daylight.
var Day = Theme{
	Name: "day",
	Room: draw.Hex(0x0f1316), Strip: draw.Hex(0x12171b), StripEdge: draw.Hex(0x2a3138),
	PlateHi: draw.Hex(0x434c53), PlateLo: draw.Hex(0x30383e), Well: draw.Hex(0x232a2f),
	Edge: draw.Hex(0x6c7780), Shade: draw.Hex(0x06080a),
	Text: draw.Hex(0xf3efe4), Soft: draw.Hex(0xc3cbd0), Heading: draw.Hex(0xb9c3c9),
	Card: draw.Hex(0x20272c), CardHi: draw.Hex(0x2c353b), CardText: draw.Hex(0xf3efe4),
	CardSoft: draw.Hex(0xb4bec4), Rule: draw.Hex(0x3c464d),
	Face: draw.Hex(0xf7f2e4), FaceEdge: draw.Hex(0xe2dac6), Ink: draw.Hex(0x14181a),
	InkSoft: draw.Hex(0x4b5054), Needle: draw.Hex(0x15191b), Lance: draw.Hex(0xc02a12),
	Warn:    draw.Hex(0xc1531c),
	BezelHi: draw.Hex(0xd5d9da), BezelLo: draw.Hex(0x5a6268),
	LabelBack: draw.Hex(0x101417), Label: draw.Hex(0xf6f2e6),
	Groove: draw.Hex(0x12171a), Dry: draw.Hex(0x5b666d), Water: draw.Hex(0x3fa0d8),
	Steel: draw.Hex(0xa9b1b5), SteelHi: draw.Hex(0xeef1f1), SteelLo: draw.Hex(0x586168),
	Grip: draw.Hex(0xb3261c), GripHi: draw.Hex(0xe2574a),
	Focus: draw.Hex(0x7cf0dc), FocusDark: draw.Hex(0x07201c), Hover: draw.Hex(0xdfe7ea),
	Accent: draw.Hex(0xf3efe4), AccentText: draw.Hex(0x14181a),
	Say:   draw.Hex(0x7fc8f2),
	Green: draw.Hex(0x3be584), Amber: draw.Hex(0xffb52b), Red: draw.Hex(0xff5a4a), Unlit: draw.Hex(0x2b3134),
	Good: draw.Hex(0x5fe09a), Bad: draw.Hex(0xff8a7a), Caution: draw.Hex(0xffc65c),
	Grass: draw.Hex(0x2f4036), Road: draw.Hex(0x3a4146), Curb: draw.Hex(0x9aa3a6),
	Building: draw.Hex(0x5a4b43), BuildingText: draw.Hex(0xf3efe4),
	Rig: draw.Hex(0xb3261c), Hose: draw.Hex(0xf2c21a), Supply: draw.Hex(0x6fc2ef), LargeSupply: draw.Hex(0xb79bf2),
	Roof: draw.Hex(0x5b4f49), Leaf: draw.Hex(0x45644d), Walk: draw.Hex(0x5c6467),
	Glow: draw.Fade(draw.Hex(0xffe9c0), 0.16),
}

// All are the themes there are.
var All = []*Theme{&Day, &Night, &Dark, &HighContrast}

// Plate is the color of one discharge's label: its back and its letters.
type Plate struct {
	Name       string
	Back, Text draw.Color
}

// Plates are the label colors of discharges, from the first; words and place say the same.
var Plates = []Plate{
	{"yellow", draw.Hex(0xf2c21a), draw.Hex(0x14181a)},
	{"white", draw.Hex(0xf4f3ee), draw.Hex(0x14181a)},
	{"blue", draw.Hex(0x1d5ba3), draw.Hex(0xffffff)},
	{"black", draw.Hex(0x101417), draw.Hex(0xffffff)},
	{"green", draw.Hex(0x14693a), draw.Hex(0xffffff)},
	{"orange", draw.Hex(0xee7a1b), draw.Hex(0x14181a)},
}

// PlateOf is the label of a color's name; black where the name is not known.
func PlateOf(color string) Plate {
	for _, p := range Plates {
		if p.Name == color {
			return p
		}
	}
	return Plates[3]
}

// Series are the colors of plotted lines (Okabe and Ito's palette, which stays distinct for color-blind
// eyes), for dark ground.
var Series = []draw.Color{draw.Hex(0xe69f00), draw.Hex(0x56b4e9), draw.Hex(0x009e73), draw.Hex(0xcc79a7)}
