package rig

import (
	"errors"
	"math"
	"testing"
)

// A definition that cannot be built from is refused by the name of its field, and nothing is clamped.
func TestCheckNamesTheField(t *testing.T) {
	good := Default()
	if err := good.Check(); err != nil {
		t.Fatal(err)
	}
	for field, spoil := range map[string]func(*Def){
		"discharges":                func(d *Def) { d.Discharges = nil },
		"discharges[2].valve.cv":    func(d *Def) { d.Discharges[1].Valve.Cv = 0 },
		"engine.governed_rpm":       func(d *Def) { d.Engine.GovernedRPM = 600 },
		"engine.stall_rpm":          func(d *Def) { d.Engine.StallRPM = 800 },
		"engine.inertia_lb_ft2":     func(d *Def) { d.Engine.InertiaLbFt2 = 0 },
		"engine.torque_rpm_lbft":    func(d *Def) { d.Engine.Torque = d.Engine.Torque[:1] },
		"engine.droop":              func(d *Def) { d.Engine.Droop = math.NaN() },
		"pump.shutoff_psi":          func(d *Def) { d.Pump.ShutoffPSI = math.NaN() },
		"pump.loss_psi_per_gpm2":    func(d *Def) { d.Pump.LossPSI = -1 },
		"pump.air_high":             func(d *Def) { d.Pump.AirHigh = 0.01 },
		"pump.gone_ratio":           func(d *Def) { d.Pump.GoneRatio = 1 },
		"pump.transfer.travel_s":    func(d *Def) { d.Pump.Transfer = &TransferDef{SafePSI: 50} },
		"drive.loss_share":          func(d *Def) { d.Drive.Loss = 1 },
		"relief.standby_psi":        func(d *Def) { d.Relief.StandbyPSI = 400 },
		"relief.span_psi":           func(d *Def) { d.Relief.SpanPSI = math.Inf(1) },
		"governor.cut_rpm":          func(d *Def) { g := DefaultGovernor(); g.CutRPM = 100; d.Governor, d.Relief = &g, nil },
		"intake_relief.lag_s":       func(d *Def) { s := DefaultIntakeRelief(); s.LagS = 0; d.IntakeRelief = &s },
		"thermal_relief.open_f":     func(d *Def) { v := DefaultThermalRelief(); v.OpenF = 0; d.ThermalRelief = &v },
		"tank.start_fraction":       func(d *Def) { d.Tank.StartFraction = 1.2 },
		"tank_fill.curve":           func(d *Def) { d.TankFill.Curve = 0.5 },
		"intake.coupling_in":        func(d *Def) { d.Intake.CouplingIn = 0 },
		"line_hose[2].size_in":      func(d *Def) { d.LineHose[1].SizeIn = 2.5 },
		"supply_hose[2].size_in":    func(d *Def) { d.SupplyHose[1].SizeIn = 4 },
		"supply_hose[1].lengths_ft": func(d *Def) { d.SupplyHose[0].LengthsFt[1] = math.NaN() },
		"supply_hose": func(d *Def) {
			for range 6 {
				d.SupplyHose[1].LengthsFt = append(d.SupplyHose[1].LengthsFt, 25)
			}
		},
		"instruments.tach.high":        func(d *Def) { d.Instruments.Tach.High = -1 },
		"instruments.oil.needle_rad_s": func(d *Def) { d.Instruments.Oil.RadS = 0 },
	} {
		d := Default()
		spoil(&d)
		var wrong *FieldError
		if err := d.Check(); !errors.As(err, &wrong) || wrong.Field != field || wrong.Want == "" {
			t.Errorf("%s: %v", field, err)
		}
	}
}
