package hydraulics

import (
	"testing"

	"steadyneedle/sim/unit"
)

// fl is the friction loss in hose of a published coefficient.
func fl(t *testing.T, size unit.Inches, q unit.GPM, length unit.Feet) unit.PSI {
	t.Helper()
	c, ok := Coefficient(size, 0)
	if !ok {
		t.Fatalf("no coefficient for %v in", size)
	}
	return FrictionLoss(c, q, length)
}

func siamesed(t *testing.T, size unit.Inches, lines int, q unit.GPM, length unit.Feet) unit.PSI {
	t.Helper()
	c, _ := Coefficient(size, 0)
	return FrictionLoss(Siamesed(c, lines), q, length)
}

// PDP = NP + FL + AL ± EL [C unless marked].
func TestPumpDischargeTable(t *testing.T) {
	tip := SmoothBore
	for _, c := range []struct {
		lay  string
		got  unit.PSI
		want float64
	}{
		{"200 ft 1¾, fog 150 at 100", PumpDischarge(FogNozzle, fl(t, 1.75, 150, 200), 0, 0), 169.8},
		{"150 ft 1¾, 15/16 at 50", PumpDischarge(HandlineTip, fl(t, 1.75, tip(15.0/16, 50), 150), 0, 0), 129.2},
		{"200 ft 2½, 1⅛ at 50", PumpDischarge(HandlineTip, fl(t, 2.5, tip(1.125, 50), 200), 0, 0), 78.3},
		{"250 ft 2½, 1¼ at 50", PumpDischarge(HandlineTip, fl(t, 2.5, tip(1.25, 50), 250), 0, 0), 103.8},
		{"200 ft 1¾, fog 175 at 75, two floors up", PumpDischarge(LowPressureFog2, fl(t, 1.75, 175, 200), 0, Floors(2)), 179.9},
		{"wye, 200 ft 2½ to two 150 ft 1¾, 150 at 100",
			PumpDischarge(FogNozzle, fl(t, 2.5, 300, 200)+fl(t, 1.75, 150, 150), ApplianceLoss(300), 0), 188.3},
		{"wye, 400 ft 3 in to two 150 ft 1¾, 200 at 100",
			PumpDischarge(FogNozzle, fl(t, 3, 400, 400)+fl(t, 1.75, 200, 150), ApplianceLoss(400), 0), 254.2},
		{"deck gun 1½ at 80", PumpDischarge(MasterTip, 0, MasterStreamLoss, 0), 105},
		{"monitor 1⅜ at 80, 300 ft of two 2½",
			PumpDischarge(MasterTip, siamesed(t, 2.5, 2, tip(1.375, 80), 300), MasterStreamLoss, 0), 142.8},
		{"ladder pipe 1¾ at 80, 200 ft of two 3 in, 75 ft up",
			PumpDischarge(MasterTip, siamesed(t, 3, 2, tip(1.75, 80), 200), MasterStreamLoss, Elevation(75)), 169.0},
		{"standpipe, 10th floor, 150 ft 2½ with 1⅛, 100 ft 3 in",
			PumpDischarge(HandlineTip, fl(t, 2.5, tip(1.125, 50), 150)+fl(t, 3, tip(1.125, 50), 100), StandpipeLoss, Floors(9)), 146.8},
		{"relay 1000 gpm, 1000 ft 5 in, 20 psi residual", PumpDischarge(IntakeFloor, fl(t, 5, 1000, 1000), 0, 0), 100},
		{"relay 500 gpm, 800 ft 3 in, 30 ft up", PumpDischarge(IntakeFloor, fl(t, 3, 500, 800), 0, Elevation(30)), 195},
		// two wyes of 5 psi each: NWCG [S]
		{"wildland 1000 ft 1½ at 50 gpm, 100 ft up, two wyes", PumpDischarge(FogNozzle, fl(t, 1.5, 50, 1000), 10, Elevation(100)), 220},
		// 40 floors of 5 psi, 100 psi at the outlet: Fire Engineering, Hollins, tandem pumping [S]
		{"40th floor, at the connection", PumpDischarge(100, 0, 0, Floors(40)), 300},
		{"pumper at 150 on a 100 psi hydrant, net", Net(150, 100), 50}, // [P]
		// wye with C = 10 hose, friction alone: Rohnert Park slides [S], rounded there
		{"wye, 200 ft 2½ at 300, 150 ft 1¾ at 150", PumpDischarge(0, FrictionLoss(2, 300, 200)+FrictionLoss(10, 150, 150), 0, 0), 70},
		// the two lays of the reverse-lay drill
		{"600 ft of 2½, 1⅛ at 50", PumpDischarge(HandlineTip, fl(t, 2.5, tip(1.125, 50), 600), 0, 0), 134.8},
		{"300 ft of 3 in, wye, two 150 ft 1¾, 150 at 100",
			PumpDischarge(FogNozzle, fl(t, 3, 300, 300)+fl(t, 1.75, 150, 150), ApplianceLoss(300), 0), 173.9},
	} {
		within := 0.06
		if c.want == 70 {
			within = 0.5
		}
		near(t, c.lay, float64(c.got), c.want, within)
	}
}

func TestAllowances(t *testing.T) {
	// 0 below 350 gpm, 10 psi at or above [P]
	near(t, "349 gpm", float64(ApplianceLoss(349.9)), 0, 0)
	near(t, "350 gpm", float64(ApplianceLoss(350)), 10, 0)
	near(t, "one foot exactly", float64(ElevationExact(1)), 0.434, 1e-15) // [P]
	near(t, "one foot in the field", float64(Elevation(1)), 0.5, 0)       // NWCG [P]
	near(t, "a fall", float64(Elevation(-20)), -10, 0)
	// 0.434 is the weight of 62.4 lb/ft³ over 144 in² [C]
	near(t, "weight of water", 62.4/144, 0.434, 0.001)
}
