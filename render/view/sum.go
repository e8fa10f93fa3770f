package view

// Sum is one line of the calculation sheet, as the candidate has it.
type Sum struct {
	ID, Title, Unit string
	Value           float64 // NaN: not written
	Limit           float64 // of the hose, for pressures; 0: none
	Total           bool    // the result
}
