package fidelity

import "math"

// A value counts only if it was taken from a steady machine: what follows has to stand still for
// stillBefore seconds before it is read, and for stillAfter seconds after.
const (
	stillBefore = 4.0
	stillAfter  = 1.0
	settlesIn   = 120.0 // s that a machine is given to come to rest
)

// calm is how far each value may swing while the machine counts as steady.
var calm = [...]float64{0.3, 0.3, 2, 4} // psi, psi, gpm, rpm

func (b *bench) vitals() [len(calm)]float64 {
	return [...]float64{b.o.DischargePSI, b.o.IntakePSI, b.o.PumpGPM, b.o.EngineRPM}
}

// still runs for seconds and reports whether the machine stood still all the while.
func (b *bench) still(seconds float64) bool {
	lo := b.vitals()
	hi := lo
	for range ticks(seconds) {
		b.run(tick)
		for i, v := range b.vitals() {
			lo[i], hi[i] = min(lo[i], v), max(hi[i], v)
			if hi[i]-lo[i] > calm[i]+float64(0.002*math.Abs(v)) {
				return false
			}
		}
	}
	return true
}

// snap waits until the machine is steady and reads a value.
func (b *bench) snap(value func() float64) float64 {
	if b.p == nil {
		return math.NaN()
	}
	for end := b.s + settlesIn; b.s < end; {
		if !b.still(stillBefore) {
			continue
		}
		v := value()
		if b.still(stillAfter) {
			return v
		}
	}
	b.fails("the machine does not come to rest within %s s", Number(settlesIn, 0))
	return value()
}

// settle waits until the machine is steady.
func (b *bench) settle() { b.snap(func() float64 { return 0 }) }
