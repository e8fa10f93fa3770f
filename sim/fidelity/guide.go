package fidelity

// Guide lists all trials. The list is the same every time.
func Guide() []Trial {
	var all []Trial
	for _, part := range []func() []Trial{
		tipTrials, fogTrials, hoseTrials, contentTrials, waterTrials, networkTrials, ratingTrials, valveTrials, reliefTrials, streetTrials, hydrantTrials, draftTrials, layTrials, tankTrials, supplyTrials, heatTrials, hammerTrials, sweepTrials, instrumentTrials, engineTrials, suctionTrials, governorTrials, stageTrials, protectTrials, faultTrials, systemTrials,
	} {
		all = append(all, part()...)
	}
	return all
}
