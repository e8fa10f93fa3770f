package ground

import (
	"fmt"
	"math"

	"steadyneedle/render/card"
	"steadyneedle/render/control"
	"steadyneedle/render/draw"
	"steadyneedle/render/view"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// Ground is the page.
type Ground struct {
	table   *view.Table
	info    *view.Info
	at      view.Attempt
	eyes    *view.Eyes
	stands  world.Place
	scale   float64
	box     draw.Rect
	zoom    float64   // how many times as large the plan is drawn, where the window has the room
	plan    draw.Rect // of the street, in its own units: the page's over zoom
	deck    *card.Deck
	column  float64 // width of one
	columns int
	seenH   float64 // height of what is seen
	spots   []Spot
}

// Spot is a place one can walk to, as it stands on the plan.
type Spot struct {
	Place world.Place
	Name  string
	About string
	Box   draw.Rect
	label draw.Point
	align draw.Align
}

// New makes the plan for someone who stands at a place.
func New(e *view.Eyes, at view.Attempt, stands world.Place) *Ground {
	return &Ground{table: e.Table, eyes: e, info: at.Info(), at: at, stands: stands}
}

// Name is the page's name.
func (g *Ground) Name() string { return "street-" + g.stands.String() }

// measures of plan and page at 1280×720.
const (
	planH  = 208.0
	pageH  = 600.0
	leastW = 1264.0 // of the plan, for everything on it
)

// onPage turns a point of the plan into one of the page.
func (g *Ground) onPage(p draw.Point) draw.Point { return p.Mul(g.zoom) }

// planBox is where the plan lies on the page.
func (g *Ground) planBox() draw.Rect { return g.plan.Times(g.zoom) }

// under is where what stands below the plan begins.
func (g *Ground) under() float64 { return g.planBox().Bottom() }

// Layout arranges plan and cards.
func (g *Ground) Layout(scale float64, box draw.Rect) {
	g.scale, g.box = scale, box
	// as large as there is room for; smaller only where the cards need the room
	for _, zoom := range []float64{max(1, min(box.H/pageH, box.W/leastW)), 1, 0.9, 0.82} {
		if g.fits(zoom) {
			break
		}
	}
	g.spots = nil
	g.layoutSpots()
}

// fits lays the page out with the plan so many times as large, and reports whether it holds all cards.
func (g *Ground) fits(zoom float64) bool {
	box := g.box
	g.zoom = zoom
	g.plan = draw.Rect{X: box.X / zoom, Y: box.Y / zoom, W: box.W / zoom, H: planH}
	top := g.under() + 40
	area := draw.Rect{X: box.X + 4, Y: top, W: box.W - 8, H: box.Bottom() - top}
	for columns := 4; columns <= 5; columns++ { // the fifth only where four do not hold everything
		if g.lay(area, columns); g.deck.Bottom <= box.Bottom()+8 {
			return true
		}
	}
	return false
}

// lay lays the cards out in columns, under what is seen.
func (g *Ground) lay(area draw.Rect, columns int) {
	g.columns = columns
	g.column = (area.W - float64(columns-1)*card.Gap) / float64(columns)
	g.seenH = g.seenHeight()
	groups, clothes := g.groups()
	last := card.LayUnder(g.table, g.scale, area, columns, g.seenH+8, append(groups, clothes))
	first := card.LayUnder(g.table, g.scale, area, columns, g.seenH+8, append([]card.Group{clothes}, groups...))
	g.deck = last
	if first.Bottom < last.Bottom || first.Columns < last.Columns && first.Bottom <= g.box.Bottom()+8 {
		g.deck = first
	}
}

// groups are the cards of the spot, by what they belong to, and what one wears.
func (g *Ground) groups() (rest []card.Group, clothes card.Group) {
	var front, rear, supply, line, rig, worn []string
	for i := range g.table.Controls {
		c := &g.table.Controls[i]
		if !c.By.Has(g.stands) || onPanel(c, g.stands) || g.stands == world.Cab && c.By != world.Anywhere && c.Name != "line_hose" {
			continue
		}
		switch {
		case c.Kind == world.Speech || c.Kind == world.Gesture || c.Kind == world.Walk || c.Name == "look_round":
		case has(c.Name, "chock_front"):
			front = append(front, c.Name)
		case has(c.Name, "chock_rear"):
			rear = append(rear, c.Name)
		case has(c.Name, "supply_") || has(c.Name, "hydrant_") || c.Name == "wrench" || c.Name == "adapters":
			supply = append(supply, c.Name)
		case has(c.Name, "line_") || has(c.Name, "bed_") || has(c.Name, "tighten_"):
			line = append(line, c.Name)
		case c.By == world.Anywhere:
			worn = append(worn, c.Name)
		default:
			rig = append(rig, c.Name)
		}
	}
	rest = []card.Group{{Title: "Front wheel chock", Names: front}, {Title: "Rear wheel chock", Names: rear},
		{Title: "Supply", Names: supply}, {Title: "Line", Names: line}, {Title: "Apparatus", Names: rig}}
	return rest, card.Group{Title: "Worn and carried", Names: worn}
}

func has(name, prefix string) bool { return len(name) >= len(prefix) && name[:len(prefix)] == prefix }

// onPanel reports whether a control has its own face on the panel and so needs no card there.
func onPanel(c *world.Control, p world.Place) bool {
	if p != world.Panel || c.By != world.At(world.Panel) {
		return false
	}
	switch c.Name {
	case "supply_at_engine":
		return false
	}
	return true
}

// Widgets are the cards' controls.
func (g *Ground) Widgets() []*control.Widget { return g.deck.Widgets() }

// Spots are the places to walk to.
func (g *Ground) Spots() []Spot { return g.spots }

// Notes are what the plan explains: nothing beyond its spots.
func (g *Ground) Notes() []view.Note { return nil }

// seenHeight is what the present view needs, and room for two lines more that may come.
func (g *Ground) seenHeight() float64 {
	h := 36.0 + 2*seenLine
	for _, s := range g.seen(g.eyes) {
		h += seenLine*float64(len(seenStyle.Wrap(g.scale, g.column-28, s))) + 2
	}
	return max(150, h)
}

// seen says in words what is to be seen from the spot.
func (g *Ground) seen(e *view.Eyes) []string {
	var s []string
	add := func(signal, format string) {
		if v := e.Signal(signal); !math.IsNaN(v) {
			s = append(s, g.info.Units.Prose(fmt.Sprintf(format, v)))
		}
	}
	flag := func(signal, yes string) {
		if e.Lit(signal) {
			s = append(s, yes)
		}
	}
	add("tank_gal", "Looking in: about %.0f gal in the tank.")
	add("sections_laid", "%.0f sections of 50 ft lie on the ground.")
	switch g.stands {
	case world.RearStep, world.Round, world.Panel:
		s = append(s, g.line(e))
	}
	add("supply_reach", "%.0f ft from the intake to the hydrant.")
	if v := e.Signal("supply_fill"); !math.IsNaN(v) && e.Named("supply_length") > 0 {
		s = append(s, g.info.Units.Prose(fmt.Sprintf("Supply hose, %g ft of %s in: ", e.Signal("supply_ft"), unit.Eighths(e.Signal("supply_size"))))+fill(v)+".")
	}
	if e.Signal("supply_kink") > 0.02 {
		s = append(s, "The supply hose is kinked.")
	}
	s = append(s, view.InTheWay(e, g.info.People)...)
	flag("supply_flat", "The supply hose has gone flat.")
	flag("line_leak_seen", "A coupling of the line drips.")
	flag("line_kink_seen", "There is a kink in the line.")
	flag("fluid_seen", "Fluid drips under the apparatus.")
	flag("overflowing", "Water runs down at the tires.")
	coupling := func(name, where string) {
		if id, ok := e.Control(name); ok && e.Controls[id].By.Has(g.stands) && e.Named("supply_length") > 0 {
			s = append(s, "Supply hose at the "+where+": "+[...]string{"off", "hand-tight", "tight"}[min(2, int(e.Value(id)))]+".")
		}
	}
	coupling("supply_at_engine", "intake")
	coupling("supply_at_hydrant", "hydrant")
	if v := e.Signal("chocks_set"); v > 0 {
		s = append(s, fmt.Sprintf("%.0f of 2 chocks at a wheel.", v))
	}
	if len(s) == 0 {
		s = append(s, "Nothing that calls for your attention.")
	}
	return s
}

// line says what the line is made of, and of what hose it lies there, if that is another one than was ordered.
func (g *Ground) line(e *view.Eyes) string {
	laid := e.Signal("line_size")
	if g.info.LineIn == 0 || math.IsNaN(laid) || laid == g.info.LineIn {
		return "The line: " + g.info.Load
	}
	return g.info.Units.Prose(fmt.Sprintf("The line is laid of %s in hose. As ordered: ", unit.Eighths(laid))) + g.info.Load
}

func fill(v float64) string {
	switch {
	case v > 0.95:
		return "round and hard"
	case v > 0.1:
		return "filling"
	}
	return "empty"
}
