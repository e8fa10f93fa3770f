package hydraulics

import "steadyneedle/sim/unit"

// Joukowsky is the pressure jump when a column of water is stopped at once: ρ a ΔV, psi. The wave speed
// of fabric hose is nowhere published; 300 to 1000 ft/s is assumed.
func Joukowsky(wave, stopped unit.FtPerS) unit.PSI {
	const (
		slugPerFt3 = 62.4 / 32.174
		in2PerFt2  = 144
	)
	return unit.PSI(slugPerFt3 / in2PerFt2 * float64(wave) * float64(stopped))
}
