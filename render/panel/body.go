package panel

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// body is the side of the apparatus that the plate is set into, where the window is larger than the plate:
// painted metal with a stripe above, a running board of tread plate below.
func (p *Panel) body(cv *draw.Canvas, th *theme.Theme) {
	r := p.room
	over, under := p.box.Y-r.Y, r.Bottom()-p.box.Bottom()
	if max(over, under, p.box.X-r.X) < 16 { // a rim would be no body
		return
	}
	paint := draw.Darker(th.Grip, 0.12)
	cv.Fill(draw.Round(r, 10), draw.Down(r, draw.Lighter(paint, 0.06), paint, draw.Darker(paint, 0.35)))
	if over > 40 {
		y := r.Y + over*0.46
		gold := draw.Mix(th.Hose, paint, 0.3)
		stripe := draw.Rect{X: r.X, Y: y - 9, W: r.W, H: 18}
		cv.Fill(draw.Box(stripe), draw.Down(stripe, th.Label, draw.Darker(th.Label, 0.16)))
		for _, edge := range []float64{stripe.Y - 5, stripe.Bottom() + 3} {
			cv.Fill(draw.Box(draw.Rect{X: r.X, Y: edge, W: r.W, H: 2}), draw.Solid(gold))
		}
	}
	if under > 24 {
		p.board(cv, th, draw.Rect{X: r.X, Y: p.box.Bottom() + 12, W: r.W, H: under - 12})
	}
	seat := p.box.Inset(-5)
	cv.Fill(draw.Round(seat, 14), draw.Solid(draw.Darker(paint, 0.7)))
	cv.Fill(draw.Frame(seat, 14, 1.5), draw.Down(seat, draw.Fade(th.Shade, 0.7), draw.Fade(th.SteelHi, 0.55)))
	cv.Fill(draw.Frame(r, 10, 1.5), draw.Solid(draw.Fade(th.Shade, 0.6)))
}

// board is the running board that the operator may stand on: tread plate with its raised lozenges.
func (p *Panel) board(cv *draw.Canvas, th *theme.Theme, r draw.Rect) {
	steel := draw.Mix(th.SteelLo, th.PlateLo, 0.35)
	cv.Shadow(draw.Box(r), 0, -2, 8, draw.Fade(th.Shade, 0.6))
	cv.Fill(draw.Box(r), draw.Down(r, draw.Lighter(steel, 0.3), steel, draw.Darker(steel, 0.4)))
	cv.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Y, W: r.W, H: 2}), draw.Solid(draw.Fade(th.SteelHi, 0.7)))
	if th.Plain {
		return
	}
	const step = 22.0
	rise, fall := new(draw.Path), new(draw.Path)
	for row := 0; r.Y+14+float64(row)*step/2 < r.Bottom()-8; row++ {
		for x := r.X + 12 + float64(row%2)*step/2; x < r.Right()-8; x += step {
			at := draw.Pt(x, r.Y+14+float64(row)*step/2)
			into, bearing := rise, 45.0
			if row%2 == 1 {
				into, bearing = fall, -45
			}
			into.Join(draw.Segment(at.Polar(5.5, bearing), at.Polar(-5.5, bearing), 2.6))
		}
	}
	for _, lozenges := range []*draw.Path{rise, fall} {
		cv.Fill(lozenges.Moved(draw.Pt(0.8, 1.2)), draw.Solid(draw.Fade(th.Shade, 0.55)))
		cv.Fill(lozenges, draw.Solid(draw.Lighter(steel, 0.34)))
	}
}
