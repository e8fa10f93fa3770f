package scenarios

import (
	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/rig"
)

// Apparatus reads an apparatus by name.
func (s *Shelf) Apparatus(name string) (rig.Def, error) {
	l := s.loading()
	def, err := l.apparatus(name, nil)
	if err == nil {
		err = l.faults.Err()
	}
	return def, err
}

// maxDischarges is the most that an apparatus may have.
const maxDischarges = 24

// apparatus reads a file over the default apparatus, so that it says only what differs.
func (l *loading) apparatus(name string, at *reader.Node) (rig.Def, error) {
	def := rig.Default()
	n, err := l.named("apparatus", "apparatus", name, at)
	if n == nil {
		// faulted already: take it to have everything, so that nothing else is blamed
		for len(def.Discharges) < maxDischarges {
			def.Discharges = append(def.Discharges, def.Discharges[0])
		}
		return def, err
	}
	l.optional(n, &def)
	l.take(n.Decode(&def))
	var head struct {
		Name reader.Text `file:"name"`
	}
	n.Only("name").Decode(&head)
	l.itsName(head.Name, name)
	l.sound(n, &def)
	return def, nil
}

// optional lays the defaults of parts that only some apparatus have under what the file gives. A
// governor takes the place of the relief valve.
func (l *loading) optional(n *reader.Node, def *rig.Def) {
	if n.Get("governor") != nil {
		g := rig.DefaultGovernor()
		def.Governor = &g
		if relief := n.Get("relief"); relief != nil {
			l.fail(relief, "relief: the apparatus has a governor, expected one of the two")
		} else {
			def.Relief = nil
		}
	}
	if n.Get("intake_relief") != nil {
		s := rig.DefaultIntakeRelief()
		def.IntakeRelief = &s
	}
	if n.Get("thermal_relief") != nil {
		t := rig.DefaultThermalRelief()
		def.ThermalRelief = &t
	}
	if pump := n.Get("pump"); pump != nil && pump.Get("transfer") != nil {
		t := rig.DefaultTransfer()
		def.Pump.Transfer = &t
	}
}

// sound checks what one number cannot tell alone.
func (l *loading) sound(n *reader.Node, def *rig.Def) {
	part := func(keys ...string) *reader.Node {
		at := n
		for _, k := range keys {
			if next := at.Get(k); next != nil {
				at = next
			}
		}
		return at
	}
	e := &def.Engine
	if e.GovernedRPM <= e.IdleRPM {
		l.fail(part("engine", "governed_rpm"), "governed_rpm: %v is not above idle_rpm %v, expected more", e.GovernedRPM, e.IdleRPM)
	}
	if e.StallRPM >= e.IdleRPM {
		l.fail(part("engine", "stall_rpm"), "stall_rpm: %v is not below idle_rpm %v, expected less", e.StallRPM, e.IdleRPM)
	}
	curve := part("engine", "torque_rpm_lbft")
	if len(e.Torque) < 2 || len(e.Torque) > 64 {
		l.fail(curve, "torque_rpm_lbft: found %d pairs, expected 2 to 64", len(e.Torque))
	}
	for i, p := range e.Torque {
		if p[0] < 0 || p[0] > 10000 || p[1] < 0 || p[1] > 10000 {
			l.fail(curve, "torque_rpm_lbft: pair %d is %v, expected numbers from 0 to 10000", i+1, p)
		}
		if i > 0 && p[0] <= e.Torque[i-1][0] {
			l.fail(curve, "torque_rpm_lbft: %v rpm follows %v, expected rising speeds", p[0], e.Torque[i-1][0])
		}
	}
	l.soundProtection(part, def)
	law := func(at *reader.Node, v *rig.ValveDef) {
		if _, ok := hydraulics.ValveLawNamed(v.Law); !ok && v.Law != "" {
			l.fail(at, "law: found %q, expected ball, gate or butterfly", v.Law)
		}
	}
	law(part("intake", "valve", "law"), &def.Intake.Valve)
	law(part("tank", "to_pump", "law"), &def.Tank.ToPump)
	law(part("tank_fill", "law"), &def.TankFill)
	law(part("recirculation", "law"), &def.Recirculation)
	if list := n.Get("discharges"); list != nil && list.Kind == reader.List {
		for i := range min(len(list.Items), len(def.Discharges)) {
			at := list.Items[i]
			if v := at.Get("valve"); v != nil && v.Get("law") != nil {
				at = v.Get("law")
			}
			law(at, &def.Discharges[i].Valve)
		}
	}
	l.soundHoseBed(n, def)
	if n := len(def.Discharges); n < 1 || n > maxDischarges {
		l.fail(part("discharges"), "discharges: found %d, expected 1 to %d", n, maxDischarges)
	}
}

