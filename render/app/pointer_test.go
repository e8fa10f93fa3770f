package app

import "steadyneedle/render/input"

// The pointer's events in short, as tests make them.

func (a *App) PointTo(x, y float64) { a.Input(input.Event{Kind: input.Move, X: x, Y: y}) }
func (a *App) Press(x, y float64)   { a.Input(input.Event{Kind: input.Press, X: x, Y: y}) }
func (a *App) Release(x, y float64) { a.Input(input.Event{Kind: input.Release, X: x, Y: y}) }

func (a *App) Scroll(notches float64, fine bool) {
	a.Input(input.Event{Kind: input.Wheel, Notches: notches, Shift: fine})
}
