package world

// Tick is a moment: sixtieths of a second since the drill began.
type Tick int64

// TicksPerSecond is the rate at which the world steps.
const TicksPerSecond = 60

// Seconds converts a moment to seconds.
func (t Tick) Seconds() float64 { return float64(t) / TicksPerSecond }

// mostTicks is the longest time that TicksIn gives: four million years.
const mostTicks = 1 << 53

// TicksIn is the whole number of ticks nearest to s seconds, which must be a number.
func TicksIn(s float64) Tick {
	return Tick(max(-mostTicks, min(mostTicks, float64(s*TicksPerSecond))) + 0.5)
}

// Source is who acts.
type Source uint8

const (
	Candidate Source = iota
	Crew
	Officer
	Evaluator
	Instructor
	Fault
	sourceCount
)

var sourceNames = [sourceCount]string{"candidate", "crew", "officer", "evaluator", "instructor", "fault"}

// String returns the source's name as files write it.
func (s Source) String() string {
	if s < sourceCount {
		return sourceNames[s]
	}
	return "nobody"
}

// SourceNamed finds a source by its name.
func SourceNamed(name string) (Source, bool) {
	for s, n := range sourceNames {
		if n == name {
			return Source(s), true
		}
	}
	return 0, false
}

// ControlID numbers a control of one world; names stand in files, numbers in memory.
type ControlID uint16

// Action is the only way into the world, for everyone alike.
// Value is the position the hand has brought the control to, or the number that was said.
type Action struct {
	At      Tick
	By      Source
	From    Place
	Control ControlID
	Value   float64
}
