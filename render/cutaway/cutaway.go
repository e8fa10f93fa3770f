package cutaway

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
	"steadyneedle/sim/unit"
)

// Slowed is how many times slower than in the pump things are drawn to run and turn: an eye cannot
// follow the real speed.
const Slowed = 25.0

// Drawing is the cutaway laid out in a box.
type Drawing struct {
	box  draw.Rect
	k    float64 // units per unit of the sheet
	o    draw.Point
	text float64 // size of type
	unit unit.System
	plan *plan

	turn  float64 // degrees, the impellers
	flows []flow  // what runs
	run   []float64
	last  float64
	begun bool
}

// New lays the drawing out, of a pump with one impeller or the two of a two-stage pump. text is the size of its
// type; numbers are written in a system of units.
func New(box draw.Rect, text float64, in unit.System, twoStage bool) *Drawing {
	d := &Drawing{box: box, text: text, unit: in, plan: single()}
	if twoStage {
		d.plan = double()
	}
	d.flows = flowsOf(d.plan)
	d.run = make([]float64, len(d.flows))
	d.k = min(box.W/sheetW, box.H/sheetH)
	d.o = draw.Pt(box.X+(box.W-sheetW*d.k)/2, box.Y+(box.H-sheetH*d.k)/2)
	return d
}

// at is where a point of the sheet stands.
func (d *Drawing) at(p draw.Point) draw.Point { return d.o.Add(p.Mul(d.k)) }

func (d *Drawing) rect(r draw.Rect) draw.Rect {
	p := d.at(draw.Pt(r.X, r.Y))
	return draw.Rect{X: p.X, Y: p.Y, W: r.W * d.k, H: r.H * d.k}
}

// path is a run on the page.
func (d *Drawing) path(w *way) *draw.Path {
	on := make([]draw.Point, len(w.run))
	for i := range w.run {
		on[i] = d.at(w.run[i])
	}
	return draw.Bend(w.bore*0.75*d.k, on...)
}

// metalwork paints what never moves.
func (d *Drawing) metalwork(cv *draw.Canvas) {
	cv.Fill(draw.Round(d.box, 10), draw.Solid(theme.Paper.Sheet))
	for _, w := range d.plan.pipes() {
		p := d.path(w)
		cv.Fill(draw.Stroke(p, (w.bore+2*wall)*d.k), draw.Solid(metalEdge))
		cv.Fill(draw.Stroke(p, (w.bore+2*wall)*d.k-3), draw.Solid(metal))
	}
	d.casings(cv, wall+1.5, metalEdge)
	d.casings(cv, wall, metal)
	d.valveBody(cv)
	b := d.rect(barrel)
	cv.Fill(draw.Round(b.Inset(-wall*d.k), 10*d.k), draw.Solid(metalEdge))
	cv.Fill(draw.Round(b.Inset(-wall*d.k+1.5), 10*d.k), draw.Solid(metal))
	t := d.rect(tankBox)
	cv.Fill(draw.Round(t.Inset(-wall*d.k), 6*d.k), draw.Solid(metalEdge))
	cv.Fill(draw.Round(t.Inset(-wall*d.k+1.5), 6*d.k), draw.Solid(metal))
	cv.Fill(draw.Round(t, 3), draw.Solid(cavity))
	d.scale(cv)
}

// casings are the volutes' outlines, grown by so much.
func (d *Drawing) casings(cv *draw.Canvas, grow float64, col draw.Color) {
	for i := range d.plan.wheels {
		cv.Fill(d.scaled(d.plan.wheels[i].volute(grow)), draw.Solid(col))
	}
}

// scaled brings a path of the sheet to the page.
func (d *Drawing) scaled(p *draw.Path) *draw.Path { return p.Scaled(d.k).Moved(d.o) }

// scale is the key of the colors, with its numbers.
func (d *Drawing) scale(cv *draw.Canvas) {
	r := d.keyBox()
	stops := make([]draw.Stop, 0, levels+1)
	for i := 0; i <= levels; i++ {
		stops = append(stops, draw.Stop{T: float64(i) / levels, C: water(i)})
	}
	cv.Fill(draw.Box(r), draw.Linear{From: draw.Pt(r.X, 0), To: draw.Pt(r.Right(), 0), Stops: stops})
	cv.Fill(draw.Frame(r, 0, 1), draw.Solid(theme.Paper.Soft))
	st := draw.Style{Size: d.text, Color: theme.Paper.Ink}
	top := d.unit.From(200, "psi")
	if d.unit == unit.SI {
		top = 1500
	}
	x := cv.Snap(r.X + r.W*d.unit.To(top, "psi")/topPSI)
	for _, x := range [...]float64{r.X, x} {
		cv.Fill(draw.Box(draw.Rect{X: x, Y: r.Bottom(), W: 1.5, H: 5}), draw.Solid(theme.Paper.Ink))
	}
	y := r.Bottom() + 5 + st.Size
	cv.Text(draw.Pt(r.X, y), draw.Left, st, "0")
	cv.Text(draw.Pt(r.Right(), y), draw.Right, st, fmt.Sprintf("%.0f %s", top, d.unit.Unit("psi")))
}

