package expression

// Words that remember moments. An event is a condition that becomes true, or a count that goes up;
// both read as a rise of a number from the 0 that memory begins with, so that what is already so at
// the first Refresh counts as happening then.
//
// Each word refreshes its memory in Fresh, at whatever spacing; its result only reads, but takes the
// present moment into account, so that an action is judged on what is so now. signals[0] is the time.

// Never is what since and first say of an event that has not been.
const Never = 1e9

// epsilon, s, lets sixtieths of a second that were rounded when subtracted still reach a limit.
const epsilon = 1e-6

// The slots of an event.
const (
	was  = iota // the number at the last Refresh
	seen        // 1 once it has happened
	when        // s, the last time that it did
	eventSlots
)

// rose reports whether x has gone up since the last Refresh. A NaN (not perceived) is no change.
func rose(x float64, m []float64) bool { return x > m[was] }

// note takes x into an event's memory. With once, the first moment is kept.
func note(t, x float64, m []float64, once bool) {
	if rose(x, m) && !(once && m[seen] != 0) {
		m[seen], m[when] = 1, t
	}
	if x == x {
		m[was] = x
	}
}

// last is when the event was, as of now.
func last(t, x float64, m []float64, once bool) (float64, bool) {
	if rose(x, m) && !(once && m[seen] != 0) {
		return t, true
	}
	return m[when], m[seen] != 0
}

func (c *compiler) event(a eval, once bool) int {
	at := c.slots(eventSlots)
	c.fresh(func(s, m []float64) { note(s[0], a(s, m), m[at:at+eventSlots], once) })
	return at
}

func (c *compiler) since(a eval) eval {
	at := c.event(a, false)
	return func(s, m []float64) float64 {
		t, ok := last(s[0], a(s, m), m[at:at+eventSlots], false)
		if !ok {
			return Never
		}
		return s[0] - t
	}
}

func (c *compiler) first(a eval) eval {
	at := c.event(a, true)
	return func(s, m []float64) float64 {
		t, ok := last(s[0], a(s, m), m[at:at+eventSlots], true)
		if !ok {
			return Never
		}
		return t
	}
}

// at is x as it stood when the event last was; 0 if it never was.
func (c *compiler) at(event, x eval) eval {
	was := c.slots(2) // the event's number at the last Refresh, and x when it last went up
	c.fresh(func(s, m []float64) {
		n := event(s, m)
		if n > m[was] {
			m[was+1] = x(s, m)
		}
		if n == n {
			m[was] = n
		}
	})
	return func(s, m []float64) float64 {
		if event(s, m) > m[was] {
			return x(s, m)
		}
		return m[was+1]
	}
}

func (c *compiler) ever(a eval) eval {
	at := c.slots(1)
	c.fresh(func(s, m []float64) {
		if a(s, m) != 0 {
			m[at] = 1
		}
	})
	return func(s, m []float64) float64 { return flag(m[at] != 0 || a(s, m) != 0) }
}

// held is whether a has held without a break for so many seconds.
func (c *compiler) held(a, seconds eval) eval {
	at := c.slots(2) // running, since when
	c.fresh(func(s, m []float64) {
		switch on := a(s, m) != 0; {
		case !on:
			m[at], m[at+1] = 0, 0
		case m[at] == 0:
			m[at], m[at+1] = 1, s[0]
		}
	})
	return func(s, m []float64) float64 {
		if a(s, m) == 0 {
			return 0
		}
		begun := s[0]
		if m[at] != 0 {
			begun = m[at+1]
		}
		return flag(s[0]-begun >= seconds(s, m)-epsilon)
	}
}

// answered is whether one of the replies came at or after the last request.
func (c *compiler) answered(request eval, replies []eval) eval {
	asked := c.event(request, false)
	told := make([]int, len(replies))
	for i, r := range replies {
		told[i] = c.event(r, false)
	}
	return func(s, m []float64) float64 {
		t, ok := last(s[0], request(s, m), m[asked:asked+eventSlots], false)
		if !ok {
			return 0
		}
		for i, r := range replies {
			at, told := last(s[0], r(s, m), m[told[i]:told[i]+eventSlots], false)
			if told && at >= t {
				return 1
			}
		}
		return 0
	}
}
