package expression

import "math"

// MaxWindow is the longest look back of count, max and min, s.
const MaxWindow = 600

// counted is how many events a count remembers: it never says more.
const counted = 32

// count is how often an event has been in the last window seconds, up to 32 times. Its memory is the
// number at the last Refresh, how many events there have been, and a ring of their times.
func (c *compiler) count(a eval, window float64) eval {
	at := c.slots(2 + counted)
	c.fresh(func(s, m []float64) {
		x, mine := a(s, m), m[at:at+2+counted]
		for range rises(x, mine[0]) {
			mine[2+int(mine[1])%counted] = s[0]
			mine[1]++
		}
		if x == x {
			mine[0] = x
		}
	})
	return func(s, m []float64) float64 {
		mine := m[at : at+2+counted]
		n := rises(a(s, m), mine[0])
		for i := range min(int(mine[1]), counted) {
			if s[0]-mine[2+i] <= window+epsilon {
				n++
			}
		}
		return float64(min(n, counted))
	}
}

// rises is how many events lie between two values of a count; a condition has 0 and 1.
func rises(x, before float64) int {
	if !(x > before) {
		return 0
	}
	return int(math.Min(math.Max(math.Floor(x-before), 1), counted))
}

// A window is cut into parts: max and min look back for the window and up to one part more. Up to 4 s a
// part is no longer than the beat of Refresh.
const parts = 40

// The slots of a window: the number of the part that was the present one at the last Refresh, the extreme
// as of then, and for the present part and each one within reach its number (from 1; 0: empty) and its
// extreme.
const (
	windowNow = iota
	windowResult
	windowParts
	windowSlots = windowParts + 2*(parts+1)
)

// extreme is the largest or smallest value of a in the last window seconds, the present included.
func (c *compiler) extreme(a eval, window float64, largest bool) eval {
	at := c.slots(windowSlots)
	width := window / parts
	c.fresh(func(s, m []float64) {
		x, mine := a(s, m), m[at:at+windowSlots]
		now := math.Floor(s[0]/width) + 1
		if x == x {
			i := windowParts + 2*(int(now)%(parts+1))
			if mine[i] == now {
				mine[i+1] = better(mine[i+1], x, largest)
			} else {
				mine[i], mine[i+1] = now, x
			}
		}
		if mine[windowNow] == now { // the parts within reach are those of the last time
			if x == x {
				mine[windowResult] = better(mine[windowResult], x, largest)
			}
			return
		}
		mine[windowNow], mine[windowResult] = 0, 0
		if y, ok := overParts(mine, now, largest); ok {
			mine[windowNow], mine[windowResult] = now, y
		}
	})
	return func(s, m []float64) float64 {
		x, mine := a(s, m), m[at:at+windowSlots]
		now := math.Floor(s[0]/width) + 1
		past, ok := mine[windowResult], true
		if mine[windowNow] != now {
			past, ok = overParts(mine, now, largest)
		}
		switch {
		case !ok:
			return x
		case x != x:
			return past
		}
		return better(past, x, largest)
	}
}

func better(a, b float64, largest bool) float64 {
	if largest {
		return max(a, b)
	}
	return min(a, b)
}

// overParts is the extreme of all parts that are still within reach.
func overParts(mine []float64, now float64, largest bool) (y float64, ok bool) {
	oldest := max(now-parts, 1) // an empty part has the number 0
	for i := windowParts; i < windowSlots-1; i += 2 {
		switch {
		case mine[i] < oldest:
		case !ok:
			y, ok = mine[i+1], true
		default:
			y = better(y, mine[i+1], largest)
		}
	}
	return y, ok
}
