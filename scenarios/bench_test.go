package scenarios

import "testing"

// Measured here: about 12 ms of one core, most of it YAML and expressions.
func BenchmarkDrill(b *testing.B) {
	s := Open(nil)
	for b.Loop() {
		if _, err := s.Drill("reverse-lay", Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
