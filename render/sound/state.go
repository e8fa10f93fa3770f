package sound

// Rate is samples a second.
const Rate = 48000

// State is what is to be heard, as far as it is heard where one stands. Levels are 0 to 1. Counts rise by
// one for each event, which is then heard once.
type State struct {
	EngineRPM, Load float64 // load: share of the torque that the engine has at its speed
	PumpPSI         float64 // pump discharge: the pump's whine
	Bypass          float64 // water rushing through the by-pass
	Gravel          float64 // cavitation against the casing
	Air             float64 // a leak that hisses
	Spit            float64 // air and water at the bleeder
	Splash          float64 // water running down on the road
	Primer          float64 // the primer's motor
	Horn            bool
	Valves          int  // a valve has come to its stop
	Brake           int  // the spring brake's air
	Clash           int  // gears that grind
	Radio           int  // a message by radio
	Muffled         bool // inside the cab
	Level           float64
	Mix             Mix
}
