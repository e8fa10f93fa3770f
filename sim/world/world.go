package world

import (
	"fmt"
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/plant"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/state"
)

// World is the drill ground with everything on it. Build it with New.
type World struct {
	setup          Setup
	controls       []Control
	pieces         []piece           // of supply hose, to take
	loads          []rig.LineHoseDef // of the hose bed, to lay the line from
	signals        []source
	origins        origins
	firstDischarge ControlID

	now    Tick
	hand   []float64 // where the hand has brought each control
	at     []float64 // where it is: limited to how fast it can travel; for phrases, times given
	number []float64 // last number said with each phrase
	heard  []float64 // of what others say and show: times the candidate heard or saw it
	given  []float64 // s, when each phrase or gesture was last given
	body   body
	laid   []laidHands
	people []ControlID // where people of the street stand
	others []ControlID // what others say and show
	moving bool        // a hand has moved a control, and it may not be there yet
	stale  bool        // a control has moved, or the apparatus: what follows from that is to be worked out anew
	unsaid bool        // something was said or shown that the candidate has not heard or seen yet
	plant  *plant.Plant

	in    plant.In // follows from the above
	out   *plant.Out
	sum   summary
	truth Truth // likewise, and from the plant
}

// New builds a world. It fails with one error that names what in the setup cannot work.
func New(s Setup) (*World, error) {
	if s.Substeps == 0 {
		s.Substeps = 4
	}
	if n := s.Ground.Discharge; n < 1 || n > len(s.Rig.Discharges) {
		return nil, fmt.Errorf("discharge %d: the apparatus has discharges 1 to %d", n, len(s.Rig.Discharges))
	}
	if err := s.checkLaid(); err != nil {
		return nil, err
	}
	if err := s.checkPeople(); err != nil {
		return nil, err
	}
	p, err := plant.New(plant.Setup{
		Rig: s.Rig, Hydrant: s.Ground.Hydrant, Supply: s.Ground.Supply, Line: s.Ground.Line, Lay: s.Ground.Lay, Draft: s.Ground.Draft,
		AirF: s.Ground.AirF, WaterF: s.Ground.WaterF, Substeps: s.Substeps, Seed: s.Seed, Without: s.Without,
	})
	if err != nil {
		return nil, err
	}
	w := &World{setup: s, controls: ControlsOf(&s), pieces: s.pieces(), signals: sourcesOf(&s), plant: p, in: p.NewIn(), out: p.Out()}
	w.loads, _ = s.loads()
	w.firstDischarge = ControlID(len(commonControls) + len(groundControls) + len(faultControls))
	n := len(w.controls)
	w.hand, w.at = make([]float64, n), make([]float64, n)
	w.number, w.heard, w.given = make([]float64, n), make([]float64, n), make([]float64, n)
	w.truth.V = make([]float64, len(w.signals))
	w.sum.nozzles = make([]nozzleState, w.setup.Nozzles())
	w.findLaid()
	w.findPeople()
	w.findOrigins()
	w.findOthers()
	if err := w.start(); err != nil {
		return nil, err
	}
	w.renew()
	return w, nil
}

// renew works everything out anew, whatever has moved, now and in the next tick.
func (w *World) renew() {
	w.stale = true
	w.publish()
	w.moving, w.unsaid, w.stale = true, true, true
}

// start puts every control where it begins.
func (w *World) start() error {
	for i := range w.controls {
		w.hand[i] = w.controls[i].Start
	}
	for i := range w.controls { // by the list, not by the map, for the order of errors
		c := &w.controls[i]
		if v, ok := w.setup.Start[c.Name]; ok {
			if c.Missing != "" {
				return fmt.Errorf("start of %s: %s", c.Name, c.Missing)
			}
			switch {
			case !(v >= c.Min && v <= c.Max): // and so is what is not a number
				return fmt.Errorf("start of %s: %g is not between %g and %g", c.Name, v, c.Min, c.Max)
			case c.Whole() && v != math.Floor(v):
				return fmt.Errorf("start of %s: %g is not a whole number", c.Name, v)
			}
			w.hand[i] = v
		}
	}
	for name := range w.setup.Start { //order: one error is as good as another
		if _, ok := w.Control(name); !ok {
			return fmt.Errorf("start: no control is named %q", name)
		}
	}
	for i := range w.given {
		w.given[i] = longAgo
	}
	copy(w.at, w.hand)
	w.body.begin(&w.setup)
	return nil
}