func (d *Drawing) keyBox() draw.Rect {
	line := d.text / d.k
	return d.rect(draw.Rect{X: sheetW - 16 - 6.2*line, Y: sheetH - 30 - 1.2*line, W: 6.2 * line, H: 18})
}

// Moving puts the drawing as it stands now. Everything is cut off at the box.
func (d *Drawing) Moving(sh *stage.Shelf, f *stage.Frame, s *State) {
	d.advance(s)
	f.Put(sh.Get(fmt.Sprintf("cutaway/metal/%v/%v/%v/%d", d.box, d.text, d.unit, len(d.plan.wheels)), d.box, d.metalwork), draw.Point{})
	d.fill(sh, f, s)
	d.tank(sh, f, s)
	d.streaks(sh, f, s)
	for i := range d.plan.wheels {
		d.impeller(sh, f, s, i)
	}
	d.valves(sh, f, s)
	d.relief(sh, f, s)
	d.words(sh, f, s)
}

// advance turns and runs everything on by the time that has passed; back in time it begins anew.
func (d *Drawing) advance(s *State) {
	dt := s.At - d.last
	d.last = s.At
	if !d.begun || dt < 0 || dt > 2 {
		d.begun = true
		return
	}
	rpm := s.ShaftRPM
	if math.IsNaN(rpm) { // covered: it turns, and does not tell how fast
		rpm = 1000
	}
	d.turn = math.Mod(d.turn-rpm*6/Slowed*dt, 360)
	for i := range d.flows {
		d.run[i] += d.flows[i].speed(s) * dt
	}
}

// Notes explain what can be pointed at.
func (d *Drawing) Notes() []view.Note {
	const thrown = "Water enters at the eye and is thrown outward: the pressure rises toward the rim, as the contour lines tell. White is vapor, gray is air."
	list := []view.Note{
		{Box: d.rect(barrel), Title: "Relief valve", Text: "The pilot's spring holds it shut up to its setting. When the discharge pressure is higher, it lifts and lets water back to the intake."},
		{Box: d.rect(tankBox), Title: "Tank", Text: "The apparatus's own water. Recirculation and tank fill bring pump water here; a check valve keeps intake pressure out."},
		{Box: d.rect(draw.Rect{X: 0, Y: suctionY - wide/2, W: 150, H: wide}), Title: "Intake", Text: "Where the water comes from. Its pressure is what hydrant or air pressure has left after hose and lift; the pump can take no more than it is given."},
		{Box: d.rect(draw.Rect{X: reliefX, Y: mainY - wide/2, W: sheetW - reliefX, H: wide}), Title: "Discharge", Text: "Water under the pump's pressure, on its way to the discharge valves."},
		{Box: d.keyBox().Inset(-14), Title: "Pressure", Text: "One hue: the deeper, the higher the pressure. The contour lines carry their pressure."},
	}
	names := []string{"Impeller"}
	if d.plan.two() {
		names = []string{"First impeller", "Second impeller"}
		list = append(list,
			view.Note{Box: d.rect(draw.Around(d.plan.transfer, 2*plugR, 2*plugR)), Title: "Transfer valve", Text: "In volume it lets the first impeller's water up to the discharge: each gives half the flow. In pressure it leads all of it to the eye of the second, and their pressures add."},
			view.Note{Box: d.rect(draw.Around(d.plan.clapper.Add(draw.Pt(14, 4)), 44, 40)), Title: "Clapper valve", Text: "Open in volume: the second impeller takes from the intake too. In pressure the first one's water would run back through it; its pressure shuts it."},
		)
	}
	for i, name := range names {
		w := &d.plan.wheels[i]
		list = append(list, view.Note{Box: d.rect(draw.Around(w.at, 2*w.rim(), 2*w.rim())), Title: name, Text: thrown})
	}
	return list
}
