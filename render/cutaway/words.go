package cutaway

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
)

// words puts the numbers that the back row reads, each beside its part.
func (d *Drawing) words(sh *stage.Shelf, f *stage.Frame, s *State) {
	big := draw.Style{Size: d.text, Weight: draw.Bold, Color: Ink}
	small := draw.Style{Size: d.text * 0.75, Color: Soft}
	say := func(x, y float64, a draw.Align, head, under string, col draw.Color) {
		p := d.at(draw.Pt(x, y))
		st := big
		st.Color = col
		sh.Text(f, p, a, st, head)
		sh.Text(f, p.Add(draw.Pt(0, d.text*0.95)), a, small, under)
	}
	intake := Ink
	if s.IntakePSI < 0 && !s.Draft {
		intake = warm
	}
	line := d.text / d.k
	say(6, suctionY+wide/2+wall+line+2, draw.Left, pressure(s.IntakePSI), fmt.Sprintf("%.0f gpm in", s.IntakeGPM+s.TankToPumpGPM), intake)
	say(sheetW-8, mainY-wide/2-wall-1.05*line-4, draw.Right, fmt.Sprintf("discharge %.0f psi", s.DischargePSI), fmt.Sprintf("%.0f gpm to the lines", s.DischargeGPM), Ink)
	say(tankBox.X+tankBox.W+wall+12, tankBox.Y+40, draw.Left, fmt.Sprintf("%.0f gal", s.TankGal), "tank", Ink)
	d.reliefWords(say, s)
	d.eyeWords(say, s)
}

func (d *Drawing) reliefWords(say func(x, y float64, a draw.Align, head, under string, col draw.Color), s *State) {
	x, y := barrel.X+barrel.W+wall+12, barrel.Y+60
	switch {
	case s.Governor:
		say(x, y, draw.Left, "governor", "no relief valve", Ink)
	case s.ReliefGPM >= 1:
		say(x, y, draw.Left, fmt.Sprintf("%.0f gpm", s.ReliefGPM), fmt.Sprintf("relief, set %.0f", s.ReliefSetPSI), warm)
	default:
		say(x, y, draw.Left, "relief shut", fmt.Sprintf("set %.0f", s.ReliefSetPSI), Ink)
	}
}

func (d *Drawing) eyeWords(say func(x, y float64, a draw.Align, head, under string, col draw.Color), s *State) {
	col, head := Ink, fmt.Sprintf("%.0f rpm", s.ShaftRPM)
	under := fmt.Sprintf("suction head %.0f ft, needs %.0f", s.NPSHa, s.NPSHr)
	switch {
	case s.air() > 0.05:
		col, head = warm, "air in the pump"
	case s.vapor() > 0.03:
		col, head = warm, "vapor in the eye"
	}
	say(10, sheetH-12-0.95*d.text/d.k, draw.Left, fmt.Sprintf("%s, %.0f °F", head, s.PumpF), under, col)
}

// pressure is psi above zero, and inHg below, as a compound gauge has it.
func pressure(psi float64) string {
	if psi < -0.25 {
		return fmt.Sprintf("−%.0f inHg", -psi*2.036)
	}
	return fmt.Sprintf("%.0f psi", max(0, psi))
}
