package world

// Place is where a person stands. Cab and Panel are rooms of their own; the others are spots on the
// ground around the apparatus.
type Place uint8

const (
	Walking  Place = iota // between two places: nothing is in reach
	Cab                   // driver's seat
	Panel                 // pump operator's position, left side
	Wheels                // left rear wheel
	RearStep              // tail board and hose bed
	Hydrant               // at the hydrant
	TankTop               // on top, at the fill tower
	Round                 // walking round the scene: hose, couplings, under the apparatus
	placeCount
)

var placeNames = [placeCount]string{"walking", "cab", "panel", "wheels", "rear-step", "hydrant", "tank-top", "round"}

// String returns the place's name as files and reports write it.
func (p Place) String() string {
	if p < placeCount {
		return placeNames[p]
	}
	return "nowhere"
}

// Places lists the places a person can walk to.
func Places() []Place { return []Place{Cab, Panel, Wheels, RearStep, Hydrant, TankTop, Round} }

// PlaceNamed finds a place by its name.
func PlaceNamed(name string) (Place, bool) {
	for p, n := range placeNames {
		if n == name && Place(p) != Walking {
			return Place(p), true
		}
	}
	return 0, false
}

// Reach is a set of places.
type Reach uint16

// At makes a set of places.
func At(places ...Place) Reach {
	var r Reach
	for _, p := range places {
		r |= 1 << p
	}
	return r
}

// Has reports whether p is in the set.
func (r Reach) Has(p Place) bool { return r&(1<<p) != 0 }

const (
	// OnGround is every spot outside the cab.
	OnGround Reach = 1<<Panel | 1<<Wheels | 1<<RearStep | 1<<Hydrant | 1<<TankTop | 1<<Round
	// Anywhere is every place, also while walking.
	Anywhere Reach = 1<<placeCount - 1
	// Nowhere marks what no person perceives or reaches: truth, or things others do.
	Nowhere Reach = 0
)
