package panel

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/view"
)

// pipe is one run of the engraved way, and when water stands in it as far as the panel can tell.
type pipe struct {
	key  string
	run  *draw.Path
	wide float64
	wet  func(*view.Eyes) bool
}

const (
	mainWide  = 11.0
	smallWide = 6.0
)

// pumpAt is the middle of the engraved pump.
func (p *Panel) pumpAt() draw.Point { return p.at(500, 412) }

func (p *Panel) pipe(key string, wide float64, wet func(*view.Eyes) bool, bend float64, points ...draw.Point) {
	p.pipes = append(p.pipes, pipe{key, draw.Bend(bend, points...), wide, wet})
}

// way lays the pipes: supply, intake, pump, discharge main, lines, tank, by-pass.
func (p *Panel) way() {
	supply := func(e *view.Eyes) bool { return e.Signal("supply_fill") > 0.2 }
	tank := func(e *view.Eyes) bool { return e.Signal("tank_lamps") > 0 }
	fed := func(e *view.Eyes) bool {
		return supply(e) && e.Named("intake") > 0.02 || tank(e) && e.Named("tank_to_pump") > 0.02
	}
	pressed := func(e *view.Eyes) bool { return e.Signal("discharge_gauge") > 3 }

	pump := p.pumpAt()
	suction := pump.Y
	left := draw.Pt(p.box.X, suction)
	wheel := p.at(104, 398)
	p.pipe("supply", mainWide, supply, 8, left, draw.Pt(wheel.X, suction))
	bleeder := p.at(36, 316)
	p.pipe("bleeder", smallWide, supply, 4, draw.Pt(bleeder.X, suction), bleeder)
	p.pipe("suction", mainWide, fed, 8, draw.Pt(wheel.X, suction), pump)
	primer := p.at(222, 446)
	p.pipe("primer", smallWide, func(*view.Eyes) bool { return false }, 4, draw.Pt(primer.X, suction+6), primer)
	tankX := p.at(172, 0).X
	p.pipe("tank", mainWide, tank, 8, p.at(172, 484), draw.Pt(tankX, suction+2))

	rise := p.at(0, 334).Y
	if p.fitted("relief_wheel") {
		relief := p.at(390, 372)
		p.pipe("bypass", smallWide+2, func(e *view.Eyes) bool { return e.Lit("amber") && !e.Covered("amber") }, 8,
			draw.Pt(pump.X, rise), draw.Pt(relief.X, rise), draw.Pt(relief.X, suction-2))
	}
	header := p.at(0, 464).Y
	filling := func(name string) func(*view.Eyes) bool {
		return func(e *view.Eyes) bool { return pressed(e) && e.Named(name) > 0.02 }
	}
	p.pipe("fill", smallWide+2, filling("tank_fill"), 8, pump, draw.Pt(pump.X, header), draw.Pt(p.at(266, 0).X, header), p.at(266, 484))
	p.pipe("recirc", smallWide, filling("recirculation"), 6, draw.Pt(pump.X-30, header), draw.Pt(p.at(350, 0).X, header), p.at(350, 500))
	drain := p.at(564, 436)
	p.pipe("pump_drain", smallWide, filling("pump_drain"), 4, pump.Add(draw.Pt(20, 24)), drain)

	top := p.at(0, 214).Y
	riser := p.at(772, 0).X
	last := p.at(p.column(len(p.lines)), 0).X
	p.pipe("main", mainWide, pressed, 12, pump, draw.Pt(pump.X, rise), draw.Pt(riser, rise), draw.Pt(riser, top), draw.Pt(last, top))
	for n := 1; n <= len(p.lines); n++ {
		p.line(n, top, pressed)
	}
}

// line is one discharge: from the main to its valve, and on to the outlet and its drain.
func (p *Panel) line(n int, top float64, pressed func(*view.Eyes) bool) {
	x := p.column(n)
	valve, outlet := p.at(x, 258), p.at(x, 528)
	gauge, handle := fmt.Sprintf("line%d_gauge", n), fmt.Sprintf("discharge%d", n)
	open := func(e *view.Eyes) bool {
		return e.Signal(gauge) > 3 || e.Named(handle) > 0.02 && pressed(e)
	}
	p.pipe(fmt.Sprintf("line%da", n), mainWide, pressed, 8, draw.Pt(valve.X, top), draw.Pt(valve.X, valve.Y-8))
	p.pipe(fmt.Sprintf("line%db", n), mainWide, open, 8, draw.Pt(valve.X, valve.Y+100), outlet.Add(draw.Pt(0, -36)))
	drain := p.at(x, 412)
	p.pipe(fmt.Sprintf("drain%d", n), smallWide, open, 4, drain, drain.Add(draw.Pt(48, 0)))
}
