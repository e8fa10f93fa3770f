package rig

import (
	"fmt"

	"steadyneedle/sim/hydraulics"
)

// FieldError says which field of a Def cannot be built from, and what it should be. Fields are named as
// files write them.
type FieldError struct {
	Field string
	Value any
	Want  string
}

// Error is one line.
func (e *FieldError) Error() string {
	return fmt.Sprintf("rig: %s is %v, expected %s", e.Field, e.Value, e.Want)
}

// number is one field with the bounds that building it needs; the `range` tags, which files are read by,
// are narrower.
type number struct {
	field  string
	v      float64
	lo, hi float64 // lo itself is not allowed where it is open
	open   bool
}

func (n number) check() error {
	if n.v >= n.lo && n.v <= n.hi && !(n.open && n.v == n.lo) { // false for a NaN
		return nil
	}
	want := fmt.Sprintf("%v to %v", n.lo, n.hi)
	if n.open && n.hi == most {
		want = fmt.Sprintf("more than %v", n.lo)
	}
	return &FieldError{n.field, n.v, want}
}

const most = 1e9 // no field means anything beyond

func above0(field string, v float64) number { return number{field, v, 0, most, true} }

func within(field string, v, lo, hi float64) number {
	return number{field: field, v: v, lo: lo, hi: hi}
}

func firstBad(list []number) error {
	for _, n := range list {
		if err := n.check(); err != nil {
			return err
		}
	}
	return nil
}

// Check refuses a definition that no apparatus can be built from, with a *FieldError. Nothing is
// clamped.
func (d *Def) Check() error {
	if len(d.Discharges) == 0 {
		return &FieldError{"discharges", len(d.Discharges), "at least one"}
	}
	for _, check := range []func() error{d.Engine.check, d.Pump.check, d.checkParts, d.checkProtection, d.checkValves, d.checkHoseBed, d.Instruments.check} {
		if err := check(); err != nil {
			return err
		}
	}
	return nil
}

func (e *EngineDef) check() error {
	if err := firstBad([]number{
		above0("engine.idle_rpm", e.IdleRPM), above0("engine.inertia_lb_ft2", e.InertiaLbFt2), within("engine.droop", e.Droop, 0, 0.5),
		within("engine.reset_s", e.ResetS, 0, 60), above0("engine.fuel_lag_s", e.FuelLagS), above0("engine.follow_rpm_s", e.FollowRPMS),
		above0("engine.friction_lbft", e.FrictionLbFt),
	}); err != nil {
		return err
	}
	switch {
	case !(e.GovernedRPM > e.IdleRPM):
		return &FieldError{"engine.governed_rpm", e.GovernedRPM, fmt.Sprintf("more than idle_rpm %v", e.IdleRPM)}
	case !(e.StallRPM < e.IdleRPM):
		return &FieldError{"engine.stall_rpm", e.StallRPM, fmt.Sprintf("less than idle_rpm %v", e.IdleRPM)}
	case len(e.Torque) < 2:
		return &FieldError{"engine.torque_rpm_lbft", len(e.Torque), "at least two points"}
	}
	for i, p := range e.Torque {
		if i > 0 && !(p[0] > e.Torque[i-1][0]) {
			return &FieldError{"engine.torque_rpm_lbft", p[0], fmt.Sprintf("a speed above %v", e.Torque[i-1][0])}
		}
		if !(p[1] >= 0 && p[1] < most) {
			return &FieldError{"engine.torque_rpm_lbft", p[1], "a torque of 0 or more"}
		}
	}
	return nil
}

func (p *PumpDef) check() error {
	if err := firstBad([]number{
		above0("pump.rated_gpm", p.RatedGPM), above0("pump.rated_rpm", p.RatedRPM), above0("pump.shutoff_psi", p.ShutoffPSI),
		above0("pump.loss_psi_per_gpm2", p.LossPSI), within("pump.shaft_hp", p.ShaftHP, 0, most), within("pump.flow_hp_per_gpm", p.FlowHP, 0, most),
		above0("pump.casing_gal", p.CasingGal), above0("pump.casing_lb", p.CasingLb), above0("pump.eye_gal", p.EyeGal),
		above0("pump.npsh_base_ft", p.NPSHBaseFt), above0("pump.damage_s", p.DamageS), within("pump.leak_in_gpm_air", p.LeakInGPM, 0, most),
		within("pump.air_low", p.AirLow, 0, 1), within("pump.gone_ratio", p.GoneRatio, 0.01, 0.99),
	}); err != nil {
		return err
	}
	if !(p.AirHigh > p.AirLow) {
		return &FieldError{"pump.air_high", p.AirHigh, fmt.Sprintf("more than air_low %v", p.AirLow)}
	}
	if t := p.Transfer; t != nil {
		return firstBad([]number{above0("pump.transfer.travel_s", t.TravelS), above0("pump.transfer.safe_psi", t.SafePSI),
			within("pump.transfer.jolt_wear", t.JoltWear, 0, 1), within("pump.transfer.clapper_back", t.ClapperBack, 0, 1)})
	}
	return nil
}

