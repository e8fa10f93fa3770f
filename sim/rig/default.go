package rig

// Default returns Engine 41: a single-stage 1500 gpm pumper with a discharge relief valve and a
// 500 gal tank. Pump and engine constants are assumptions that together meet the pump's rating points
// from draft; the rest is common practice of the trade.
func Default() Def {
	return Def{
		Name:          "engine-41",
		Title:         "Engine 41, single-stage 1500 gpm pumper with relief valve",
		Engine:        defaultEngine(),
		Cooling:       defaultCooling(),
		Drive:         DriveDef{ShiftS: 3, WindDownS: 4.5, ClashRPM: 50, Loss: 0.03, EngageS: 0.7, SlipLbFt: 45},
		Pump:          defaultPump(),
		Primer:        PrimerDef{AirLS: 12, MaxInHg: 23, WaterGPM: 8},
		Relief:        defaultRelief(),
		Tank:          defaultTank(),
		Intake:        IntakeDef{Label: "Left intake", Color: "burgundy", Valve: ValveDef{SizeIn: 4.5, Cv: 900, Curve: 2, Lock: 0.02, TravelS: 3}, CouplingIn: 4, BleederCv: 3, OpenAt: 0.99},
		TankFill:      ValveDef{SizeIn: 1.5, Cv: 16, Curve: 3, Lock: 0.03},
		Recirculation: ValveDef{SizeIn: 0.5, Cv: 1.75, Curve: 1, Lock: 0.03},
		Discharges: []DischargeDef{
			defaultDischarge("Discharge 1", "yellow"),
			defaultDischarge("Discharge 2", "white"),
			defaultDischarge("Discharge 3", "blue"),
		},
		LineHose:    defaultLineHose(),
		SupplyHose:  defaultSupplyHose(),
		Instruments: defaultInstruments(),
	}
}

func defaultDischarge(label, color string) DischargeDef {
	return DischargeDef{Label: label, Color: color, Valve: ValveDef{SizeIn: 2.5, Cv: 300, Curve: 6, Lock: 0.03}, DrainCv: 4}
}

func defaultEngine() EngineDef {
	return EngineDef{
		IdleRPM: 700, GovernedRPM: 2150, Droop: 0.07, FuelLagS: 0.03,
		Torque:       [][2]float64{{0, 200}, {600, 560}, {1100, 1080}, {1300, 1200}, {1500, 1200}, {1900, 1080}, {2100, 1000}, {2350, 0}},
		InertiaLbFt2: 140, FrictionLbFt: 100, FollowRPMS: 330, StallRPM: 380, CrankS: 1.2,
		OilIdlePSI: 28, OilPSI: 62, LowOilPSI: 12, Volts: 13.9, BatteryVolts: 12.6,
	}
}

func defaultCooling() CoolingDef {
	return CoolingDef{StartF: 184, ThermostatF: 180, ThermalBtuF: 330, HeatShare: 0.45, IdleHeatHP: 12, RadiatorHP: 190, CoolerHP: 140, CoolerCv: 1.2, HotF: 220}
}

func defaultPump() PumpDef {
	return PumpDef{
		RatedGPM: 1500, RatedRPM: 1520, ShutoffPSI: 195, LossPSI: 2e-5, ShaftHP: 75, FlowHP: 0.075,
		CasingGal: 26.417, CasingLb: 330.7, LossBtuHrF: 30, EyeGal: 5.283, AirLow: 0.02, AirHigh: 0.18,
		NPSHBaseFt: 1.9685, NPSHSpeedFt: 3, NPSHFlowFt: 9, GoneRatio: 0.4,
		DrainCv: 4, HotF: 140, DamageS: 900, LeakInGPM: 0.4,
	}
}

func defaultRelief() *ReliefDef {
	return &ReliefDef{
		LowestPSI: 50, PSIPerTurn: 23, Turns: 10, StandbyPSI: 150, Cv: 220,
		PilotLagS: 0.01, LiftLagS: 0.03, SpanPSI: 20, Overlap: 0.03, AmberOn: 0.03, AmberOff: 0.01,
	}
}

func defaultTank() TankDef {
	return TankDef{
		Gallons: 500, StartFraction: 0.75, BottomFt: 0.5, DepthFt: 3,
		ToPump:      ValveDef{SizeIn: 4, Cv: 335, Curve: 3, Lock: 0.03, TravelS: 0.6},
		VortexShare: 0.06, LampFill: 0.12, OverflowGPM: 1000,
	}
}

func defaultInstruments() InstrumentsDef {
	return InstrumentsDef{
		Intake:    GaugeDef{Low: -30, High: 400, Division: 5, Grade: "1A", Bias: 2, RadS: 4, Damping: 0.7, Pulse: 0.3},
		Discharge: GaugeDef{Low: 0, High: 400, Division: 5, Grade: "1A", Bias: 4, RadS: 4, Damping: 0.7, Pulse: 1},
		Line:      GaugeDef{Low: 0, High: 400, Division: 5, Grade: "B", Bias: 6, RadS: 4, Damping: 0.7, Pulse: 0.8},
		Tach:      GaugeDef{Low: 0, High: 3000, Division: 50, Bias: 15, RadS: 6, Damping: 0.8},
		Oil:       GaugeDef{Low: 0, High: 100, Division: 5, Bias: 1, RadS: 3, Damping: 1},
		Coolant:   GaugeDef{Low: 100, High: 280, Division: 5, Bias: 2, RadS: 1, Damping: 1},
		Volts:     GaugeDef{Low: 8, High: 18, Division: 0.5, Bias: 0.1, RadS: 3, Damping: 1},
		PumpTemp:  GaugeDef{Low: 40, High: 240, Division: 5, Bias: 2, RadS: 1, Damping: 1},
	}
}
