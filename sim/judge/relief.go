package judge

// The tests of a discharge relief valve. Their numbers come from the design of the drills (common
// practice for what is wanted of a set valve; the numbers are assumptions) and can be changed by a rule.

var shutLimits = []limit{
	{"for_s", 12},     // how long the flow is watched
	{"bypass_gpm", 1}, // most that may pass
}

// reliefShut: in normal flow the lamp is out and next to nothing is by-passed.
type reliefShut struct {
	*rigging
	length int
	most   float64
	lamp   bool
}

// settleTicks is given to the flow where the nozzles had to be opened for the test.
const settleTicks = 8 * 60

func newReliefShut(g *rigging) (experiment, error) {
	t := &reliefShut{rigging: g, length: int(float64(g.limit("for_s") * 60))}
	if g.flowing() {
		t.length += settleTicks
	}
	return t, nil
}

func (t *reliefShut) step() bool {
	t.tick()
	if t.ticks > t.length-2*60 { // the last two seconds count
		t.most = max(t.most, t.see(t.bypass))
		t.lamp = t.see(t.amber) != 0
	}
	return t.ticks >= t.length
}

func (t *reliefShut) verdict() (bool, how, float64) {
	return t.most < t.limit("bypass_gpm") && !t.lamp, lampOn, t.most
}

var holdsLimits = []limit{
	{"rpm_per_s", 25}, // how fast the engine is sped up
	{"over_psi", 15},  // it must lift before the line stands so far above its reading
	{"under_psi", 3},  // and not below it by more than a needle's unrest
	{"close_s", 8},    // lines are shut in this time: 5 to 10 s
	{"rise_psi", 30},  // most that the pressure may stand higher then
	{"lift", 0.02},    // opening that counts as lifted
}

type phase uint8

const (
	waiting phase = iota
	reading
	raising
	steadying
	closing
	holding
	ended
)

// reliefHolds: the engine is sped up until the valve lifts, near the line's reading; then, with the
// throttle left there, the nozzles are shut, and the valve must be what holds the pressure. The second
// half cannot be left out: fixed to a hydrant, an engine at fixed throttle shows a small rise with no
// valve at all.
type reliefHolds struct {
	*rigging
	now      phase
	left     int // ticks left of the present phase
	sum, n   float64
	read     float64 // the line's reading
	base     float64 // before the nozzles are shut
	opened   []float64
	raise    raiser
	why      how
	measured float64
	failed   bool
}

func newReliefHolds(g *rigging) (experiment, error) {
	t := &reliefHolds{rigging: g, now: reading, left: 60}
	if g.flowing() {
		t.now, t.left = waiting, settleTicks
	}
	return t, nil
}

func (t *reliefHolds) step() bool {
	switch t.now {
	case raising:
		t.raise.work(t.rigging, t.limit("rpm_per_s"))
	case closing:
		share := max(0, float64(t.left-1)/float64(t.limit("close_s")*60))
		for i, id := range t.nozzles {
			t.set(id, float64(t.opened[i]*share))
		}
	}
	t.tick()
	t.left--
	needle := t.see(t.gauge)
	switch t.now {
	case reading, steadying:
		t.add(needle, 60)
	case raising:
		t.watchLift(needle - t.read)
	case holding:
		t.add(needle, 2*60)
	}
	if t.left <= 0 {
		t.next()
	}
	return t.now == ended
}

// add averages the needle over the last ticks of a phase.
func (t *reliefHolds) add(needle float64, last int) {
	if t.left < last {
		t.sum += needle
		t.n++
	}
}

func (t *reliefHolds) mean() float64 {
	m := t.sum / max(1, t.n)
	t.sum, t.n = 0, 0
	return m
}

// watchLift ends the raising when the valve lifts or should have.
func (t *reliefHolds) watchLift(above float64) {
	switch {
	case t.see(t.lift) > t.limit("lift"):
		if above < -t.limit("under_psi") {
			t.fail(earlyLift, above)
			return
		}
		t.left = 0
	case above > t.limit("over_psi"), t.left <= 0:
		t.fail(noLift, t.limit("over_psi"))
	}
}

func (t *reliefHolds) fail(why how, measured float64) {
	t.failed, t.why, t.measured, t.now, t.left = true, why, measured, ended, 1
}

// next goes on to the phase that follows.
func (t *reliefHolds) next() {
	switch t.now {
	case waiting:
		t.now, t.left = reading, 60
	case reading:
		t.read = t.mean()
		t.now, t.left = raising, 90*60
		t.raise.begin(t.rigging)
	case raising:
		t.now, t.left = steadying, 3*60
	case steadying:
		t.base = t.mean()
		t.opened = t.opened[:0]
		for _, s := range t.nozzleAt {
			t.opened = append(t.opened, t.see(s))
		}
		t.now, t.left = closing, int(float64(t.limit("close_s")*60))
	case closing:
		t.now, t.left = holding, 8*60
	case holding:
		rise := t.mean() - t.base
		t.now = ended
		if rise > t.limit("rise_psi") {
			t.fail(lateLift, rise)
		} else if t.see(t.lift) <= t.limit("lift") {
			t.fail(seated, rise)
		}
	}
}

func (t *reliefHolds) verdict() (bool, how, float64) { return !t.failed, t.why, t.measured }

// raiser speeds the engine up at a steady rate by its throttle, whatever the throttle's law.
type raiser struct{ from, ticks, position float64 }

func (r *raiser) begin(g *rigging) {
	*r = raiser{from: g.see(g.rpm), position: g.see(g.position)}
}

func (r *raiser) work(g *rigging, rpmPerS float64) {
	r.ticks++
	const span = 1450 // rpm from idle to governed speed (assumption); what is off is made good below
	rate := rpmPerS / span
	behind := r.from + float64(rpmPerS*r.ticks)/60 - g.see(g.rpm)
	push := max(0, min(float64(3*rate), rate+float64(behind*0.0005)))
	r.position = min(1, r.position+push/60)
	g.set(g.throttle, r.position)
}