// checkParts looks at drive, cooling, primer and tank.
func (d *Def) checkParts() error {
	return firstBad([]number{
		above0("drive.shift_s", d.Drive.ShiftS), above0("drive.wind_down_s", d.Drive.WindDownS), above0("drive.engage_s", d.Drive.EngageS),
		within("drive.loss_share", d.Drive.Loss, 0, 0.99), above0("cooling.heat_btu_per_f", d.Cooling.ThermalBtuF),
		above0("primer.max_inhg", d.Primer.MaxInHg), within("primer.air_l_s", d.Primer.AirLS, 0, most),
		above0("tank.gallons", d.Tank.Gallons), within("tank.start_fraction", d.Tank.StartFraction, 0, 1), above0("tank.depth_ft", d.Tank.DepthFt),
	})
}

// checkProtection looks at what holds the pressure.
func (d *Def) checkProtection() error {
	var list []number
	if r := d.Relief; r != nil {
		list = append(list, above0("relief.psi_per_turn", r.PSIPerTurn), above0("relief.span_psi", r.SpanPSI), above0("relief.turns", r.Turns),
			above0("relief.pilot_lag_s", r.PilotLagS), above0("relief.lift_lag_s", r.LiftLagS), within("relief.overlap_lift", r.Overlap, 0, 0.5),
			within("relief.standby_psi", r.StandbyPSI, r.LowestPSI, r.LowestPSI+float64(r.Turns*r.PSIPerTurn)), within("relief.amber_off_lift", r.AmberOff, 0, r.AmberOn))
	}
	if g := d.Governor; g != nil {
		list = append(list, within("governor.preset_psi", g.PresetPSI, g.LowestPSI, g.HighestPSI), within("governor.preset_rpm", g.PresetRPM, d.Engine.IdleRPM, d.Engine.GovernedRPM),
			within("governor.cut_rpm", g.CutRPM, d.Engine.IdleRPM, d.Engine.GovernedRPM), above0("governor.lowest_psi", g.LowestPSI),
			above0("governor.gain_rpm_per_psi", g.GainRPMPSI), above0("governor.reset_s", g.ResetS), above0("governor.sense_s", g.SenseS),
			above0("governor.rise_rpm_s", g.RiseRPMS), above0("governor.ramp_psi_s", g.RampPSIS), above0("governor.ramp_rpm_s", g.RampRPMS))
	}
	if s := d.IntakeRelief; s != nil {
		list = append(list, above0("intake_relief.set_psi", s.SetPSI), above0("intake_relief.span_psi", s.SpanPSI), above0("intake_relief.lag_s", s.LagS),
			within("intake_relief.blowdown_psi", s.BlowdownPSI, 0, s.SetPSI))
	}
	if t := d.ThermalRelief; t != nil {
		list = append(list, above0("thermal_relief.open_f", t.OpenF), above0("thermal_relief.span_f", t.SpanF), above0("thermal_relief.lag_s", t.LagS))
	}
	return firstBad(list)
}

func (d *Def) checkValves() error {
	list := []number{}
	var unknown error
	add := func(field string, v *ValveDef) {
		if _, ok := hydraulics.ValveLawNamed(v.Law); !ok && v.Law != "" && unknown == nil {
			unknown = &FieldError{field + ".law", v.Law, "ball, gate or butterfly"}
		}
		list = append(list, above0(field+".cv", v.Cv), within(field+".curve", v.Curve, 1, 100), within(field+".shut_below", v.Lock, 0, 0.9), within(field+".travel_s", v.TravelS, 0, 600))
	}
	add("tank.to_pump", &d.Tank.ToPump)
	add("intake.valve", &d.Intake.Valve)
	add("tank_fill", &d.TankFill)
	add("recirculation", &d.Recirculation)
	for i := range d.Discharges {
		field := fmt.Sprintf("discharges[%d]", i+1)
		add(field+".valve", &d.Discharges[i].Valve)
		list = append(list, above0(field+".valve.size_in", d.Discharges[i].Valve.SizeIn))
	}
	if err := firstBad(list); err != nil {
		return err
	}
	return unknown
}

func (in *InstrumentsDef) check() error {
	for _, g := range []struct {
		name string
		g    *GaugeDef
	}{
		{"intake", &in.Intake}, {"discharge", &in.Discharge}, {"line", &in.Line}, {"tach", &in.Tach},
		{"oil", &in.Oil}, {"coolant", &in.Coolant}, {"volts", &in.Volts}, {"pump_temp", &in.PumpTemp},
	} {
		if !(g.g.High > g.g.Low) {
			return &FieldError{"instruments." + g.name + ".high", g.g.High, fmt.Sprintf("more than low %v", g.g.Low)}
		}
		if err := above0("instruments."+g.name+".needle_rad_s", g.g.RadS).check(); err != nil {
			return err
		}
	}
	return nil
}
