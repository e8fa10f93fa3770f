// Package bound keeps numbers within bounds. The built-in max and min do the same, but are calls in
// WebAssembly, and a step asks for some hundred of them. A NaN in x goes through, so that it is found.
package bound

// AtLeast is x, or least where x is below it.
func AtLeast(x, least float64) float64 {
	if x <= least { // with equal, so that a zero comes out with the sign of the bound's
		return least
	}
	return x
}

// AtMost is x, or most where x is above it.
func AtMost(x, most float64) float64 {
	if x >= most {
		return most
	}
	return x
}

// Within is x, or the nearer of low and high where x is not between them; low is not above high.
func Within(x, low, high float64) float64 { return AtLeast(AtMost(x, high), low) }
