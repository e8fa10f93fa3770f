package crew

import "steadyneedle/sim/state"

// Medians of the human delays, s (a drill's own times go into Cue.Extra).
const (
	radioMedianS = 3.0
	taskMedianS  = 5.0
)

// quantiles are those of a log-normal distribution about a median of 1 with σ = 0.35 (assumption: the
// quickest person in a hundred takes 0.43 of the median, the slowest 2.3), at (i+½)/64. A table,
// because logarithms are not equal on every processor.
var quantiles = [64]float64{
	0.42907, 0.49878, 0.53978, 0.57101, 0.59707, 0.61992, 0.64054, 0.65954,
	0.67732, 0.69412, 0.71016, 0.72557, 0.74047, 0.75494, 0.76907, 0.78290,
	0.79649, 0.80989, 0.82313, 0.83624, 0.84926, 0.86221, 0.87513, 0.88802,
	0.90092, 0.91385, 0.92683, 0.93987, 0.95301, 0.96626, 0.97964, 0.99317,
	1.00688, 1.02079, 1.03492, 1.04931, 1.06397, 1.07895, 1.09427, 1.10997,
	1.12610, 1.14269, 1.15980, 1.17749, 1.19583, 1.21488, 1.23474, 1.25550,
	1.27730, 1.30027, 1.32460, 1.35049, 1.37822, 1.40813, 1.44067, 1.47642,
	1.51620, 1.56118, 1.61312, 1.67483, 1.75129, 1.85259, 2.00491, 2.33065,
}

// draw is how long people take this time, s.
func (d Delay) draw(dice *state.Dice) float64 {
	switch d {
	case Radio:
		return float64(radioMedianS * spread(dice))
	case Task:
		return float64(taskMedianS * spread(dice))
	}
	return 0
}

// spread draws from the table, with straight lines between its points.
func spread(dice *state.Dice) float64 {
	const n = 64
	x := min(n-1, max(0, float64(dice.Float64()*n)-0.5))
	i := min(int(x), n-2)
	lo, hi := quantiles[i], quantiles[i+1]
	return lo + float64((hi-lo)*(x-float64(i)))
}
