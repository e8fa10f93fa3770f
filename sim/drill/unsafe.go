package drill

// OnUnsafe is what an unsafe act does to an attempt. Whatever it is, the act is a finding.
type OnUnsafe uint8

const (
	GoOn OnUnsafe = iota // the attempt goes on
	Stop                 // it ends there
	Ask                  // the world stands until the evaluator has decided
	onUnsafeCount
)

// onUnsafeNames are those that files, settings and recordings use.
var onUnsafeNames = [onUnsafeCount]string{GoOn: "go-on", Stop: "stop", Ask: "ask"}

// String is its name in files.
func (o OnUnsafe) String() string { return onUnsafeNames[o] }

// Words say it in a sentence's second half: "An unsafe act …".
func (o OnUnsafe) Words() string {
	return [onUnsafeCount]string{
		GoOn: "is found, and the attempt goes on",
		Stop: "ends the attempt",
		Ask:  "stops the world until the evaluator decides",
	}[o]
}

// OnUnsafeNamed finds one by its name.
func OnUnsafeNamed(name string) (OnUnsafe, bool) {
	for o, n := range onUnsafeNames {
		if n == name {
			return OnUnsafe(o), true
		}
	}
	return 0, false
}

// OnUnsafeNames lists all names.
func OnUnsafeNames() []string { return onUnsafeNames[:] }
