package plant

import (
	"fmt"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/layout"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/water"
)

// nodes are the places in the network.
type nodes struct {
	air, eye, manifold, tank, tankTop, pond, strainer *flownet.Node
}

// ways are the links between them.
type ways struct {
	pump, cooler, recirc, tankFill, tankAir, tankToPump, intake, bleeder, vent, drain, strainer *flownet.Link
	relief, intakeRelief, thermal                                                               *flownet.Link // none where the apparatus has none
}

// slot is one discharge with what may hang on it.
type slot struct {
	valve    rig.Valve
	head     *flownet.Node // behind the valve: the line's gauge is tapped here
	way      *flownet.Link // valve
	vent     *flownet.Link // drain, open outlet and leaking couplings together
	trunk    *fireground.Hose
	branches []*fireground.Hose
	nozzles  []*fireground.Nozzle
	defs     []fireground.NozzleDef
	taken    bool // the setup's plan hangs on it
	attached bool
	lengthFt float64 // of the trunk as it is laid
	sizeIn   float64
	lossC    float64
	shares   [3]float64 // drain, open outlet, leak: gpm at 1 psi
}

const (
	metalGives = 1e-10 // m³/Pa by which casing and piping give (assumption)
	headVolume = 4e-3  // m³ behind a discharge valve (assumption)
	pipeInert  = 4e5   // Pa s²/m³: the apparatus's own pipes, about 2 m of 2½ in
	pumpInert  = 1.2e5 // Pa s²/m³: water in the pump
	draftCv    = 8000  // gpm at 1 psi of the large suction inlet (assumption)
	strainerCv = 5000  // gpm at 1 psi of strainer and entrance (assumption)
	bleedFirst = 40    // air stands where the bleeder is tapped and goes first (assumption)
	risesFirst = 40    // a suction hose rises to the pump: its air goes in before its water (assumption)
	airAlone   = 1e6   // until that hose has been full its water stands below the pump: only air goes in
	airThin    = 0.02  // share of an opening's loss that air meets (assumption)
	// suctionReach is how far one Newton step may move the suction pressure, Pa: where the pump cavitates
	// its head is a steep function of it.
	suctionReach = 3 * unit.PaPerPSI
	eyeSlip      = 0.35 // air stays behind in the impeller's eye (assumption)
)

// New builds a plant at rest: engine idling in road gear, pump full of water (dry at draft), nothing
// connected. The error says in one line what is wrong with the setup.
func New(s Setup) (*Plant, error) {
	if err := check(&s); err != nil {
		return nil, err
	}
	s.leaveOut()
	p := &Plant{setup: s, dt: tick / float64(s.Substeps), patm: unit.PaAtm}
	p.airK, p.water = unit.Fahrenheit(s.AirF).K(), unit.Fahrenheit(s.WaterF).K()
	if s.Draft != nil {
		p.patm = atmosphere(s.Draft.ElevationFt)
	}
	p.parts()
	if err := p.connect(); err != nil {
		return nil, err
	}
	p.makeOut()
	p.warm()
	p.pump.Prepare(0, p.net.VoidFraction(p.at.eye), p.patm, p.vapor, p.density)
	p.publish(&In{ParkingBrake: true})
	return p, nil
}

// parts makes everything that is not water.
func (p *Plant) parts() {
	d := &p.setup.Rig
	pump := rig.NewPump(d.Pump)
	p.pump = &pump
	p.engine, p.drive = rig.NewEngine(d.Engine), rig.NewDrive(d.Drive, d.Engine)
	p.control, p.primer = newProtection(d), rig.NewPrimer(d.Primer)
	p.tank = rig.NewTank(d.Tank, p.water)
	p.cooling, p.casing = rig.NewCooling(d.Cooling), rig.NewCasing(d.Pump, p.water)
	p.intake, p.tankToPump = rig.NewValve(d.Intake.Valve), rig.NewValve(d.Tank.ToPump)
	p.tankFill, p.recirc = rig.NewValve(d.TankFill), rig.NewValve(d.Recirculation)
	p.needles = newNeedles(d, p.setup.Seed)
	p.valveStill = restS
	p.wetness = 1
	if p.setup.Draft != nil {
		p.wetness = 0
	}
}