// soundProtection checks relief valve and governor.
func (l *loading) soundProtection(part func(keys ...string) *reader.Node, def *rig.Def) {
	if r := def.Relief; r != nil && r.AmberOff >= r.AmberOn {
		l.fail(part("relief", "amber_off_lift"), "amber_off_lift: %v is not below amber_on_lift %v, expected less", r.AmberOff, r.AmberOn)
	}
	if r := def.Relief; r != nil && (r.StandbyPSI < r.LowestPSI || r.StandbyPSI > r.LowestPSI+r.PSIPerTurn*r.Turns) {
		l.fail(part("relief", "standby_psi"), "standby_psi: %v is beyond the wheel, expected %v to %v", r.StandbyPSI, r.LowestPSI, r.LowestPSI+r.PSIPerTurn*r.Turns)
	}
	g, e := def.Governor, &def.Engine
	if g == nil {
		return
	}
	if g.HighestPSI <= g.LowestPSI {
		l.fail(part("governor", "highest_psi"), "highest_psi: %v is not above lowest_psi %v, expected more", g.HighestPSI, g.LowestPSI)
	}
	if g.PresetPSI < g.LowestPSI || g.PresetPSI > g.HighestPSI {
		l.fail(part("governor", "preset_psi"), "preset_psi: %v cannot be set, expected %v to %v", g.PresetPSI, g.LowestPSI, g.HighestPSI)
	}
	for _, s := range []struct {
		key string
		rpm float64
	}{{"preset_rpm", g.PresetRPM}, {"cut_rpm", g.CutRPM}} {
		if s.rpm < e.IdleRPM || s.rpm > e.GovernedRPM {
			l.fail(part("governor", s.key), "%s: the engine cannot hold %v, expected idle_rpm %v to governed_rpm %v", s.key, s.rpm, e.IdleRPM, e.GovernedRPM)
		}
	}
}

// soundHoseBed checks that no size of hose is listed twice, and that one card shows all pieces.
func (l *loading) soundHoseBed(n *reader.Node, def *rig.Def) {
	if at := n.Get("line_hose"); at != nil && at.Kind == reader.List {
		for i := range min(len(at.Items), len(def.LineHose)) {
			for j := range i {
				if def.LineHose[j].SizeIn == def.LineHose[i].SizeIn {
					l.fail(at.Items[i], "size_in: %v in is listed already, expected each size once", def.LineHose[i].SizeIn)
				}
			}
		}
	}
	at := n.Get("supply_hose")
	if at == nil || at.Kind != reader.List {
		return
	}
	pieces := 0
	for i := range min(len(at.Items), len(def.SupplyHose)) {
		h := &def.SupplyHose[i]
		pieces += len(h.LengthsFt)
		for j := range i {
			if def.SupplyHose[j].SizeIn == h.SizeIn {
				l.fail(at.Items[i], "size_in: %v in is listed already, expected each size once, with all its lengths", h.SizeIn)
			}
		}
	}
	if pieces > rig.MostPieces {
		l.fail(at, "supply_hose: found %d pieces, expected at most %d", pieces, rig.MostPieces)
	}
}
