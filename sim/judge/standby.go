package judge

var standbyLimits = []limit{
	{"set_psi", 150},   // the standby setting
	{"within_psi", 10}, // how near to it the valve must lift
	{"rpm_per_s", 30},
	{"lift", 0.02},
}

// reliefStandby proves on the copy where the valve lifts as it has been left: the pump is put in gear
// again, fed from the tank, given tank fill as outlet, and the engine is sped up until the valve lifts.
type reliefStandby struct {
	*rigging
	raise   raiser
	raising int // tick at which the engine is sped up; 0: not yet
	lifted  bool
	at      float64
}

func newReliefStandby(g *rigging) (experiment, error) {
	return &reliefStandby{rigging: g}, nil
}

// Moments of the preparation, in ticks, and the longest the rest may take.
const (
	shiftAt     = 10 * 60 // the shaft has long run down
	driveBy     = 25 * 60
	fillTicks   = 6 * 60
	raiseTicks  = 90 * 60
	fillOpening = 0.3
)

func (t *reliefStandby) step() bool {
	t.prepare()
	if t.raising > 0 {
		t.raise.work(t.rigging, t.limit("rpm_per_s"))
	}
	t.tick()
	if t.raising == 0 {
		return false
	}
	t.at = t.see(t.psi)
	t.lifted = t.see(t.lift) > t.limit("lift")
	over := t.at > t.limit("set_psi")+t.limit("within_psi")
	return t.lifted || over || t.ticks > t.raising+raiseTicks
}

// prepare makes the next move on the way to a pump that can be tested.
func (t *reliefStandby) prepare() {
	switch t.ticks {
	case 0:
		for _, name := range []string{"discharge", "drain"} {
			for _, id := range t.numbered(name) {
				t.set(id, 0)
			}
		}
		for _, c := range []struct {
			name  string
			value float64
		}{{"engine_run", 1}, {"parking_brake", 1}, {"transmission", 0}, {"intake", 0}, {"recirculation", 0},
			{"pump_drain", 0}, {"bleeder", 0}, {"throttle", 0}, {"tank_to_pump", 1}, {"tank_fill", fillOpening}} {
			t.put(c.name, c.value)
		}
	case shiftAt:
		t.put("pump_shift", 1)
	case driveBy:
		t.put("transmission", 1)
	case driveBy + fillTicks:
		t.raising = t.ticks
		t.raise.begin(t.rigging)
	}
}

func (t *reliefStandby) verdict() (bool, how, float64) {
	off := t.at - t.limit("set_psi")
	if !t.lifted {
		return false, notReached, t.at
	}
	return off <= t.limit("within_psi") && -off <= t.limit("within_psi"), number, t.at
}
