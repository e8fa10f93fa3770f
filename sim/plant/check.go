package plant

import (
	"errors"
	"fmt"

	"steadyneedle/sim/fireground"
)

// check refuses what cannot be built, and fills in what is left open.
func check(s *Setup) error {
	if s.AirF == 0 && s.WaterF == 0 {
		s.AirF = 70
	}
	if s.WaterF == 0 {
		s.WaterF = 60
	}
	if s.Substeps == 0 {
		s.Substeps = defaultSubsteps
	}
	if s.Substeps < 1 || s.Substeps > mostSubsteps {
		return fmt.Errorf("plant: %d substeps, expected 1 to %d", s.Substeps, mostSubsteps)
	}
	if !(s.AirF > -60 && s.AirF < 150) || !(s.WaterF >= 32 && s.WaterF <= 150) {
		return fmt.Errorf("plant: air %v °F, water %v °F: expected −60 to 150 and 32 to 150", s.AirF, s.WaterF)
	}
	if err := s.Rig.Check(); err != nil {
		return err
	}
	if err := checkSource(s); err != nil {
		return err
	}
	return checkLine(&s.Line)
}

func checkSource(s *Setup) error {
	if d := s.Draft; d != nil {
		if !(d.LiftFt >= 0 && d.LiftFt < 40 && d.SuctionFt > 0 && d.SuctionIn > 0 && d.LossC >= 0) {
			return errors.New("plant: the draft needs a lift of 0 to 40 ft and a suction hose with length and size")
		}
		return nil
	}
	h := &s.Hydrant
	if !(h.StaticPSI > 0 && h.ResidualPSI < h.StaticPSI && h.ResidualPSI >= 0 && h.FlowGPM > 0) {
		return fmt.Errorf("plant: hydrant %v/%v psi at %v gpm: the residual must be below the static pressure, at a flow above 0", h.StaticPSI, h.ResidualPSI, h.FlowGPM)
	}
	return checkHose("supply hose", &s.Supply)
}

func checkLine(l *fireground.LineDef) error {
	if err := checkHose("line", &l.Trunk); err != nil {
		return err
	}
	if (l.Nozzle == nil) == (len(l.Branches) == 0) {
		return errors.New("plant: a line ends in one nozzle or in branches, not both and not neither")
	}
	if l.Nozzle != nil {
		return checkNozzle(l.Nozzle)
	}
	for i := range l.Branches {
		b := &l.Branches[i]
		if err := checkHose("branch", &b.Hose); err != nil {
			return err
		}
		if !(b.Hose.LengthFt > 0) {
			return errors.New("plant: a branch needs a length")
		}
		if err := checkNozzle(&b.Nozzle); err != nil {
			return err
		}
	}
	return nil
}

func checkHose(what string, h *fireground.HoseDef) error {
	if !(h.SizeIn > 0 && h.SizeIn <= 12 && h.LossC > 0 && h.LengthFt >= 0) {
		return fmt.Errorf("plant: %s of %v in with friction coefficient %v: both must be above 0", what, h.SizeIn, h.LossC)
	}
	return nil
}

func checkNozzle(n *fireground.NozzleDef) error {
	if !(n.TipIn > 0) && !(n.RatedGPM > 0 && n.RatedPSI > 0) {
		return errors.New("plant: a nozzle needs a tip, or a rated flow at a rated pressure")
	}
	return nil
}
