package fidelity

// Area is a part of the model's behavior.
type Area uint8

const (
	Steady      Area = iota // steady performance
	Controls                // what a control does
	Transients              // what happens in time
	Abnormal                // faults and wrong use
	Instruments             // needles and lamps
	System                  // the whole: balances, same answers again
)

var areaNames = [...]string{"steady performance", "controls", "transients", "abnormal conditions", "instruments", "system"}

// String is the area's full name.
func (a Area) String() string { return areaNames[a] }

// Short is the area's name as one word, as a command line takes it.
func (a Area) Short() string {
	return [...]string{"steady", "controls", "transients", "abnormal", "instruments", "system"}[a]
}

// Areas lists all areas in their order.
func Areas() []Area { return []Area{Steady, Controls, Transients, Abnormal, Instruments, System} }

// AreaNamed finds an area by its short or full name.
func AreaNamed(name string) (Area, bool) {
	for _, a := range Areas() {
		if name == a.Short() || name == a.String() {
			return a, true
		}
	}
	return 0, false
}
