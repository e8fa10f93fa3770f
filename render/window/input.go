package window

import (
	"strings"

	"github.com/hajimehoshi/ebiten/v2"
	"github.com/hajimehoshi/ebiten/v2/inpututil"

	"steadyneedle/render/app"
)

// input is the one layer between ebiten's devices and the interface.
type input struct {
	keys  []ebiten.Key
	chars []rune
	touch []ebiten.TouchID
	held  ebiten.TouchID
	down  bool // a finger is down
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
func (in *input) feed(a *app.App) {
	in.chars = ebiten.AppendInputChars(in.chars[:0])
	for _, r := range in.chars {
		a.OnChar(r)
	}
	in.pointer(a)
	shift, ctrl := ebiten.IsKeyPressed(ebiten.KeyShift), ebiten.IsKeyPressed(ebiten.KeyControl)
	in.keys = inpututil.AppendPressedKeys(in.keys[:0])
	for _, k := range in.keys {
		n := name(k)
		d := inpututil.KeyPressDuration(k)
		if d == 1 || repeatable(n) && repeats(d) {
			a.OnKey(app.Key{Name: n, Down: true, Shift: shift, Ctrl: ctrl})
		}
	}
	in.keys = inpututil.AppendJustReleasedKeys(in.keys[:0])
	for _, k := range in.keys {
		a.OnKey(app.Key{Name: name(k), Shift: shift, Ctrl: ctrl})
	}
}

func (in *input) pointer(a *app.App) {
	if in.fingers(a) {
		return
	}
	x, y := ebiten.CursorPosition()
	px, py := float64(x), float64(y)
	switch {
	case inpututil.IsMouseButtonJustPressed(ebiten.MouseButtonLeft):
		a.Press(px, py)
	case inpututil.IsMouseButtonJustReleased(ebiten.MouseButtonLeft):
		a.Release(px, py)
	default:
		a.PointTo(px, py)
	}
	if _, dy := ebiten.Wheel(); dy != 0 {
		a.Scroll(dy, ebiten.IsKeyPressed(ebiten.KeyShift))
	}
}

// fingers lets the first finger be the pointer, in a browser.
func (in *input) fingers(a *app.App) bool {
	in.touch = inpututil.AppendJustPressedTouchIDs(in.touch[:0])
	if !in.down && len(in.touch) > 0 {
		in.down, in.held = true, in.touch[0]
		x, y := ebiten.TouchPosition(in.held)
		a.PointTo(float64(x), float64(y))
		a.Press(float64(x), float64(y))
		return true
	}
	if !in.down {
		return false
	}
	if inpututil.IsTouchJustReleased(in.held) {
		x, y := inpututil.TouchPositionInPreviousTick(in.held)
		a.Release(float64(x), float64(y))
		in.down = false
		return true
	}
	x, y := ebiten.TouchPosition(in.held)
	a.PointTo(float64(x), float64(y))
	return true
}
