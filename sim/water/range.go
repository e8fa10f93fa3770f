package water

import "steadyneedle/sim/bound"

const (
	MinK = 273.15 // 0 °C: colder water is not liquid
	MaxK = 423.15 // 150 °C: hotter than any pump casing that still holds water
)

// celsius is the temperature above 0 °C, with k held within MinK and MaxK.
func celsius(k float64) float64 { return bound.Within(k, MinK, MaxK) - MinK }
