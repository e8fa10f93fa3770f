package fidelity

// Guide lists all trials. The list is the same every time.
func Guide() []Trial {
	var all []Trial
	for _, part := range []func() []Trial{
		tipTrials, fogTrials, hoseTrials, contentTrials, waterTrials, networkTrials, ratingTrials, reliefTrials, streetTrials, hydrantTrials, draftTrials,
	} {
		all = append(all, part()...)
	}
	return all
}
