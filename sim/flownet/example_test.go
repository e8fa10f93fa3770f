package flownet_test

import (
	"fmt"

	"steadyneedle/sim/flownet"
	"steadyneedle/sim/unit"
)

// A main at 65 psi feeds an outlet of 250 gpm at 50 psi through a hose of 15 psi at that flow.
func Example() {
	const r = unit.PaPerPSI / unit.M3SPerGPM / unit.M3SPerGPM // 1 psi/gpm²
	var b flownet.Builder
	air := b.Boundary("air", 0, 1)
	main := b.Boundary("main", 65*unit.PaPerPSI, 0)
	end := b.Node(flownet.Node{Name: "end", Volume: 0.02, Stretch: 1e-9})
	hose := b.Link(flownet.Link{Name: "hose", From: main, To: end, R: r * 15 / 250 / 250, I: 1e7})
	b.Link(flownet.Link{Name: "outlet", From: end, To: air, R: r * 50 / 250 / 250})
	net, err := b.Build()
	if err != nil {
		fmt.Println(err)
		return
	}
	for range 240 * 10 {
		net.Step(1.0 / 240)
	}
	fmt.Printf("%.1f gpm, %.1f psi\n", unit.GPMOf(hose.Q()), unit.PSIOf(end.P))
	// Output: 250.0 gpm, 50.0 psi
}
