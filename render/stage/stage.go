package stage

import (
	"image"
	"math"

	"steadyneedle/render/draw"
)

// Art is a picture that does not change after it has been made. Its pointer is its identity.
type Art struct {
	Img    *image.RGBA
	Pivot  draw.Point  // px: the point about which sprites turn
	Size   draw.Point  // units
	Words  []draw.Word // text in it, in units about where it is placed
	Cards  []draw.Card // what text may lie on, likewise
	Origin draw.Point  // units from where it is placed to its top left corner
}

// Sprite is a piece of art at a place, in pixels: its top left corner, or its pivot where it is turned.
type Sprite struct {
	Art    *Art
	X, Y   float64
	Turned bool
	Angle  float64 // degrees, clockwise
	Alpha  float64 // 1 opaque
}

// Frame is what stands on the screen, back to front.
type Frame struct {
	Scale   float64 // px per unit
	Sprites []Sprite
}

// Reset empties the frame for the next picture.
func (f *Frame) Reset(scale float64) {
	f.Scale = scale
	f.Sprites = f.Sprites[:0]
}

// Put places art at a point in units, on whole pixels.
func (f *Frame) Put(a *Art, at draw.Point) { f.Thin(a, at, 1) }

// Thin places art at a point in units, with an opacity.
func (f *Frame) Thin(a *Art, at draw.Point, alpha float64) {
	at = at.Add(a.Origin)
	f.Sprites = append(f.Sprites, Sprite{
		Art: a, X: math.Round(at.X * f.Scale), Y: math.Round(at.Y * f.Scale), Alpha: alpha,
	})
}

// Turn places art with its pivot at a point in units, turned by an angle in degrees that is rounded to
// what an eye can tell.
func (f *Frame) Turn(a *Art, at draw.Point, angle float64) {
	f.Sprites = append(f.Sprites, Sprite{
		Art: a, X: at.X * f.Scale, Y: at.Y * f.Scale,
		Turned: true, Angle: math.Round(angle*10) / 10, Alpha: 1,
	})
}

// Copy makes f equal to g.
func (f *Frame) Copy(g *Frame) {
	f.Scale = g.Scale
	f.Sprites = append(f.Sprites[:0], g.Sprites...)
}
