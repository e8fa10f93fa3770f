package cutaway

import (
	"fmt"
	"math"
	"strings"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/sim/unit"
)

// words puts the numbers that the back row reads, each beside its part.
func (d *Drawing) words(sh *stage.Shelf, f *stage.Frame, s *State) {
	big := draw.Style{Size: d.text, Weight: draw.Bold, Color: theme.Paper.Ink}
	small := draw.Style{Size: d.text, Color: theme.Paper.Soft}
	say := func(x, y float64, a draw.Align, head, under string, col draw.Color) {
		p := d.at(draw.Pt(x, y))
		st := big
		st.Color = col
		sh.Text(f, p, a, st, head)
		sh.Text(f, p.Add(draw.Pt(0, d.text*1.0)), a, small, under)
	}
	intake := theme.Paper.Ink
	if s.IntakePSI < 0 && !s.Draft {
		intake = theme.Paper.Bad
	}
	line := d.text / d.k
	flow := []string{d.whole(s.IntakeGPM+s.TankToPumpGPM, "gpm")}
	most := "8888 " + d.unit.Unit("gpm")
	if small.Width(sh.Scale, most) > (riserX-narrow/2-wall-8)*d.k { // it would run over the way up from the by-pass
		flow = strings.Split(flow[0], " ")
	}
	y := suctionY + wide/2 + wall + line + 2
	say(6, y, draw.Left, d.pressure(s.IntakePSI), flow[0], intake)
	if len(flow) > 1 {
		sh.Text(f, d.at(draw.Pt(6, y)).Add(draw.Pt(0, 2*d.text)), draw.Left, small, flow[1])
	}
	say(sheetW-8, mainY-wide/2-wall-1.05*line-6, draw.Right, d.whole(s.DischargePSI, "psi")+" out", d.whole(s.DischargeGPM, "gpm"), theme.Paper.Ink)
	say(tankBox.X+tankBox.W+wall+12, tankBox.Y+40, draw.Left, d.whole(s.TankGal, "gal"), "tank", theme.Paper.Ink)
	if d.plan.two() {
		say(d.plan.transfer.X-plugR-12, d.plan.transfer.Y+0.36*line+13, draw.Right, s.arrangement(), "", theme.Paper.Ink)
	}
	d.reliefWords(say, s)
	d.eyeWords(say, s)
}

func (d *Drawing) reliefWords(say func(x, y float64, a draw.Align, head, under string, col draw.Color), s *State) {
	x, y := barrel.X+barrel.W+wall+6, barrel.Y+60
	switch {
	case s.ReliefHidden:
		say(x, y, draw.Left, "relief ?", "", theme.Paper.Ink)
	case s.Governor:
		say(x, y, draw.Left, "no relief", "governor", theme.Paper.Ink)
	case s.ReliefGPM >= 1:
		say(x, y, draw.Left, "relief open", d.whole(s.ReliefGPM, "gpm"), theme.Paper.Bad)
	default:
		say(x, y, draw.Left, "relief set", d.whole(s.ReliefSetPSI, "psi"), theme.Paper.Ink)
	}
}

func (d *Drawing) eyeWords(say func(x, y float64, a draw.Align, head, under string, col draw.Color), s *State) {
	col, head := theme.Paper.Ink, figure(s.ShaftRPM)+" rpm"
	under := "suction head " + d.whole(s.NPSHa, "ft") + ", needs " + figure(d.unit.From(s.NPSHr, "ft"))
	switch {
	case s.air() > 0.05:
		col, head = theme.Paper.Bad, "air in the pump"
	case s.vapor() > 0.03:
		col, head = theme.Paper.Bad, "vapor in the eye"
	}
	say(10, sheetH-12-d.text/d.k, draw.Left, head+", "+d.whole(s.PumpF, "°F"), under, col)
}

// whole writes a number given in the trade's unit, without decimals.
func (d *Drawing) whole(v float64, trade string) string {
	return figure(d.unit.From(v, trade)) + " " + d.unit.Unit(trade)
}

// figure writes a whole number, with no minus before nought; a question mark where it is covered.
func figure(v float64) string {
	if math.IsNaN(v) {
		return "?"
	}
	text := fmt.Sprintf("%.0f", v)
	if text == "-0" {
		return "0"
	}
	return strings.Replace(text, "-", "−", 1)
}

// pressure is psi above zero and inHg below, as a compound gauge has it.
func (d *Drawing) pressure(psi float64) string {
	if math.IsNaN(psi) {
		return "intake ?"
	}
	const least = 0.25 // psi of vacuum that is worth telling
	v, u := d.unit.Compound(max(0, psi))
	if psi < -least {
		v, u = d.unit.Compound(psi * unit.PaPerPSI / unit.PaPerInHg)
	}
	return figure(v) + " " + u
}
