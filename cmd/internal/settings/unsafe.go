package settings

import (
	"fmt"
	"strings"

	"steadyneedle/sim/drill"
)

// AsDrill leaves what an unsafe act does to the drill.
const AsDrill = "drill"

// Terms is what an unsafe act does in a rated attempt at a drill, by a word of the settings.
func Terms(word string, d *drill.Drill) (drill.OnUnsafe, error) {
	if word == AsDrill {
		return d.OnUnsafe, nil
	}
	o, ok := drill.OnUnsafeNamed(word)
	if !ok {
		return 0, fmt.Errorf("found %q, expected %s or %s", word, strings.Join(drill.OnUnsafeNames(), ", "), AsDrill)
	}
	return o, nil
}
