package draw

import "testing"

// TestZoom: what is drawn zoomed is the same as drawn larger, on a whole canvas and on a band of it.
func TestZoom(t *testing.T) {
	r := Rect{W: 60, H: 40}
	paint := func(c *Canvas, k float64) {
		c.Fill(Circle(Pt(10*k, 9*k), 6*k), Solid(Hex(0xffffff)))
		c.Text(Pt(4*k, 18*k), Left, Style{Size: 10 * k, Color: Hex(0xffffff)}, "2½")
	}
	large, zoomed := New(r, 2), New(r, 2)
	paint(large, 2)
	zoomed.Zoom(2, func() { paint(zoomed, 1) })
	band := Band(r, 2, 20, 60)
	band.Zoom(2, func() { paint(band, 1) })
	for y := range 80 {
		for x := range 120 {
			want := large.Img.RGBAAt(x, y)
			if got := zoomed.Img.RGBAAt(x, y); got != want {
				t.Fatalf("pixel %d, %d is %v, larger it is %v", x, y, got, want)
			}
			if y >= 20 && y < 60 {
				if got := band.Img.RGBAAt(x, y-20); max(got.R, want.R)-min(got.R, want.R) > 2 {
					t.Fatalf("pixel %d, %d of the band is %v, want %v", x, y, got, want)
				}
			}
		}
	}
	if a, b := large.Words[0].Box, zoomed.Words[0].Box; a != b {
		t.Errorf("the words stand at %v, larger they stand at %v", b, a)
	}
	if zoomed.Scale != 2 || zoomed.Origin != large.Origin {
		t.Error("the canvas stays zoomed")
	}
}
