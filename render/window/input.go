package window

import (
	"strings"

	"github.com/hajimehoshi/ebiten/v2"
	"github.com/hajimehoshi/ebiten/v2/inpututil"

	"steadyneedle/render/app"
	"steadyneedle/render/input"
)

// devices makes events of what ebiten's devices do.
type devices struct {
	keys    []ebiten.Key
	chars   []rune
	touches []ebiten.TouchID
	fingers []ebiten.TouchID // that are down, each under its number less one; free: −1
	x, y    int              // where the pointer was
	pads    pads
}

// names of keys that the interface knows otherwise.
var names = map[ebiten.Key]string{
	ebiten.KeyArrowUp: "Up", ebiten.KeyArrowDown: "Down", ebiten.KeyArrowLeft: "Left", ebiten.KeyArrowRight: "Right",
	ebiten.KeyNumpadEnter: "Enter",
}

func name(k ebiten.Key) string {
	if n, ok := names[k]; ok {
		return n
	}
	return strings.TrimPrefix(strings.TrimPrefix(k.String(), "Digit"), "Numpad")
}

// repeats reports whether a key held for so many ticks acts again: after 0.4 s, then 20 times a second.
func repeats(ticks int) bool { return ticks > 24 && ticks%3 == 0 }

func repeatable(n string) bool {
	switch n {
	case "Up", "Down", "Left", "Right", "PageUp", "PageDown", "Tab", "Backspace":
		return true
	}
	return false
}

// feed gives the interface everything that happened since the last update.
func (d *devices) feed(a *app.App) {
	d.chars = ebiten.AppendInputChars(d.chars[:0])
	for _, r := range d.chars {
		a.Input(input.Event{Kind: input.Char, Rune: r})
	}
	if !d.touch(a) {
		d.pointer(a)
	}
	d.keyboard(a)
	d.pads.feed(a)
}

func (d *devices) keyboard(a *app.App) {
	e := input.Event{Kind: input.KeyDown, Shift: ebiten.IsKeyPressed(ebiten.KeyShift), Ctrl: ebiten.IsKeyPressed(ebiten.KeyControl)}
	d.keys = inpututil.AppendPressedKeys(d.keys[:0])
	for _, k := range d.keys {
		e.Key = name(k)
		if n := inpututil.KeyPressDuration(k); n == 1 || repeatable(e.Key) && repeats(n) {
			a.Input(e)
		}
	}
	e.Kind = input.KeyUp
	d.keys = inpututil.AppendJustReleasedKeys(d.keys[:0])
	for _, k := range d.keys {
		e.Key = name(k)
		a.Input(e)
	}
}

func (d *devices) pointer(a *app.App) {
	x, y := ebiten.CursorPosition()
	e := input.Event{Kind: input.Move, Finger: input.Mouse, X: float64(x), Y: float64(y)}
	switch {
	case inpututil.IsMouseButtonJustPressed(ebiten.MouseButtonLeft):
		e.Kind = input.Press
	case inpututil.IsMouseButtonJustReleased(ebiten.MouseButtonLeft):
		e.Kind = input.Release
	}
	if e.Kind != input.Move || x != d.x || y != d.y {
		a.Input(e)
	}
	d.x, d.y = x, y
	if _, dy := ebiten.Wheel(); dy != 0 {
		a.Input(input.Event{Kind: input.Wheel, Notches: dy, Shift: ebiten.IsKeyPressed(ebiten.KeyShift)})
	}
}

// touch follows every finger on a touch screen, which only a browser has, and reports whether there are
// any: the pointer rests meanwhile.
func (d *devices) touch(a *app.App) bool {
	busy := false
	for i, id := range d.fingers {
		if id < 0 {
			continue
		}
		busy = true
		e := input.Event{Kind: input.Move, Finger: i + 1}
		x, y := ebiten.TouchPosition(id)
		if inpututil.IsTouchJustReleased(id) {
			e.Kind = input.Release
			x, y = inpututil.TouchPositionInPreviousTick(id)
			d.fingers[i] = -1
		}
		e.X, e.Y = float64(x), float64(y)
		a.Input(e)
	}
	d.touches = inpututil.AppendJustPressedTouchIDs(d.touches[:0])
	for _, id := range d.touches {
		busy = true
		x, y := ebiten.TouchPosition(id)
		a.Input(input.Event{Kind: input.Press, Finger: d.finger(id) + 1, X: float64(x), Y: float64(y)})
	}
	return busy
}

// finger gives a touch the lowest free number.
func (d *devices) finger(id ebiten.TouchID) int {
	for i, old := range d.fingers {
		if old < 0 {
			d.fingers[i] = id
			return i
		}
	}
	d.fingers = append(d.fingers, id)
	return len(d.fingers) - 1
}
