package world

import "fmt"

// Person is somebody in the street beside the candidate and the crew at the nozzle. Where they stand
// matters when water is let go.
type Person struct {
	ID     string `file:"id" need:"yes"`   // controls and signals have it
	Name   string `file:"name" need:"yes"` // as in "a firefighter"
	Stands string `file:"stands"`          // one of Stands: where, once the apparatus has come to the hydrant; away unless given
}

// Places where a person of the street can stand, as values of the control ID_at.
const (
	away = iota
	standsClear
	standsAtIntake
	standsAtHydrant
	standsInBight
	standsAtDischarges
	standsAtBed
)

// Stands names those places.
var Stands = []string{"away", "clear", "over the intake coupling", "over the hydrant coupling", "in the bight of the line", "before the discharges", "at the hose bed"}

// Stand is the number of a place by its name, as a value of ID_at.
func Stand(name string) (float64, bool) {
	for i, n := range Stands {
		if n == name || name == "" {
			return float64(i), true
		}
	}
	return 0, false
}

// personControl is where a person stands; cues and instructors move them.
func personControl(p *Person) Control {
	start, _ := Stand(p.Stands) // checked by checkPeople
	return Control{Name: p.ID + "_at", Kind: Choice, Label: p.Name + " stands", Max: float64(len(Stands) - 1), Start: start, Options: Stands, Seen: OnGround, Person: true}
}

// PersonClash finds a person whose control would have the name of another; -1 if there is none.
func (s *Setup) PersonClash() (person int, name string) {
	bare := *s
	bare.Ground.People = nil
	taken := map[string]bool{}
	for _, x := range SignalsOf(&bare) { // each control is a signal too
		taken[x.Name] = true
	}
	for i := range s.Ground.People {
		name := s.Ground.People[i].ID + "_at"
		if taken[name] {
			return i, name
		}
		taken[name] = true
	}
	return -1, ""
}

// checkPeople refuses people who cannot be told apart, or who stand nowhere.
func (s *Setup) checkPeople() error {
	if i, name := s.PersonClash(); i >= 0 {
		return fmt.Errorf("people: %s: the name %s stands for something else already", s.Ground.People[i].ID, name)
	}
	for i := range s.Ground.People {
		p := &s.Ground.People[i]
		if _, ok := Stand(p.Stands); !ok {
			return fmt.Errorf("people: %s stands %q, expected one of %q", p.ID, p.Stands, Stands)
		}
	}
	return nil
}

// findPeople finds their controls.
func (w *World) findPeople() {
	for i := range w.setup.Ground.People {
		c, _ := w.Control(w.setup.Ground.People[i].ID + "_at")
		w.people = append(w.people, c)
	}
}

// peopleAt is how many stand at a place. In the bight of a line that has not been parted yet there is no
// line to stand in.
func (w *World) peopleAt(stand float64) float64 {
	if w.body.stage < atHydrant || stand == standsInBight && w.at[lineBreak] == 0 && w.at[lineCoupling] == 0 {
		return 0
	}
	n := 0.0
	for _, c := range w.people {
		n += flag(w.at[c] == stand)
	}
	return n
}

// peopleSignals tell where people stand, for conditions of every drill.
var peopleSignals = []source{
	{Signal{"people_at_intake", "", OnGround, "people who stand over the supply hose's coupling at the intake"}, byHand(func(w *World) float64 { return w.peopleAt(standsAtIntake) })},
	{Signal{"people_at_hydrant", "", OnGround, "people who stand over the coupling at the hydrant, or before its outlet"}, byHand(func(w *World) float64 { return w.peopleAt(standsAtHydrant) })},
	{Signal{"people_in_bight", "", OnGround, "people who stand in the bight of the line"}, byHand(func(w *World) float64 { return w.peopleAt(standsInBight) })},
	{Signal{"people_at_discharges", "", OnGround, "people who stand before the discharge outlets"}, byHand(func(w *World) float64 { return w.peopleAt(standsAtDischarges) })},
	{Signal{"people_at_bed", "", OnGround, "people who stand at the hose bed"}, byHand(func(w *World) float64 { return w.peopleAt(standsAtBed) })},
}
