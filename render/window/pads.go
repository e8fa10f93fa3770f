package window

import (
	"github.com/hajimehoshi/ebiten/v2"
	"github.com/hajimehoshi/ebiten/v2/inpututil"

	"steadyneedle/render/app"
	"steadyneedle/render/input"
)

// perPad is how many axes and buttons a game-pad has at most: the second one's count from here.
const perPad = 16

// pads makes events of game-pads' axes and buttons, numbered in the order in which they were found.
type pads struct {
	ids  []ebiten.GamepadID
	axes map[int]float64 // readings told last
}

func (p *pads) feed(a *app.App) {
	p.ids = ebiten.AppendGamepadIDs(p.ids[:0])
	for i, id := range p.ids {
		first := i * perPad
		for n := range min(perPad, ebiten.GamepadAxisCount(id)) {
			v := ebiten.GamepadAxisValue(id, n)
			if old, ok := p.axes[first+n]; ok && old == v {
				continue
			}
			if p.axes == nil {
				p.axes = map[int]float64{}
			}
			p.axes[first+n] = v
			a.Input(input.Event{Kind: input.Axis, Number: first + n, Value: v})
		}
		for n := range min(perPad, ebiten.GamepadButtonCount(id)) {
			b := ebiten.GamepadButton(n)
			switch {
			case inpututil.IsGamepadButtonJustPressed(id, b):
				a.Input(input.Event{Kind: input.Button, Number: first + n, Value: 1})
			case inpututil.IsGamepadButtonJustReleased(id, b):
				a.Input(input.Event{Kind: input.Button, Number: first + n})
			}
		}
	}
}
