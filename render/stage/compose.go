package stage

import (
	"image"
	"image/color"
	stddraw "image/draw"
	"math"

	xdraw "golang.org/x/image/draw"
	"golang.org/x/image/math/f64"
)

// Compose draws a frame on the CPU, w by h pixels.
func Compose(f *Frame, w, h int) *image.RGBA {
	dst := image.NewRGBA(image.Rect(0, 0, w, h))
	stddraw.Draw(dst, dst.Bounds(), image.Black, image.Point{}, stddraw.Src)
	for i := range f.Sprites {
		compose(dst, &f.Sprites[i])
	}
	return dst
}

func compose(dst *image.RGBA, s *Sprite) {
	src := s.Art.Img
	if s.Turned {
		sin, cos := math.Sincos(s.Angle * math.Pi / 180)
		p := s.Art.Pivot
		m := f64.Aff3{
			cos, -sin, s.X - cos*p.X + sin*p.Y,
			sin, cos, s.Y - sin*p.X - cos*p.Y,
		}
		xdraw.BiLinear.Transform(dst, m, src, src.Bounds(), xdraw.Over, nil)
		return
	}
	r := src.Bounds().Add(image.Pt(int(s.X), int(s.Y)))
	if s.Alpha >= 1 {
		stddraw.Draw(dst, r, src, image.Point{}, stddraw.Over)
		return
	}
	mask := image.NewUniform(color.Alpha{A: uint8(max(0, s.Alpha)*255 + 0.5)})
	stddraw.DrawMask(dst, r, src, image.Point{}, mask, image.Point{}, stddraw.Over)
}
