package main

import (
	"image/png"
	"os"
	"steadyneedle/render/dial"
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

func main() {
	for _, th := range []*theme.Theme{&theme.Day, &theme.Night} {
		sh := stage.NewShelf()
		var f stage.Frame
		f.Reset(1)
		type g struct {
			x, y, r, v float64
			s          *dial.Scale
		}
		gs := []g{{120, 120, 106, 62, dial.Compound(30, 300)}, {370, 140, 124, 134, dial.Even(0, 400, 5, 10, 50, "psi")},
			{610, 120, 90, 1523, dial.Even(0, 2500, 50, 100, 500, "rpm × 100")}, {790, 110, 74, 108, dial.Even(0, 400, 10, 50, 100, "psi")},
			{950, 110, 74, 0, dial.Even(0, 400, 10, 50, 100, "psi")}, }
fan1:=dial.Fan{draw.Rect{1060,60,104,98},"Oil psi"}; fs1:=dial.FanScale(0,100,10,50,50,"psi")
fan2:=dial.Fan{draw.Rect{1170,60,104,98},"Coolant °F"}; fs2:=dial.FanScale(100,260,10,50,80,"°F")
fan3:=dial.Fan{draw.Rect{1060,170,104,98},"Volts"}; fs3:=dial.FanScale(10,16,0.5,1,2,"V")

		gs[2].s.Label = func(v float64) string { return []string{"0", "5", "10", "15", "20", "25"}[int(v/500)] }
		bg := sh.Get("bg", draw.Rect{W: 1280, H: 300}, func(c *draw.Canvas) {
			r := draw.Rect{W: 1280, H: 300}
			c.Fill(draw.Box(r), draw.Down(r, th.PlateHi, th.PlateLo))
			c.Grain(r, 0.05)
			fan1.Draw(c,th,fs1);fan2.Draw(c,th,fs2);fan3.Draw(c,th,fs3)
			for _, q := range gs {
				dial.Draw(c, th, draw.Pt(q.x, q.y), dial.SizeOf(q.r), q.s)
			}
		})
		f.Put(bg, draw.Point{})
	fan1.Needle(sh,&f,th,fs1,55); fan2.Needle(sh,&f,th,fs2,190); fan3.Needle(sh,&f,th,fs3,13.8)
		for _, q := range gs {
			dial.Needle(sh, &f, th, draw.Pt(q.x, q.y), dial.SizeOf(q.r), q.s, q.v)
		}
		o, _ := os.Create("/tmp/try-" + th.Name + ".png")
		png.Encode(o, stage.Compose(&f, 1280, 300))
		o.Close()
	}
}
