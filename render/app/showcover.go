package app

import (
	"math"
	"strings"

	"steadyneedle/render/cutaway"
	"steadyneedle/sim/demo"
)

// read is the gauge that tells of what is so: where the gauge is covered, so is that.
func read(truth string) string {
	switch truth {
	case "discharge_psi", "net_psi":
		return "discharge_gauge"
	case "intake_psi":
		return "intake_gauge"
	case "engine_rpm", "shaft_rpm":
		return "tach"
	case "pump_f":
		return "pump_temp_gauge"
	}
	if line, ok := strings.CutSuffix(truth, "_psi"); ok && strings.HasPrefix(line, "line") {
		return line + "_gauge"
	}
	return truth
}

// hidden reports whether one of some readings is covered: the class has been asked, and must not see the
// answer yet.
func (s *show) hidden(names ...string) bool {
	p := s.stage.Player()
	for _, n := range names {
		if p.Hidden(n) || p.Hidden(read(n)) {
			return true
		}
	}
	return false
}

// tells is what a lamp speaks of: where that is covered, so is the lamp.
var tells = map[string]string{"amber": "relief_gpm", "pump_hot_lamp": "pump_temp_gauge"}

// covers reports whether a gauge or lamp of panel and cab is covered: the class sees them too.
func (s *show) covers(signal string) bool {
	return s.hidden(signal) || tells[signal] != "" && s.hidden(tells[signal])
}

// covered reports whether anything is.
func (s *show) covered() bool {
	ask := s.stage.Player().Step().Ask
	return ask != nil && s.hidden(ask.Hide...)
}

// state is the inside of the pump, from the truth, less what is covered.
func (s *show) state() cutaway.State {
	t := func(name string) float64 {
		if v := s.stage.Truth(name); !math.IsNaN(v) {
			return v
		}
		return 0
	}
	seen := func(name string) float64 {
		if s.hidden(name) {
			return math.NaN()
		}
		return t(name)
	}
	p := s.stage.Player()
	st := cutaway.State{
		At: p.Attempt.Now().Seconds(), IntakePSI: seen("intake_psi"), DischargePSI: seen("discharge_psi"), ShaftRPM: seen("shaft_rpm"),
		HeadFactor: t("head_factor"), AirFactor: t("air_factor"), CasingWater: t("casing_water"),
		TransferAt: t("transfer_at"), Series: s.series(), ClapperOpen: t("clapper_open") > 0,
		NPSHa: seen("npsh_available"), NPSHr: t("npsh_required"), PumpF: seen("pump_f"),
		IntakeGPM: t("intake_gpm"), TankToPumpGPM: t("tank_to_pump_gpm"), DischargeGPM: max(0, t("pump_gpm")-t("relief_gpm")-t("recirc_gpm")-t("tank_fill_gpm")),
		ReliefGPM: t("relief_gpm"), RecircGPM: t("recirc_gpm"), TankFillGPM: t("tank_fill_gpm"), ReliefLift: t("relief_lift"), ReliefSetPSI: t("relief_set_psi"),
		Governor: t("relief_fitted") == 0, TankGal: t("tank_gal"), TankShare: t("tank_gal") / s.stage.Rig().Tank.Gallons,
		SupplyFill: t("supply_fill"), Draft: p.Attempt.Drill.Setup.Ground.Draft != nil,
	}
	if s.hidden("relief_gpm", "amber") {
		st.ReliefHidden, st.ReliefGPM, st.ReliefLift = true, 0, 0
	}
	if s.hidden("npsh_available", "head_factor", "intake_psi") {
		st.NPSHa, st.HeadFactor = math.NaN(), 1
	}
	return st
}

// series is how far the second impeller of a two-stage pump stands behind the first; a clapper valve that stays
// open lets most of the first one's rise back to the intake.
func (s *show) series() float64 {
	at := s.stage.Truth("transfer_at")
	if tr := s.stage.Rig().Pump.Transfer; tr != nil && s.stage.Truth("clapper_open") > 0 {
		at *= 1 - tr.ClapperBack
	}
	return at
}

// lower is what stands below the plot against time.
func (s *show) lower() demo.Below {
	if s.below == nil {
		return s.stage.Player().Demonstration.Below
	}
	return *s.below
}

// nextLower takes the next one.
func (s *show) nextLower(a *App) {
	next := (s.lower() + 1) % demo.Belows
	s.below = &next
	a.stale = true
}