// connect builds the network and lays out what is always there.
func (p *Plant) connect() error {
	var b flownet.Builder
	d := &p.setup.Rig
	eye := float64(d.Pump.EyeGal * unit.M3PerGal)
	casing := bound.AtLeast(p.casing.Volume(), float64(1.5*eye))
	dry := 1 - p.wetness
	p.at.air = b.Boundary("air", 0, 1)
	p.at.tank = b.Boundary("tank", 0, 0)
	p.at.tankTop = b.Boundary("tank top", 0, 1)
	p.at.eye = b.Node(flownet.Node{Name: "impeller eye", Volume: eye, Stretch: metalGives, Air: float64(eye * dry)})
	rest := casing - eye
	p.at.manifold = b.Node(flownet.Node{Name: "manifold", Volume: rest, Stretch: 4 * metalGives, Air: float64(rest * dry)})

	p.way.pump = b.Link(flownet.Link{Name: "pump", From: p.at.eye, To: p.at.manifold, R: 1, I: pumpInert, Gain: p.pump, Carry: eyeSlip, UpLimit: suctionReach})
	shut := func(name string, from, to *flownet.Node) *flownet.Link {
		return b.Link(flownet.Link{Name: name, From: from, To: to, I: pipeInert, StartsShut: true})
	}
	if p.control.relief != nil {
		p.way.relief = shut("relief valve", p.at.manifold, p.at.eye)
	}
	p.way.cooler = shut("engine cooler", p.at.manifold, p.at.eye)
	p.way.drain = b.Link(flownet.Link{Name: "pump drain", From: p.at.manifold, To: p.at.air, I: pipeInert, StartsShut: true, GasR: airThin})
	oneWay := func(name string, from, to *flownet.Node) *flownet.Link {
		return b.Link(flownet.Link{Name: name, From: from, To: to, I: pipeInert, StartsShut: true, Check: true, GasR: airThin})
	}
	p.way.recirc = oneWay("recirculation", p.at.manifold, p.at.tankTop)
	p.way.tankFill = oneWay("tank fill", p.at.manifold, p.at.tankTop)
	p.way.tankAir = oneWay("air by the tank's pipes", p.at.air, p.at.manifold)
	p.way.tankToPump = oneWay("tank to pump", p.at.tank, p.at.eye)
	if p.control.thermal != nil {
		p.way.thermal = oneWay("thermal relief valve", p.at.manifold, p.at.air)
	}
	p.connectSource(&b)
	for i := range d.Discharges {
		p.slots = append(p.slots, p.newSlot(&b, i))
	}
	p.connectLay(&b)
	net, err := b.Build()
	if err != nil {
		return fmt.Errorf("plant: %w", err)
	}
	p.net = net
	net.Patm = p.patm
	net.Inertialess = p.setup.Without.Has(Inertance)
	for _, z := range [...]*flownet.Node{p.at.eye, p.at.manifold} {
		net.SetAir(z, z.Air) // at the local atmosphere
	}
	p.laid.Lay(net)
	if s := p.setup.Draft; s != nil {
		// What stands in the sun may be warm, and lifts less high; a main's water is cold.
		for _, z := range [...]*flownet.Node{p.at.strainer, p.supply.End} {
			z.Vapor = water.VaporPressure(p.water)
		}
		p.supply.Lay(net, suction(s), s.SuctionFt, s.LiftFt, 0)
	}
	return nil
}

// connectLay adds the setup's plan.
func (p *Plant) connectLay(b *flownet.Builder) {
	t := layout.Taps{Air: p.at.air, Body: headVolume, Eye: p.at.eye, Patm: p.patm, Vapor: water.VaporPressure(p.water), Density: water.Density(p.water)}
	for i := range p.slots {
		t.Discharges = append(t.Discharges, p.slots[i].head)
	}
	if p.hydrant != nil {
		t.Hydrant = p.hydrant.Outlet
	}
	p.laid = p.setup.Lay.Add(b, t)
}

