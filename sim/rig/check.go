package rig

import (
	"errors"
	"fmt"
)

// Check refuses a definition that no apparatus can be built from. It looks at what the ranges of the
// single fields cannot say; the error is one line.
func (d *Def) Check() error {
	if len(d.Discharges) == 0 {
		return errors.New("rig: an apparatus needs a discharge")
	}
	if err := d.Engine.check(); err != nil {
		return err
	}
	if err := d.checkValves(); err != nil {
		return err
	}
	for _, p := range []struct {
		name string
		v    float64
	}{
		{"pump.rated_gpm", d.Pump.RatedGPM}, {"pump.rated_rpm", d.Pump.RatedRPM}, {"pump.shutoff_psi", d.Pump.ShutoffPSI},
		{"pump.casing_gal", d.Pump.CasingGal}, {"pump.casing_lb", d.Pump.CasingLb}, {"pump.eye_gal", d.Pump.EyeGal},
		{"pump.npsh_base_ft", d.Pump.NPSHBaseFt}, {"pump.damage_s", d.Pump.DamageS},
		{"tank.gallons", d.Tank.Gallons}, {"drive.shift_s", d.Drive.ShiftS}, {"drive.wind_down_s", d.Drive.WindDownS},
		{"drive.engage_s", d.Drive.EngageS}, {"relief.psi_per_turn", d.Relief.PSIPerTurn}, {"relief.span_psi", d.Relief.SpanPSI},
		{"relief.turns", d.Relief.Turns}, {"primer.max_inhg", d.Primer.MaxInHg}, {"cooling.heat_btu_per_f", d.Cooling.ThermalBtuF},
	} {
		if !(p.v > 0) {
			return fmt.Errorf("rig: %s is %v, must be above 0", p.name, p.v)
		}
	}
	if !(d.Pump.AirHigh > d.Pump.AirLow) {
		return fmt.Errorf("rig: pump.air_high %v must be above pump.air_low %v", d.Pump.AirHigh, d.Pump.AirLow)
	}
	if !(d.Pump.GoneRatio > 0 && d.Pump.GoneRatio < 1) || !(d.Drive.Loss >= 0 && d.Drive.Loss < 1) {
		return errors.New("rig: pump.gone_ratio must lie between 0 and 1, drive.loss_share from 0 to below 1")
	}
	if s := d.Relief.StandbyTurns(); !(s >= 0 && s <= d.Relief.Turns) {
		return fmt.Errorf("rig: relief.standby_psi %v lies outside what the wheel can set", d.Relief.StandbyPSI)
	}
	return d.Instruments.check()
}

func (e *EngineDef) check() error {
	if !(e.IdleRPM > 0 && e.GovernedRPM > e.IdleRPM && e.InertiaLbFt2 > 0 && e.StallRPM < e.IdleRPM) {
		return errors.New("rig: engine needs stall below idle below governed speed, and inertia")
	}
	if len(e.Torque) < 2 {
		return errors.New("rig: engine.torque_rpm_lbft needs at least two points")
	}
	for i := 1; i < len(e.Torque); i++ {
		if !(e.Torque[i][0] > e.Torque[i-1][0]) {
			return fmt.Errorf("rig: engine.torque_rpm_lbft: speed %v does not rise", e.Torque[i][0])
		}
	}
	return nil
}

func (in *InstrumentsDef) check() error {
	for _, g := range []struct {
		name string
		g    *GaugeDef
	}{
		{"intake", &in.Intake}, {"discharge", &in.Discharge}, {"line", &in.Line}, {"tach", &in.Tach},
		{"oil", &in.Oil}, {"coolant", &in.Coolant}, {"volts", &in.Volts}, {"pump_temp", &in.PumpTemp},
	} {
		if !(g.g.High > g.g.Low && g.g.RadS > 0) {
			return fmt.Errorf("rig: instruments.%s needs high above low and a needle speed", g.name)
		}
	}
	return nil
}