// Controls lists all controls; ControlID is the index.
func (w *World) Controls() []Control { return w.controls }

// Control finds a control by name.
func (w *World) Control(name string) (ControlID, bool) {
	for i := range w.controls {
		if w.controls[i].Name == name {
			return ControlID(i), true
		}
	}
	return 0, false
}

// Signals lists all signals; SignalID is the index.
func (w *World) Signals() []Signal {
	list := make([]Signal, len(w.signals))
	for i := range w.signals {
		list[i] = w.signals[i].Signal
	}
	return list
}

// Signal finds a signal by name.
func (w *World) Signal(name string) (SignalID, bool) {
	for i := range w.signals {
		if w.signals[i].Name == name {
			return SignalID(i), true
		}
	}
	return 0, false
}

// Setup is what the world was built from.
func (w *World) Setup() *Setup { return &w.setup }

// Now is the tick that the next Step will make.
func (w *World) Now() Tick { return w.now }

// Place is where the candidate stands.
func (w *World) Place() Place { return w.body.place }

// Bound is where the candidate is walking to; it equals Place for one who stands.
func (w *World) Bound() Place { return w.body.goal }

// Arrives is the tick at which a walk ends; in the past for one who stands.
func (w *World) Arrives() Tick { return w.body.arrive }

// Hand is where the hand has brought a control; Truth has where it is.
func (w *World) Hand(id ControlID) float64 { return w.hand[id] }

// Step applies the actions that are due and advances the world by one tick. Actions must have passed
// Check.
func (w *World) Step(due []Action) {
	for i := range due {
		w.apply(&due[i])
	}
	w.travel()
	w.body.step(w)
	w.hear()
	if w.stale {
		w.feed()
		w.plant.Set(&w.in)
	}
	w.plant.Advance(&w.in)
	w.stand()
	w.now++
	w.publish()
}

// travel moves each control toward the hand, as fast as it can go.
func (w *World) travel() {
	if !w.moving {
		return
	}
	w.moving, w.stale = false, true
	at := w.at
	for i, hand := range w.hand[:len(at)] {
		if at[i] != hand {
			w.move(i)
			w.moving = w.moving || at[i] != hand
		}
	}
}

func (w *World) move(i int) {
	c := &w.controls[i]
	switch {
	case c.said():
	case c.TravelS == 0:
		w.at[i] = w.hand[i]
	default:
		most := (c.Max - c.Min) / (c.TravelS * TicksPerSecond)
		w.at[i] += bound.Within(w.hand[i]-w.at[i], -most, most)
	}
}

// Truth is what is so now. It is overwritten by the next Step.
func (w *World) Truth() *Truth { return &w.truth }

// Read copies into dst what can be perceived from a place; the rest is NaN.
func (w *World) Read(from Place, dst *Reading) {
	if len(dst.V) != len(w.signals) {
		dst.V = make([]float64, len(w.signals))
	}
	dst.At, dst.Place = w.now, from
	for i := range w.signals {
		if w.signals[i].Seen.Has(from) {
			dst.V[i] = w.truth.V[i]
		} else {
			dst.V[i] = unseen
		}
	}
}

// Walk visits all that the next tick depends on.
func (w *World) Walk(k *state.Walker) {
	k.Int64((*int64)(&w.now))
	k.Floats(w.hand)
	k.Floats(w.at)
	k.Floats(w.number)
	k.Floats(w.heard)
	k.Floats(w.given)
	w.body.walk(k)
	w.plant.Walk(k)
	if k.Loading() {
		w.out = w.plant.Out()
		w.renew()
	}
}

// Hash is a number that differs as soon as anything in the world does.
func (w *World) Hash() uint64 {
	k := state.Hasher()
	w.Walk(&k)
	return k.Sum()
}
