package plant

import (
	"fmt"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
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
	if err := s.Lay.Check(layout.Ground{Discharges: len(s.Rig.Discharges), Hydrant: s.Draft == nil}); err != nil {
		return err
	}
	return checkLine(&s.Line)
}

// ElementError says which element of a setup cannot be built, and why, in one line. What is wrong with a
// part of the plan is a *layout.Error.
type ElementError struct{ Element, Why string }

func (e *ElementError) Error() string { return "plant: " + e.Element + ": " + e.Why }

// wrong makes an error unless why is empty.
func wrong(element, why string) error {
	if why == "" {
		return nil
	}
	return &ElementError{element, why}
}

func checkSource(s *Setup) error {
	d := s.Draft
	if d == nil {
		if err := wrong("hydrant", layout.WrongHydrant(&s.Hydrant)); err != nil {
			return err
		}
		return wrong("supply hose", layout.WrongMake(&s.Supply))
	}
	switch {
	case !(d.LiftFt >= 0 && d.LiftFt < 40):
		return wrong("draft", fmt.Sprintf("lift of %v ft, expected 0 to 40", d.LiftFt))
	case !(d.ElevationFt >= -1000 && d.ElevationFt <= 12000):
		return wrong("draft", fmt.Sprintf("elevation of %v ft, expected -1000 to 12000", d.ElevationFt))
	case !(d.LossC >= 0 && d.LossC < 100):
		return wrong("draft", fmt.Sprintf("friction coefficient %v, expected 0 to 100", d.LossC))
	}
	hose := suction(d)
	return wrong("suction hose", layout.WrongHose(&hose))
}

func checkLine(l *fireground.LineDef) error {
	if l.None() {
		return nil
	}
	if err := wrong("line", layout.WrongMake(&l.Trunk)); err != nil {
		return err
	}
	if l.SectionFt != 0 && !(l.SectionFt >= 10 && l.SectionFt <= 200) {
		return wrong("line", fmt.Sprintf("sections of %v ft, expected 10 to 200", l.SectionFt))
	}
	if (l.Nozzle == nil) == (len(l.Branches) == 0) {
		return wrong("line", "ends in one nozzle or in branches, not both and not neither")
	}
	if l.Nozzle != nil {
		return wrong("nozzle", layout.WrongNozzle(l.Nozzle, true))
	}
	for i := range l.Branches {
		b := &l.Branches[i]
		if err := wrong(fmt.Sprintf("branch %d", i+1), layout.WrongHose(&b.Hose)); err != nil {
			return err
		}
		if err := wrong(fmt.Sprintf("nozzle %d", i+1), layout.WrongNozzle(&b.Nozzle, true)); err != nil {
			return err
		}
	}
	return nil
}
