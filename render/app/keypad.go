package app

import (
	"steadyneedle/render/draw"
)

// keypad is the row of buttons by which a number is entered with the pointer alone.
var keypad = [...]struct{ face, name string }{
	{"1", "One"}, {"2", "Two"}, {"3", "Three"}, {"4", "Four"}, {"5", "Five"}, {"6", "Six"}, {"7", "Seven"}, {"8", "Eight"}, {"9", "Nine"}, {"0", "Zero"},
	{".", "Decimal point"}, {"−", "Minus"}, {"C", "Clear the number"},
}

const padKeyW = 27.0

func (t *talk) padBox(a *App, i int) draw.Rect {
	n := t.numberBox(a)
	return draw.Rect{X: n.Right() + 10 + float64(i)*padKeyW, Y: n.Y, W: padKeyW - 2, H: n.H}
}

func (t *talk) padItems(a *App) []Item {
	var items []Item
	for i, k := range keypad {
		items = append(items, Item{Key: "digit-" + k.face, Box: t.padBox(a, i), Label: k.name, Help: "Enters the number that goes with a phrase.", Do: func() {
			switch k.face {
			case "C":
				t.number = ""
			case "−":
				t.typed(a, '-')
			default:
				t.typed(a, rune(k.face[0]))
			}
		}})
	}
	return items
}

func (t *talk) putPad(a *App) {
	for i, k := range keypad {
		a.button(t.padBox(a, i), k.face, false)
	}
}