// connectSource adds hydrant and supply hose, or pond and suction hose, and the way into the pump.
func (p *Plant) connectSource(b *flownet.Builder) {
	var near *flownet.Node
	airGoes := 1.0
	if p.setup.Draft == nil {
		p.hydrant = fireground.AddHydrant(b, p.setup.Hydrant, p.at.air)
		near = p.hydrant.Outlet
	} else {
		p.at.pond = b.Boundary("pond", 0, 0)
		p.at.strainer = b.Node(flownet.Node{Name: "strainer", Volume: 0.01, Stretch: metalGives})
		r, _ := rig.FlowResistance(strainerCv, 1)
		p.way.strainer = b.Link(flownet.Link{Name: "strainer", From: p.at.pond, To: p.at.strainer, R: r})
		near, airGoes = p.at.strainer, risesFirst
	}
	p.supply = fireground.AddHose(b, "supply hose", near, p.at.air)
	p.way.intake = b.Link(flownet.Link{Name: "intake", From: p.supply.End, To: p.at.eye, I: pipeInert / 4, StartsShut: true, Carry: airGoes})
	p.way.bleeder = b.Link(flownet.Link{Name: "bleeder", From: p.supply.End, To: p.at.air, R: 1, StartsShut: true, Carry: bleedFirst, GasR: airThin})
	p.way.vent = b.Link(flownet.Link{Name: "supply couplings", From: p.supply.End, To: p.at.air, R: 1, StartsShut: true, GasR: airThin})
	if p.control.intake != nil {
		p.way.intakeRelief = b.Link(flownet.Link{Name: "intake relief valve", From: p.supply.End, To: p.at.air, I: pipeInert / 4, StartsShut: true, Check: true, GasR: airThin})
	}
}

// suction is the hard suction hose of a draft.
func suction(d *fireground.DraftDef) fireground.HoseDef {
	c := d.LossC
	if c == 0 {
		c = 0.05
	}
	return fireground.HoseDef{SizeIn: d.SuctionIn, LossC: c, LengthFt: d.SuctionFt, WaveFtS: 2000, Hard: true}
}

func (p *Plant) newSlot(b *flownet.Builder, i int) slot {
	d := &p.setup.Rig.Discharges[i]
	line := &p.setup.Line
	name := func(part string) string { return fmt.Sprintf("%s %d", part, i+1) }
	s := slot{valve: rig.NewValve(d.Valve)}
	s.head = b.Node(flownet.Node{Name: name("discharge"), Volume: headVolume, Stretch: metalGives, Air: headVolume})
	s.way = b.Link(flownet.Link{Name: name("discharge valve"), From: p.at.manifold, To: s.head, I: pipeInert, StartsShut: true, GasR: airThin})
	s.vent = b.Link(flownet.Link{Name: name("drain"), From: s.head, To: p.at.air, R: 1, StartsShut: true, GasR: airThin})
	if s.taken = p.setup.Lay.Holds(i + 1); s.taken || nozzleCount(line) == 0 {
		return s
	}
	s.trunk = fireground.AddHose(b, name("line"), s.head, p.at.air)
	if line.Nozzle != nil {
		s.defs = []fireground.NozzleDef{*line.Nozzle}
		s.nozzles = []*fireground.Nozzle{fireground.AddNozzle(b, name("nozzle"), s.trunk.End, p.at.air, *line.Nozzle)}
		return s
	}
	for k := range line.Branches {
		br := &line.Branches[k]
		h := fireground.AddHose(b, fmt.Sprintf("line %d branch %d", i+1, k+1), s.trunk.End, p.at.air)
		s.branches = append(s.branches, h)
		s.defs = append(s.defs, br.Nozzle)
		s.nozzles = append(s.nozzles, fireground.AddNozzle(b, fmt.Sprintf("nozzle %d.%d", i+1, k+1), h.End, p.at.air, br.Nozzle))
	}
	return s
}

// atmosphere is the standard atmosphere's pressure, Pa, at a height in feet:
// (1 − 6.8756e-6 h)^5.2559 as its series, exact to 1e-6 up to 12,000 ft.
func atmosphere(ft float64) float64 {
	x := float64(6.8756e-6 * ft)
	s := float64(x * 1.7195)
	s = float64(x * (6.8457 - s))
	s = float64(x * (12.1384 - s))
	s = float64(x * (11.1843 - s))
	s = float64(x * (5.2559 - s))
	return float64(unit.PaAtm * (1 - s))
}

// boilsDry is the share of the casing that must hold water for its steam to keep its pressure (assumption).
const boilsDry = 0.02

// warm brings what depends on the casing's temperature up to it.
func (p *Plant) warm() {
	k := p.casing.Kelvin()
	p.vapor, p.density = water.VaporPressure(k), water.Density(k)
	p.vapor = float64(p.vapor * bound.AtMost(p.wetness/boilsDry, 1)) // steam without water is soon gone
	if p.setup.Without.Has(Cavitation) {
		p.vapor = noVapor
	}
	p.at.eye.Vapor = p.vapor
	p.at.manifold.Vapor = p.vapor
}
