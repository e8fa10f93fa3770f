package unit

// Conversion factors, exact where the definition is exact.
const (
	PaPerPSI   = NPerLbf / (MPerIn * MPerIn) // lbf/in²
	PaPerInHg  = 3386.388640341              // conventional inch of mercury at 32 °F
	M3PerGal   = 3.785411784e-3              // US gallon, exact
	M3SPerGPM  = M3PerGal / 60               // US gallon a minute
	MPerFt     = 0.3048                      // exact
	MPerIn     = 0.0254                      // exact
	WPerHP     = 745.6998715822702           // mechanical horsepower
	NPerLbf    = 4.4482216152605             // exact
	NmPerLbFt  = 1.3558179483314004          // pound-foot of torque
	KgPerLb    = 0.45359237                  // exact
	RadPerTurn = 6.283185307179586           // 2π
	RadSPerRPM = RadPerTurn / 60             // revolutions a minute
	PaAtm      = 101325.0                    // standard atmosphere
	KelvinAt0F = 459.67 * (5.0 / 9)          // 0 °F in kelvin
	KPerF      = 5.0 / 9                     // one Fahrenheit degree in kelvin
	Gravity    = 9.80665                     // m/s², standard
)

// Quantities as the trade speaks of them. The model works in SI; these types stand at its edges.
type (
	PSI        float64 // gauge pressure, lbf/in²
	GPM        float64 // US gallons a minute
	Gallons    float64 // US gallons
	Feet       float64 // feet
	Inches     float64 // inches
	RPM        float64 // revolutions a minute
	Fahrenheit float64 // °F
	Seconds    float64 // s
	LbFt       float64 // pound-feet
	Horsepower float64 // mechanical hp
	FtPerS     float64 // feet a second
	Lbf        float64 // pounds of force
)

func (p PSI) Pa() float64       { return float64(float64(p) * PaPerPSI) }
func (q GPM) M3S() float64      { return float64(float64(q) * M3SPerGPM) }
func (v Gallons) M3() float64   { return float64(float64(v) * M3PerGal) }
func (l Feet) M() float64       { return float64(float64(l) * MPerFt) }
func (l Inches) M() float64     { return float64(float64(l) * MPerIn) }
func (n RPM) RadS() float64     { return float64(float64(n) * RadSPerRPM) }
func (t Fahrenheit) K() float64 { return float64(float64(t)*KPerF) + KelvinAt0F }
func (t LbFt) Nm() float64      { return float64(float64(t) * NmPerLbFt) }
func (p Horsepower) W() float64 { return float64(float64(p) * WPerHP) }

// PSIOf converts a gauge pressure in pascals.
func PSIOf(pa float64) PSI { return PSI(pa / PaPerPSI) }

// GPMOf converts a flow in m³/s.
func GPMOf(m3s float64) GPM { return GPM(m3s / M3SPerGPM) }

// GallonsOf converts a volume in m³.
func GallonsOf(m3 float64) Gallons { return Gallons(m3 / M3PerGal) }

// FahrenheitOf converts an absolute temperature in kelvin.
func FahrenheitOf(k float64) Fahrenheit { return Fahrenheit((k - KelvinAt0F) / KPerF) }
