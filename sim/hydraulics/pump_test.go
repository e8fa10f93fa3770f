package hydraulics

import (
	"testing"

	"steadyneedle/sim/unit"
)

func TestPower(t *testing.T) {
	near(t, "1500 gpm at 150 psi", float64(WaterPower(1500, 150)), 131.3, 0.05)                // [C]
	near(t, "the same at 70 %", float64(BrakePower(WaterPower(1500, 150), 0.70)), 187.5, 0.05) // [C]
}

func TestSuction(t *testing.T) {
	// NPSHa example, Civil Engineering Handbook [S]
	near(t, "NPSH available", float64(NPSHAvailable(33.9, 6.0, 0.839, 2.0+2.0)), 35.06, 0.005)
	for _, c := range []struct {
		ft  unit.Feet
		psi float64
	}{ // ISA [C]
		{0, 14.696}, {2000, 13.664}, {5000, 12.228}, {10000, 10.106},
	} {
		near(t, "atmosphere", float64(Atmosphere(c.ft)), c.psi, 0.0015)
	}
	near(t, "theoretical lift", float64(Lift(14.696)), 33.9, 0.05)               // NWCG [S]
	near(t, "one inHg lifts", float64(Lift(Atmosphere(0)))/29.921, 1.134, 0.004) // NWCG [S]
}

func TestHeat(t *testing.T) {
	// [C], water only: 50 hp in 25 gal
	rise := float64(DeadHeadRise(50, 25))
	near(t, "dead-headed, °F a minute", rise, 10.2, 0.05)
	near(t, "60 to 120 °F, minutes", (120-60)/rise, 5.9, 0.05)
	// 5000 ft at 0.80 → 1.6 °F [S]; 15 °F needs BHP/2.95 [S]
	near(t, "flowing", float64(FlowingRise(5000, 0.80)), 1.6, 0.05)
	near(t, "flow for 15 °F", float64(CoolingFlow(295, 15)), 100, 0.1)
}

func TestHammer(t *testing.T) {
	// ρaΔV: 6.7 psi for each ft/s at 500 ft/s [C]
	near(t, "jump", float64(Joukowsky(500, 1)), 6.7, 0.05)
	near(t, "twice the speed, twice the jump", float64(Joukowsky(500, 2)), 2*float64(Joukowsky(500, 1)), 1e-12)
}
