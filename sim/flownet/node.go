package flownet

// Node is a place that water can be stored at, or a boundary whose pressure is given.
//
// A free node with Volume > 0 stores water by one closed law,
//
//	Water = wall(P) − Air·Patm/u,   u = P + Patm − Vapor > 0,
//
// where wall(P) = Volume + Stretch·P for a hard wall (see Soft for the other). It holds stiffness,
// trapped air and the vapor limit together. A free node with Volume = 0 is a bare junction: it
// stores nothing and air does not cross it.
//
// The fields may be changed between steps. P, Water and Air are state; use SetWater and SetAir of
// the network, so that its balance knows.
type Node struct {
	Name    string
	P       float64 // Pa, gauge; a boundary's is set by its owner
	Water   float64 // m³
	Air     float64 // m³ as it would be at atmospheric pressure
	Volume  float64 // m³ inside, at zero gauge pressure
	Stretch float64 // m³/Pa by which the wall (and the water) gives
	Vapor   float64 // Pa absolute, vapor pressure of the water; 2339 (20 °C) unless set
	Soft    SoftWall
	Tau     float64 // s, damping of this node's storage; the network's when 0
	AirIn   float64 // m³/s of air at atmospheric pressure that leaks in (the owner keeps it ≥ 0)
	WaterIn float64 // m³/s of water put in from nowhere in the network; negative takes it out
	Void    float64 // a boundary's: 0 gives water when it flows in, 1 gives air (the atmosphere)

	fixed  bool
	number int // of the network's nodes
	store  nodeStore
}

// SoftWall is a wall that lies flat when nothing holds it up, as soft hose does: it holds Flat·Volume
// at zero pressure and is round at Give, in a straight line between; below zero it is stiff again.
// Without that floor a flat hose would be an endless source. The zero value is a hard wall.
type SoftWall struct {
	Give  float64 // Pa at which it is round and full; 0: hard wall
	Flat  float64 // share of Volume that is left when flat, 0…0.9
	Floor float64 // m³/Pa of what is left
}

// Fixed reports whether the node is a boundary.
func (n *Node) Fixed() bool { return n.fixed }

// Filled is water over Volume: 0 empty, 1 full, slightly more under pressure. 0 for a bare junction.
func (n *Node) Filled() float64 {
	if n.Volume <= 0 {
		return 0
	}
	return n.Water / n.Volume
}
