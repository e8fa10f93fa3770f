package attempt

import (
	"cmp"
	"fmt"

	"steadyneedle/sim/board"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/world"
)

// Stuck is why a scripted operator could not go on.
type Stuck struct {
	Operator string
	Line     int // of its file
	Why      string
	At       world.Tick
}

func (s *Stuck) Error() string {
	return fmt.Sprintf("operator %s, line %d, at %.1f s: %s", s.Operator, s.Line, s.At.Seconds(), s.Why)
}

// Known is what an operator is told of this attempt's world before it begins.
func (a *Attempt) Known() operator.Known {
	i := &a.Drill.Setup.Rig.Instruments
	k := operator.Known{
		Controls: a.Scene.World.Controls(), Signals: a.Scene.World.Signals(), Values: a.Drill.Values,
		Divisions: map[string]float64{
			"intake_gauge": i.Intake.Division, "discharge_gauge": i.Discharge.Division, "tach": i.Tach.Division,
			"oil_gauge": i.Oil.Division, "coolant_gauge": i.Coolant.Division, "volts_gauge": i.Volts.Division,
			"pump_temp_gauge": i.PumpTemp.Division,
		},
	}
	for n := range a.Drill.Setup.Rig.Discharges {
		k.Divisions[fmt.Sprintf("line%d_gauge", n+1)] = i.Line.Division
	}
	return k
}

// Operator readies a script's operator for this attempt.
func (a *Attempt) Operator(s *operator.Script, h operator.Hands) (*operator.Operator, error) {
	o, err := operator.New(s, h, a.Known())
	if err != nil {
		return nil, fmt.Errorf("operator %s: %w", s.Name, err)
	}
	return o, nil
}

// Hand lets a scripted operator act in the coming tick. r is the caller's, kept from tick to tick; it
// is filled on the beat, for eyes are not quicker.
func (a *Attempt) Hand(o *operator.Operator, r *world.Reading, acts []world.Action) []world.Action {
	now := a.Now()
	if now%board.Beat == 0 {
		a.Read(r)
	}
	acts = o.Step(now, r, acts[:0])
	for i := range acts {
		if err := a.Do(acts[i]); err != nil {
			o.Refused(err)
			break
		}
	}
	return acts
}

// tailS is how long an attempt may go on after its script is done, for the drill to end it.
const tailS = 30

// Run lets a scripted operator work the drill to its end, and closes the attempt. An operator that is
// stuck gives a *Stuck, and an unsafe act on which nobody decides an error; what it did until then is
// judged.
func (a *Attempt) Run(name string, o *operator.Operator) error {
	return a.RunWatched(name, o, func() {})
}

// RunWatched is Run with somebody who looks on after every tick, and may decide on unsafe acts.
func (a *Attempt) RunWatched(name string, o *operator.Operator, look func()) error {
	var r world.Reading
	acts := make([]world.Action, 0, 16)
	left := world.TicksIn(tailS)
	for !a.Finished() && left > 0 {
		acts = a.Hand(o, &r, acts)
		a.Tick()
		look()
		if f := a.Undecided(); f != nil {
			return cmp.Or(a.Close(), fmt.Errorf("nobody decides on the unsafe act %s at %.1f s", f.Rule, f.From.Seconds()))
		}
		if o.Done() {
			left--
			if why, line := o.Stuck(); why != "" {
				err := &Stuck{Operator: name, Line: line, Why: why, At: a.Now()}
				if closing := a.Close(); closing != nil {
					return closing
				}
				return err
			}
		}
	}
	return a.Close()
}
