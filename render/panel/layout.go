package panel

import (
	"fmt"

	"steadyneedle/render/control"
	"steadyneedle/render/dial"
	"steadyneedle/render/draw"
	"steadyneedle/render/lamp"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
	"steadyneedle/sim/rig"
)

// intakeSide is where water comes in: intake valve, bleeder, primer.
func (p *Panel) intakeSide() {
	bleeder := p.at(36, 316)
	p.put("bleeder", control.Lever{At: bleeder, R: 27, Shut: 90})
	p.name(bleeder.Add(draw.Pt(14, -38)), "Bleeder")
	wheel := p.at(104, 398)
	p.put("intake", control.Wheel{At: wheel, R: 52, Turns: -2})
	p.name(wheel.Add(draw.Pt(0, 68)), "Intake")
	p.light("intake_open_lamp", p.at(206, 346), lamp.Ready, "Full open")
	primer := p.at(222, 446)
	p.put("primer", control.Push{At: primer, R: 14, Color: draw.Hex(0x3a4248), Name: "gray"})
	p.say(primer.Add(draw.Pt(24, 0)), draw.Left, "Primer")
}

// pumpSide is the relief valve and what belongs to the casing.
func (p *Panel) pumpSide() {
	relief := p.at(390, 372)
	p.put("relief_wheel", control.Wheel{At: relief, R: 46, Turns: 10})
	p.name(relief.Add(draw.Pt(0, 66)), "Relief valve")
	p.light("amber", p.at(298, 346), lamp.Notice, "By-passing")
	drain := p.at(564, 436)
	p.put("pump_drain", control.Lever{At: drain, R: 22, Shut: 0})
	p.say(drain.Add(draw.Pt(0, 33)), draw.Center, "Pump drain")
}

// engineSide is throttle, lights, radio, warnings and the small instruments.
func (p *Panel) engineSide() {
	throttle := p.at(652, 400)
	p.put("throttle", control.Knob{At: throttle, R: 42, Sweep: 1080})
	p.name(throttle.Add(draw.Pt(0, 66)), "Throttle")
	p.light("throttle_ready", p.at(738, 370), lamp.Ready, "Ready")
	idle := p.at(738, 430)
	p.put("idle_button", control.Push{At: idle, R: 15, Color: draw.Hex(0xb3261c), Name: "red"})
	p.say(idle.Add(draw.Pt(0, 31)), draw.Center, "Idle")
	cooler := p.at(798, 426)
	p.put("engine_cooler", control.Lever{At: cooler, R: 22, Shut: 0})
	p.say(cooler.Add(draw.Pt(0, 35)), draw.Center, "Cooler")

	radio := p.at(514, 268)
	p.put("radio_compartment", control.Toggle{At: radio})
	p.say(radio.Add(draw.Pt(0, 42)), draw.Center, "Radio door")
	volume := p.at(588, 268)
	p.put("radio_volume", control.Knob{At: volume, R: 20, Zero: -135, Sweep: 270, Marks: 7})
	p.say(volume.Add(draw.Pt(0, 42)), draw.Center, "Volume")
	lights := p.at(650, 268)
	p.put("panel_lights", control.Toggle{At: lights})
	p.say(lights.Add(draw.Pt(0, 42)), draw.Center, "Lights")
	p.say(p.testButton().At.Add(draw.Pt(0, 42)), draw.Center, "Lamp test")

	p.light("pump_hot_lamp", p.at(738, 40), lamp.Warning, "Pump hot")
	p.light("engine_hot_lamp", p.at(738, 100), lamp.Warning, "Engine hot")
	p.light("low_oil_lamp", p.at(738, 160), lamp.Warning, "Low oil")

	g := p.gauge
	for i, s := range []struct {
		signal, name, unit string
		def                rig.GaugeDef
	}{
		{"oil_gauge", "Oil", "psi", g.Oil},
		{"coolant_gauge", "Coolant", "°F", g.Coolant},
		{"volts_gauge", "Volts", "V", g.Volts},
		{"pump_temp_gauge", "Pump", "°F", g.PumpTemp},
	} {
		at := p.at(412+float64(i)*97, 484)
		box := draw.Rect{X: at.X, Y: at.Y, W: 93, H: 100}
		scale := dial.FanIn(p.units, s.def.Low, s.def.High, s.def.Division, s.unit)
		name := s.name
		if s.unit != "V" {
			name += " " + scale.Unit
		}
		p.fans = append(p.fans, small{s.signal, dial.Fan{Box: box, Name: name}, scale})
		p.note(box, name, view.Gauge(s.signal))
	}
}

// tankWell is the tank's level lamps and its valves.
func (p *Panel) tankWell() {
	p.put("tank_to_pump", control.Handle{Top: p.at(172, 508), Travel: 34, Grip: 56})
	p.say(p.at(172, 572), draw.Center, "Tank to pump")
	p.put("tank_fill", control.Handle{Top: p.at(266, 508), Travel: 34, Grip: 56})
	p.say(p.at(266, 572), draw.Center, "Tank fill")
	p.put("recirculation", control.Lever{At: p.at(350, 526), R: 27, Shut: 90})
	p.say(p.at(350, 572), draw.Center, "Recirculation")
	p.note(p.tankLevel(), "Tank level", view.Gauge("tank_lamps"))
}

func (p *Panel) tankLevel() draw.Rect {
	at := p.at(26, 488)
	return draw.Rect{X: at.X, Y: at.Y, W: 86, H: 92}
}

// dischargeSide is each line's handle under its gauge, its drain, and its outlet below.
func (p *Panel) dischargeSide() {
	for i := range p.lines {
		n := i + 1
		x, plate := p.column(n), theme.PlateOf(p.lines[i].Color)
		p.put(fmt.Sprintf("discharge%d", n), control.Handle{Top: p.at(x, 258), Travel: 92, Grip: 74, Tag: &plate})
		drain := p.at(x, 412).Add(draw.Pt(48, 0))
		p.put(fmt.Sprintf("drain%d", n), control.Lever{At: drain, R: 22, Shut: 0})
		p.say(drain.Add(draw.Pt(0, 35)), draw.Center, fmt.Sprintf("Drain %d", n))
		p.put(fmt.Sprintf("cap%d", n), Cap{At: p.at(x, 528), R: 33, Line: n, Plate: plate})
		p.say(p.at(x, 528).Add(draw.Pt(44, 0)), draw.Left, "cap")
	}
}
