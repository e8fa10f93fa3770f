package dial

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// The needle is broad near the hub and runs out in a fine bright lance that crosses the ring of numbers
// without hiding one.

// Needle puts the needle of a dial at c, showing v.
func Needle(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, c draw.Point, z Size, s *Scale, v float64) {
	angle := s.Bearing(s.Read(v))
	key := fmt.Sprintf("needle/%s/%v", th.Name, z.R)
	box := draw.Around(draw.Point{}, z.R*0.36, z.R*2)
	shadow := sh.Get(key+"/shadow", box, func(cv *draw.Canvas) {
		for _, p := range needle(z) {
			cv.Shadow(p, 0, 0, max(2, z.R*0.03), draw.Fade(th.Shade, 0.3))
		}
	})
	body := sh.Get(key, box, func(cv *draw.Canvas) { paintNeedle(cv, th, z) })
	hub := sh.Get(key+"/hub", draw.Around(draw.Point{}, z.R*0.4, z.R*0.4), func(cv *draw.Canvas) { paintHub(cv, th, z) })
	drop := max(1.5, z.R*0.022)
	f.Turn(shadow, c.Add(draw.Pt(drop*0.5, drop)), angle)
	f.Turn(body, c, angle)
	f.Put(hub, c)
}

// needle is the outline of the blade, the lance and the tail.
func needle(z Size) [3]*draw.Path {
	tip := z.rim() - z.Major*0.75
	root := z.rim() - z.Major - z.R*0.03 - z.Numeral*1.5
	root = max(root, z.R*0.3)
	w := max(3.2, z.R*0.05)
	lance := max(1.25, z.R*0.0125)
	blade := draw.Poly(draw.Pt(-w, 0), draw.Pt(-lance, -root), draw.Pt(lance, -root), draw.Pt(w, 0))
	point := draw.Poly(draw.Pt(-lance, -root+1), draw.Pt(-lance*0.8, -tip+3), draw.Pt(0, -tip), draw.Pt(lance*0.8, -tip+3), draw.Pt(lance, -root+1))
	tail := draw.Poly(draw.Pt(-w*0.8, 0), draw.Pt(w*0.8, 0), draw.Pt(w*1.15, z.R*0.24), draw.Pt(-w*1.15, z.R*0.24))
	return [3]*draw.Path{blade, point, tail}
}

func paintNeedle(cv *draw.Canvas, th *theme.Theme, z Size) {
	p := needle(z)
	cv.Fill(p[2], draw.Solid(th.Needle))
	cv.Fill(p[0], draw.Solid(th.Needle))
	cv.Fill(p[1], draw.Solid(th.Lance))
}

func paintHub(cv *draw.Canvas, th *theme.Theme, z Size) {
	r := max(5, z.R*0.095)
	o := draw.Point{}
	cv.Shadow(draw.Circle(o, r), 0, 1, max(2, r*0.4), draw.Fade(th.Shade, 0.5))
	cv.Fill(draw.Circle(o, r), draw.Solid(draw.Darker(th.Needle, 0.2)))
	cv.Fill(draw.Circle(o, r-1), draw.Linear{From: draw.Pt(-r, -r), To: draw.Pt(r, r),
		Stops: draw.Even(draw.Lighter(th.Needle, 0.35), th.Needle, draw.Lighter(th.Needle, 0.12))})
	cv.Fill(draw.Circle(o, r*0.42), draw.Conic{Center: o, Stops: draw.Even(th.SteelHi, th.SteelLo, th.SteelHi, th.SteelLo, th.SteelHi)})
}
