package layout

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"steadyneedle/sim/fireground"
)

// Error says which part of a plan cannot be laid, and why, in one line.
type Error struct {
	Index int    // of the part
	Part  string // its id
	Why   string
}

func (e *Error) Error() string { return fmt.Sprintf("layout: %s: %s", e.Part, e.Why) }

// kind is what a sort of part is called and what may come before and after it.
type kind struct {
	name                     string
	in, inMost, out, outMost int
}

// kinds lists those that a part gives; a sound part gives one.
func (p *Part) kinds() []kind {
	var list []kind
	for _, k := range [...]struct {
		given bool
		kind
	}{
		{p.Hydrant != nil, kind{"hydrant", 0, 0, 1, 3}},
		{p.Pond != nil, kind{"pond", 0, 0, 1, 1}},
		{p.Hose != nil, kind{"hose", 1, 1, 1, 1}},
		{p.Riser != nil, kind{"riser", 1, 1, 1, 1}},
		{p.Valve != nil, kind{"valve", 1, 1, 1, 1}},
		{p.Wye != nil, kind{"wye", 1, 1, 2, 4}},
		{p.Siamese != nil, kind{"siamese", 2, 3, 1, 1}},
		{p.Appliance != nil, kind{"appliance", 1, 1, 1, 1}},
		{p.Monitor != nil, kind{"monitor", 1, 3, 1, 1}},
		{p.Pumper != nil, kind{"pumper", 1, 3, 1, 8}},
		{p.Nozzle != nil, kind{"nozzle", 1, 1, 0, 0}},
		{p.Outlet != nil, kind{"outlet", 1, 1, 0, 0}},
		{p.Intake != nil, kind{"intake", 1, 1, 0, 0}},
	} {
		if k.given {
			list = append(list, k.kind)
		}
	}
	return list
}

// Ground is what a plan is checked against.
type Ground struct {
	Discharges int  // of the apparatus
	Hydrant    bool // the ground has one
}

// Check refuses a plan that cannot be laid. The error is an *Error and names the part.
func (y Plan) Check(g Ground) error {
	for i := range y {
		if why := y.wrong(i, g); why != "" {
			return &Error{i, y[i].ID, why}
		}
	}
	for i := range y {
		if why := y.follows(i); why != "" {
			return &Error{i, y[i].ID, why}
		}
	}
	return y.checkCircle()
}

// wrong says what is wrong with a part and what it comes from.
func (y Plan) wrong(i int, g Ground) string {
	p := &y[i]
	if !isName(p.ID) {
		return "an id is a word of small letters, digits and underscores that begins with a letter"
	}
	if p.ID == "hydrant" || discharge(p.ID) > 0 || y.Index(p.ID) < i {
		return "the id stands for something else already"
	}
	k := p.kinds()
	switch {
	case len(k) == 0:
		return "is nothing: expected hose, riser, valve, wye, siamese, appliance, monitor, pumper, nozzle, outlet, intake, hydrant or pond"
	case len(k) > 1:
		return fmt.Sprintf("is %s and %s: expected one", k[0].name, k[1].name)
	case len(p.From) < k[0].in || len(p.From) > k[0].inMost:
		return fmt.Sprintf("is a %s and comes from %d, expected %s", k[0].name, len(p.From), several(k[0].in, k[0].inMost))
	}
	for n, name := range p.From {
		if why := y.wrongFrom(i, n, name, g); why != "" {
			return why
		}
	}
	return p.wrongNumber()
}

func (y Plan) wrongFrom(i, n int, name string, g Ground) string {
	for _, other := range y[i].From[:n] {
		if other == name {
			return fmt.Sprintf("comes from %s twice", name)
		}
	}
	switch d := discharge(name); {
	case d > g.Discharges:
		return fmt.Sprintf("comes from %s, but the apparatus has discharges 1 to %d", name, g.Discharges)
	case d > 0:
		return ""
	case name == "hydrant" && !g.Hydrant:
		return "comes from the hydrant, but there is none"
	case name == "hydrant":
		return ""
	}
	if k := y.Index(name); k < 0 || k >= i {
		return fmt.Sprintf("comes from %q, expected discharge1 …, hydrant or a part above it: water does not run in a circle", name)
	}
	return ""
}

