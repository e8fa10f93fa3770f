package theme

import "steadyneedle/render/draw"

// Paper is what is shown to a class. The sheets are light in every theme, for a projector washes a dark one
// out; colors of lines are Okabe and Ito's, darkened until they stand 3:1 against the sheet.
var Paper = struct {
	Desk, Sheet, Plot, Row draw.Color // behind the sheets; a sheet; a plot's field; a row on a sheet
	Ink, Soft, Rule        draw.Color // words; quieter words; fine lines
	Board, Chalk, Alarm    draw.Color // captions: light on dark; what is simulated
	Cover                  draw.Color // over what a class must not see yet
	Good, Bad              draw.Color // a claim that holds, one that doesn't; also a caution
	Mark, Chosen           draw.Color // the working point; what is chosen
	Lines                  []draw.Color
}{
	Desk: draw.Hex(0xdcd8cd), Sheet: draw.Hex(0xf5f2ea), Plot: draw.Hex(0xfcfbf7), Row: draw.Hex(0xe3dfd3),
	Ink: draw.Hex(0x15181b), Soft: draw.Hex(0x4a5157), Rule: draw.Hex(0xcfcbc0),
	Board: draw.Hex(0x15181b), Chalk: draw.Hex(0xf5f2ea), Alarm: draw.Hex(0xffc65c),
	Cover: draw.Hex(0x23292e),
	Good:  draw.Hex(0x00724f), Bad: draw.Hex(0xa33f00),
	Mark: draw.Hex(0xb04a00), Chosen: draw.Hex(0x0063a0),
	Lines: []draw.Color{draw.Hex(0x15181b), draw.Hex(0x0063a0), draw.Hex(0x00724f), draw.Hex(0xb04a00), draw.Hex(0x9a3d78)},
}
