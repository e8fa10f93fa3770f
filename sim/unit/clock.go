package unit

import "fmt"

// Clock writes a span of time (s) as minutes and whole seconds, 03:07, as clocks, sheets and findings
// show it. Minutes go on past an hour; what is less than nothing, or no number, is 00:00.
func Clock(s float64) string {
	const most = 1e9 // s; holds the conversion to an integer within bounds
	if !(s > 0) {
		s = 0
	}
	n := int64(min(s, most))
	return fmt.Sprintf("%02d:%02d", n/60, n%60)
}
