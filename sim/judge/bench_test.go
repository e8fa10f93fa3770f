package judge

import (
	"testing"

	"steadyneedle/sim/board"
	"steadyneedle/sim/world"
)

// BenchmarkTick is the judge's share of a tick: 120 rules of all kinds over 400 signals. Design target:
// 1.5 µs on average and no allocation while nothing is found.
func BenchmarkTick(b *testing.B) {
	signals := append([]world.Signal(nil), testSignals...)
	for len(signals) < 400 {
		signals = append(signals, world.Signal{Name: "more"})
	}
	var rules []Rule
	for range 20 {
		rules = append(rules,
			Rule{ID: "n", Kind: Never, When: flag(cellA), For: 60, Unless: flag(cellB)},
			Rule{ID: "g", Kind: Guard, When: flag(cellA), Need: flag(cellB), For: 60},
			Rule{ID: "b", Kind: Band, Value: read(cellNeedle), Target: fixed(0), Tolerance: fixed(15), While: flag(cellPlace), Grace: []Grace{{flag(cellB)}}},
			Rule{ID: "d", Kind: Due, From: flag(cellA), By: flag(cellC), Done: flag(cellB), Within: 600},
			Rule{ID: "o", Kind: Order, When: flag(cellA), First: flag(cellB)},
			Rule{ID: "t", Kind: Answer, On: []world.ControlID{2}, Target: read(cellNeedle), Tolerance: fixed(5), By: flag(cellC)})
	}
	rules = append(rules, Rule{ID: "r", Kind: Rate, On: []world.ControlID{0}, MinTravelS: 3, Span: 0.5})
	table := board.New(signals, []board.Value{{Name: "wanted", Is: fixed(135)}})
	j, err := New(Options{Rules: rules, Board: table, Controls: testControls})
	if err != nil {
		b.Fatal(err)
	}
	v := make([]float64, len(signals))
	act := []world.Action{{Control: 0, Value: 0.5}}
	now := world.Tick(0)
	b.ReportAllocs()
	for b.Loop() {
		j.Before(act)
		now++
		table.See(now, v)
		j.After()
	}
}
