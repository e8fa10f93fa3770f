package water

const (
	MinK = 273.15 // 0 °C: colder water is not liquid
	MaxK = 423.15 // 150 °C: hotter than any pump casing that still holds water
)

// celsius is the temperature above 0 °C, with k held within MinK and MaxK.
func celsius(k float64) float64 { return min(max(k, MinK), MaxK) - MinK }