// follows says what is wrong with what comes after a part.
func (y Plan) follows(i int) string {
	k := y[i].kinds()[0]
	n := y.after(y[i].ID)
	switch {
	case n < k.out:
		return fmt.Sprintf("is a %s and leads to %s, expected %s", k.name, parts(n), several(k.out, k.outMost))
	case n > k.outMost && k.outMost == 0:
		return fmt.Sprintf("is a %s, nothing can come from it", k.name)
	case n > k.outMost && k.outMost == 1:
		return fmt.Sprintf("is a %s and leads to %s, expected 1: a wye divides", k.name, parts(n))
	case n > k.outMost:
		return fmt.Sprintf("is a %s and leads to %s, expected %s", k.name, parts(n), several(k.out, k.outMost))
	}
	for _, name := range y[i].From {
		if discharge(name) > 0 && y.after(name) > 1 {
			return fmt.Sprintf("hangs on %s with another part: a wye divides", name)
		}
	}
	return ""
}

func (y Plan) after(id string) int {
	n := 0
	for j := range y {
		for _, from := range y[j].From {
			if from == id {
				n++
			}
		}
	}
	return n
}

// checkCircle refuses an intake that the apparatus's own discharges feed.
func (y Plan) checkCircle() error {
	ours := make([]bool, len(y))
	for i := range y {
		for _, name := range y[i].From {
			if k := y.Index(name); discharge(name) > 0 || k >= 0 && ours[k] {
				ours[i] = true
			}
		}
		if y[i].Intake != nil && ours[i] {
			return &Error{i, y[i].ID, "takes in what the apparatus's own discharge gives: water would run in a circle"}
		}
	}
	return nil
}

// wrongNumber says which number of a part cannot be.
func (p *Part) wrongNumber() string {
	switch {
	case !within(p.RiseFt, -500, 2000) || !within(p.RisePSI, -200, 1000):
		return "rises by a height that cannot be"
	case p.RiseFt != 0 && p.RisePSI != 0:
		return "has rise_ft and rise_psi, expected one of them"
	case (p.RiseFt != 0 || p.RisePSI != 0) && p.Hose == nil && p.Monitor == nil:
		return "cannot rise: only hose and monitor can, and a riser by its floors"
	case p.Hydrant != nil && p.Hydrant.ElevationFt != 0:
		return "has elevation_ft: the rise of the hose from it tells how high it stands"
	case p.Hydrant != nil:
		return WrongHydrant(p.Hydrant)
	case p.Pond != nil && !within(p.Pond.LiftFt, 0, 30):
		return "lift_ft must be from 0 to 30"
	case p.Hose != nil:
		return WrongHose(p.Hose)
	case p.Riser != nil:
		return p.Riser.wrong()
	case p.Valve != nil:
		return p.Valve.wrong()
	case p.Wye != nil:
		return p.Wye.Loss.wrong()
	case p.Siamese != nil:
		return p.Siamese.Loss.wrong()
	case p.Appliance != nil:
		return p.Appliance.wrong()
	case p.Monitor != nil:
		return p.Monitor.wrong()
	case p.Pumper != nil:
		return p.Pumper.wrong()
	case p.Nozzle != nil:
		return WrongNozzle(p.Nozzle, false)
	case p.Outlet != nil && !(within(p.Outlet.SizeIn, 0.5, 8) && (p.Outlet.Coefficient == 0 || within(p.Outlet.Coefficient, 0.5, 1))):
		return "needs a size_in from 0.5 to 8 and a coefficient from 0.5 to 1"
	case p.Intake != nil && !within(p.Intake.Cv, 20, 1e4):
		return "needs a cv from 20 to 10000"
	}
	return ""
}

func (d *RiserDef) wrong() string {
	switch {
	case !within(d.SizeIn, 2, 12) || !within(d.LossC, 1e-4, 10):
		return "needs a size_in from 2 to 12 and a loss_c from 0.0001 to 10"
	case !within(d.Floors, 1, 120) || d.Floors != math.Floor(d.Floors):
		return "floors must be a whole number from 1 to 120"
	case (d.FloorFt != 0) == (d.FloorPSI != 0):
		return "needs floor_ft or floor_psi, one of them"
	case d.FloorFt != 0 && !within(d.FloorFt, 6, 40) || d.FloorPSI != 0 && !within(d.FloorPSI, 2, 20):
		return "a floor is 6 to 40 ft, or 2 to 20 psi"
	}
	return ""
}

func (d *ValveDef) wrong() string {
	if _, ok := d.law(); !ok {
		return fmt.Sprintf("has law %q, expected ball, gate or butterfly", d.Law)
	}
	if !within(d.Cv, 5, 1e4) {
		return "needs a cv from 5 to 10000"
	}
	return ""
}

func (d *LossDef) wrong() string {
	if !within(d.PSI, 0, 100) || d.PSI > 0 && !within(d.GPM, 5, 5000) || d.PSI == 0 && d.GPM != 0 {
		return "needs loss_psi from 0 to 100 and the at_gpm at which it is met, 5 to 5000, or neither"
	}
	return ""
}

