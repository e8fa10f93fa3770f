package app

import "math"

// drift is how far wheel or finger have moved a list on from its row, less than a whole one, units.
type drift float64

// rows takes a further move in and gives the whole rows that it makes of it.
func (d *drift) rows(units, height float64) int {
	sum := float64(*d) + units
	n := math.Trunc(sum / height)
	*d = drift(sum - n*height)
	return int(n)
}
