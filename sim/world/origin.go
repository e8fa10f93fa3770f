package world

// source is a signal and where its number comes from. A control's, which is where the control is now,
// has no origin of its own.
type source struct {
	Signal
	from origin
}

// origin is where a signal's number comes from: one of four.
type origin struct {
	kept   func(*World) *float64
	lamp   func(*World) *bool
	fixed  func(*World) float64
	byHand func(*World) float64
}

// kept is a number that lies somewhere in the world and is copied from there each tick; it must not move.
func kept(at func(*World) *float64) origin { return origin{kept: at} }

// lamp is such a flag, copied as 0 or 1.
func lamp(at func(*World) *bool) origin { return origin{lamp: at} }

// fixed is the same as long as the world lives.
func fixed(get func(*World) float64) origin { return origin{fixed: get} }

// byHand follows from where the controls are and how the apparatus has rolled, and from nothing else: it is
// worked out anew when one of them has moved.
func byHand(get func(*World) float64) origin { return origin{byHand: get} }

// origins are where the signals of one world come from, sorted by how they are taken.
type origins struct {
	kept         []keptAt
	lamps        []lampAt
	byHand       []byHandAt
	firstControl int // signal of the first control; the others follow
}

// Each knows the place of its signal by a pointer: the table of signals doesn't move either, and an index
// would be checked each time.

type keptAt struct{ from, to *float64 }

type lampAt struct {
	from *bool
	to   *float64
}

type byHandAt struct {
	get func(*World) float64
	to  *float64
}

// findOrigins sorts the signals by where they come from, and writes down what never changes.
func (w *World) findOrigins() {
	o := &w.origins
	for i := range w.signals {
		switch from, to := &w.signals[i].from, &w.truth.V[i]; {
		case from.kept != nil:
			o.kept = append(o.kept, keptAt{from.kept(w), to})
		case from.lamp != nil:
			o.lamps = append(o.lamps, lampAt{from.lamp(w), to})
		case from.fixed != nil:
			*to = from.fixed(w)
		case from.byHand != nil:
			o.byHand = append(o.byHand, byHandAt{from.byHand, to})
		case o.firstControl == 0:
			o.firstControl = i
		}
	}
}

// publish tells what is so now.
func (w *World) publish() {
	w.truth.At = w.now
	w.sumUp()
	o := &w.origins
	copyKept(o.kept)
	copyLamps(o.lamps)
	if w.stale {
		w.stale = false
		for i := range o.byHand {
			h := &o.byHand[i]
			*h.to = h.get(w)
		}
		copy(w.truth.V[o.firstControl:], w.at)
	}
}

// One loop to a function: in WebAssembly each turn of a loop costs by what all of its function keeps in mind.

//go:noinline
func copyKept(list []keptAt) {
	for i := range list {
		k := &list[i]
		*k.to = *k.from
	}
}

//go:noinline
func copyLamps(list []lampAt) {
	for i := range list {
		l := &list[i]
		*l.to = flag(*l.from)
	}
}