func (d *PumperDef) wrong() string {
	switch {
	case d.RatedGPM != 0 && !within(d.RatedGPM, 250, 3000):
		return "rated_gpm must be from 250 to 3000"
	case (d.RPM != 0) == (d.PSI != 0):
		return "holds an rpm or a discharge_psi, one of them"
	case d.RPM != 0 && !within(d.RPM, 500, 2500) || d.PSI != 0 && !within(d.PSI, 30, 400):
		return "holds an rpm from 500 to 2500 or a discharge_psi from 30 to 400"
	}
	return ""
}

// WrongHose says what is wrong with a hose that is to be laid; empty if nothing is.
func WrongHose(h *fireground.HoseDef) string {
	if !within(h.LengthFt, 1, 5000) {
		return fmt.Sprintf("%v ft long, expected length_ft from 1 to 5000", h.LengthFt)
	}
	return WrongMake(h)
}

// WrongMake is WrongHose for hose whose length is not settled yet.
func WrongMake(h *fireground.HoseDef) string {
	switch {
	case !within(h.SizeIn, 0.75, 8):
		return fmt.Sprintf("%v in across, expected size_in from 0.75 to 8", h.SizeIn)
	case !within(h.LossC, 0.01, 2000):
		return fmt.Sprintf("friction coefficient %v, expected loss_c from 0.01 to 2000", h.LossC)
	case h.WaveFtS != 0 && !within(h.WaveFtS, 100, 4000):
		return fmt.Sprintf("wave speed %v, expected wave_ft_s from 100 to 4000", h.WaveFtS)
	}
	return ""
}

// WrongNozzle says what is wrong with a nozzle. Only the nozzle of a line that has no parts may rise by
// itself.
func WrongNozzle(n *fireground.NozzleDef, rises bool) string {
	switch {
	case (n.TipIn != 0) == (n.RatedGPM != 0):
		return "needs tip_in (smooth bore) or rated_gpm (fog), one of them"
	case n.TipIn != 0 && !within(n.TipIn, 0.1, 4):
		return "tip_in must be from 0.1 to 4"
	case n.RatedGPM != 0 && !within(n.RatedGPM, 5, 3000):
		return "rated_gpm must be from 5 to 3000"
	case n.RatedGPM != 0 && !within(n.RatedPSI, 20, 200):
		return "rated_psi must be from 20 to 200"
	case !rises && n.RiseFt != 0:
		return "rise_ft belongs to the hose or the monitor before it"
	case !within(n.RiseFt, -100, 500):
		return "rise_ft must be from -100 to 500"
	}
	return ""
}

// WrongHydrant says what is wrong with a hydrant.
func WrongHydrant(h *fireground.HydrantDef) string {
	switch {
	case !within(h.StaticPSI, 1, 300):
		return "static_psi must be from 1 to 300"
	case !within(h.ResidualPSI, 0, 300) || h.ResidualPSI >= h.StaticPSI:
		return fmt.Sprintf("residual %v psi, expected less than the static pressure of %v psi", h.ResidualPSI, h.StaticPSI)
	case !within(h.FlowGPM, 10, 20000):
		return "flow_gpm must be from 10 to 20000"
	case h.FlowsTooFreely():
		return fmt.Sprintf("residual %v psi at %v gpm, expected %.4g at most: the hydrant's own valve takes the rest", h.ResidualPSI, h.FlowGPM, h.StaticPSI-h.OwnLossPSI())
	case h.Exponent != 0 && h.Exponent != 2 && h.Exponent != 1.852:
		return fmt.Sprintf("exponent %v, expected 2 or 1.852", h.Exponent)
	case !within(h.ElevationFt, -500, 500):
		return "elevation_ft must be from -500 to 500"
	}
	return ""
}

// within is false for a NaN.
func within(x, lo, hi float64) bool { return x >= lo && x <= hi && !math.IsNaN(x) }

func parts(n int) string {
	if n == 1 {
		return "1 part"
	}
	return fmt.Sprintf("%d parts", n)
}

func several(lo, hi int) string {
	if lo == hi {
		return strconv.Itoa(lo)
	}
	return fmt.Sprintf("%d to %d", lo, hi)
}

// discharge is N of "dischargeN"; 0 if the name is another.
func discharge(name string) int {
	digits, ok := strings.CutPrefix(name, "discharge")
	n, err := strconv.Atoi(digits)
	if !ok || err != nil || n < 1 || digits[0] == '0' || digits[0] == '+' {
		return 0
	}
	return n
}

func isName(s string) bool {
	for i := 0; i < len(s); i++ {
		c := s[i]
		if !(c >= 'a' && c <= 'z' || i > 0 && (c >= '0' && c <= '9' || c == '_')) {
			return false
		}
	}
	return s != "" && len(s) <= 32
}
