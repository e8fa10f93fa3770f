package scenarios

import (
	"errors"

	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
	"steadyneedle/sim/world"
)

// ground reads the street: what the variant gives replaces the drill's own, key by key.
func (b *builder) ground() world.Ground {
	n := b.file.Ground
	if b.variant != nil && b.variant.Ground != nil {
		n = b.variant.Ground.Over(n)
	}
	g := world.Ground{AirF: 70, WaterF: 60}
	if n.Kind != reader.Mapping {
		b.fail(n, "ground: expected a group of keys")
		return g
	}
	read := n.Decode(&g)
	b.take(read)
	if b.hydrant != nil {
		g.Hydrant = *b.hydrant
	}
	switch at := n.Get("hydrant"); {
	case g.Draft != nil && (at != nil || b.hydrant != nil):
		b.fail(n.Get("draft"), "draft: there is a hydrant too, expected one source")
	case g.Draft != nil:
	case at != nil && b.hydrant != nil:
		b.fail(at, "hydrant: the drill draws one of its hydrants, expected it here or there")
	case at == nil && b.hydrant == nil:
		b.fail(n, "there is no hydrant, expected ground.hydrant, a list of hydrants to draw from, or ground.draft")
	case at != nil:
		b.soundHydrant(at, &g.Hydrant)
	}
	if at := n.Get("discharge"); at != nil && g.Discharge > len(b.rig.Discharges) {
		b.fail(at, "discharge: found %d, expected 1 to %d: apparatus %s has no more", g.Discharge, len(b.rig.Discharges), b.rig.Name)
	}
	if at := n.Get("line"); at != nil && at.Kind == reader.Mapping {
		b.soundLine(at, &g.Line)
	}
	if n.Get("line") == nil && n.Get("lay") == nil {
		b.fail(n, "nothing is laid, expected a line that is connected in the drill, a lay that hangs there from the first moment, or both")
	}
	if at := n.Get("people"); at != nil && len(read) == 0 {
		b.soundPeople(at, &g)
	}
	if at := n.Get("lay"); at != nil && len(read) == 0 {
		b.soundLay(at, &g)
	}
	return g
}

// soundPeople checks that people have names of their own, and stand somewhere.
func (b *builder) soundPeople(at *reader.Node, g *world.Ground) {
	for i := range g.People {
		p := &g.People[i]
		if _, ok := world.Stand(p.Stands); !ok {
			b.fail(at.Items[i].Get("stands"), "stands: found %q, %s", p.Stands, reader.DidYouMean(p.Stands, world.Stands))
		}
		if !identifier.MatchString(p.ID) {
			b.fail(at.Items[i].Get("id"), "id: found %q, expected small letters, digits and _", p.ID)
		}
	}
	setup := world.Setup{Rig: b.rig, Ground: *g}
	if i, name := setup.PersonClash(); i >= 0 {
		b.fail(at.Items[i], "people: %s: the name %s stands for something else already, expected another id", g.People[i].ID, name)
	}
}

// soundLay checks that the parts of a lay go together, and with the rest of the ground.
func (b *builder) soundLay(at *reader.Node, g *world.Ground) {
	err := g.Lay.Check(layout.Ground{Discharges: len(b.rig.Discharges), Hydrant: true})
	var wrong *layout.Error
	if errors.As(err, &wrong) {
		b.fail(at.Items[wrong.Index], "lay: %s: %s", wrong.Part, wrong.Why)
		return
	}
	setup := world.Setup{Rig: b.rig, Ground: *g}
	if i, name := setup.PartClash(); i >= 0 {
		b.fail(at.Items[i], "lay: %s: the name %s stands for something else already, expected another id", g.Lay[i].ID, name)
	}
	if !g.Line.None() && g.Lay.Holds(g.Discharge) {
		b.fail(at, "lay: hangs on discharge %d, where the line is to be connected, expected another discharge", g.Discharge)
	}
	b.plausibleLay(at, g.Lay)
}

func (l *loading) soundHydrant(at *reader.Node, h *fireground.HydrantDef) {
	if h.ResidualPSI >= h.StaticPSI && h.StaticPSI > 0 {
		l.fail(at, "residual_psi: %v is not below static_psi %v, expected less", h.ResidualPSI, h.StaticPSI)
	} else if h.FlowsTooFreely() {
		l.fail(at, "residual_psi: %v at flow_gpm %v, expected %.4g at most: the hydrant's own valve takes the rest", h.ResidualPSI, h.FlowGPM, h.StaticPSI-h.OwnLossPSI())
	}
}

// soundLine checks that a line ends in one nozzle, or in a wye with branches.
func (l *loading) soundLine(at *reader.Node, line *fireground.LineDef) {
	switch {
	case line.Nozzle != nil && len(line.Branches) > 0:
		l.fail(at, "line: has a nozzle and branches, expected one of them")
	case line.Nozzle == nil && len(line.Branches) == 0:
		l.fail(at, "line: has no end, expected a nozzle or branches")
	case len(line.Branches) > 2:
		l.fail(at.Get("branches"), "branches: found %d, expected at most 2", len(line.Branches))
	}
	if line.Nozzle != nil {
		l.soundNozzle(at.Get("nozzle"), line.Nozzle)
	}
	for i := range line.Branches {
		item := at.Get("branches").Items[i]
		if line.Branches[i].Hose.LengthFt == 0 {
			l.fail(item, "branch: its hose has no length_ft, expected 1 to 5000")
		}
		if n := item.Get("nozzle"); n != nil {
			l.soundNozzle(n, &line.Branches[i].Nozzle)
		}
	}
}

func (l *loading) soundNozzle(at *reader.Node, n *fireground.NozzleDef) {
	if (n.TipIn > 0) == (n.RatedGPM > 0) {
		l.fail(at, "nozzle: expected either tip_in (smooth bore) or rated_gpm (fog)")
	}
}
