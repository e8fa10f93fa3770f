package plant

import "steadyneedle/sim/state"

// walk visits all of Out: a plant that has been loaded shows what it showed when it was saved.
func (o *Out) walk(w *state.Walker) {
	for _, x := range [...]*float64{
		&o.EngineRPM, &o.PumpShaftRPM, &o.EngineLoad, &o.CoolantF, &o.OilPSI, &o.Volts, &o.Clashes, &o.ShaftStopS,
		&o.IntakePSI, &o.DischargePSI, &o.NetPSI, &o.PumpGPM, &o.PumpF, &o.CasingWater, &o.HeadFactor,
		&o.AirFactor, &o.NPSHa, &o.NPSHr, &o.Damage, &o.PrimerS, &o.ShaftHP, &o.IntakeGPM, &o.HydrantGPM,
		&o.TankToPumpGPM, &o.TankFillGPM, &o.RecircGPM, &o.ReliefGPM, &o.BleederGPM, &o.DumpGPM, &o.ReliefLift,
		&o.ReliefSetPSI, &o.TankGal, &o.TankF, &o.HydrantPSI, &o.SupplyFill, &o.SupplyAir, &o.SupplyPSI,
		&o.SupplySurgePSI, &o.IntakeNeedle, &o.DischargeNeedle, &o.TachNeedle, &o.OilNeedle, &o.CoolantNeedle,
		&o.VoltsNeedle, &o.PumpTempNeedle, &o.BypassSound, &o.GravelSound, &o.AirSound,
	} {
		w.Float(x)
	}
	for _, x := range [...]*bool{
		&o.PumpEngaged, &o.OKToPump, &o.ThrottleReady, &o.Overflowing, &o.SupplyFlat, &o.BleederAir,
		&o.IntakeOpenLamp, &o.AmberLamp, &o.PumpHotLamp, &o.EngineHotLamp, &o.LowOilLamp,
	} {
		w.Bool(x)
	}
	for i := range o.TankLamp {
		w.Bool(&o.TankLamp[i])
	}
	w.Floats(o.LineNeedle)
	for i := range o.Lines {
		o.Lines[i].walk(w)
	}
	for i := range o.Lay {
		o.Lay[i].Walk(w)
	}
}

func (l *LineOut) walk(w *state.Walker) {
	for _, x := range [...]*float64{&l.ValvePSI, &l.GPM, &l.Fill, &l.LeakGPM} {
		w.Float(x)
	}
	w.Floats(l.NozzlePSI)
	w.Floats(l.NozzleGPM)
	w.Floats(l.ReactionLbf)
}
