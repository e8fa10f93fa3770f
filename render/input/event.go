package input

// Kind is what happened.
type Kind uint8

// The kinds of events.
const (
	Move    Kind = iota // a finger, or the pointer, went to X, Y
	Press               // it went down there
	Release             // it was lifted there
	Wheel               // the wheel turned by Notches
	KeyDown             // Key went down, or repeats while it is held
	KeyUp               // Key came up
	Char                // Rune was typed
	Axis                // axis Number of a game-pad stands at Value
	Button              // button Number of a game-pad went down (Value 1) or came up (0)
)

// Mouse is the Finger of the pointer; touches count from 1.
const Mouse = 0

// Event is one thing that hands did.
type Event struct {
	Kind        Kind
	Finger      int     // Move, Press, Release
	X, Y        float64 // px from the picture's upper left corner
	Notches     float64 // up is positive
	Key         string  // Tab, Enter, Space, Up, Home, F1 …; letters and figures as themselves
	Shift, Ctrl bool
	Rune        rune
	Number      int     // of an axis or button, from 0
	Value       float64 // of an axis −1 to 1, of a button 0 or 1
}
