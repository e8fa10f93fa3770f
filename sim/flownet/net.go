package flownet

import "steadyneedle/sim/state"

// Net is a network that has been built. It is not safe for concurrent use.
type Net struct {
	Patm float64 // Pa absolute, pressure of the air around; 101325 unless set
	Tau  float64 // s, damping of storage; DefaultTau unless set
	// Inertialess leaves the inertance of all links out. It is for tests that prove what inertance does.
	Inertialess bool

	nodes []*Node
	links []*Link
	free  []*Node // that are no boundaries …
	fixed []*Node // … and those that are
	open  []*Link // that were not shut when the step began
	plain []*Link // those of them with nothing but a quadratic loss …
	other []*Link // … and the others
	pumps []*Link // those that have a gain
	stale bool    // these lists are to be made anew
	lu    program
	count Counters
	books books
}

// Counters tell how hard the solver worked since Build or the last ResetCounters.
type Counters struct {
	Steps      int // steps taken, steady solves included
	Iterations int // Newton iterations in all
	Most       int // iterations of the worst step
	CapMet     int // steps that ended at MaxIterations without having converged
}

// Balance is the account of water since Build.
type Balance struct {
	Stored  float64 // m³ in the nodes now
	Entered float64 // m³ that came in: across boundaries, by WaterIn and by SetWater, less what left
	Moved   float64 // m³ that crossed boundaries, in either direction
	Error   float64 // m³ of Stored that Entered and the first content do not explain
}

const (
	// DefaultTau is the time constant of storage damping, an assumption: without any, a dead-ended
	// supply hose rings for twelve seconds.
	DefaultTau = 0.02
	// MaxIterations bounds the Newton iterations of one step. One or two are usual; the most that was ever
	// seen are 33, where a cavitating pump draws air by one pipe and gives it by another, and 29 where two pumps
	// suck from one another.
	MaxIterations = 48
)

// Nodes is the number of nodes, boundaries included.
func (n *Net) Nodes() int { return len(n.nodes) }

// Links is the number of links.
func (n *Net) Links() int { return len(n.links) }

// Node gives a node by its number, in the order in which nodes were added, from 0.
func (n *Net) Node(i int) *Node { return n.nodes[i] }

// Link gives a link by its number, in the order in which links were added, from 0.
func (n *Net) Link(i int) *Link { return n.links[i] }

// Counters tells how hard the solver worked.
func (n *Net) Counters() Counters { return n.count }

// ResetCounters begins the count anew.
func (n *Net) ResetCounters() { n.count = Counters{} }

// Walk visits all state, coefficients included: they are what the owner last set.
func (n *Net) Walk(w *state.Walker) {
	w.Float(&n.Patm)
	w.Float(&n.Tau)
	for _, v := range n.nodes {
		v.walk(w)
	}
	for _, l := range n.links {
		l.walk(w)
	}
	n.books.walk(w)
	n.stale = n.stale || w.Loading()
}
