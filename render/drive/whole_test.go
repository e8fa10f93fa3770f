package drive

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestWhole works the whole reverse lay in the real window with the keyboard alone, and with the pointer
// alone, from the evaluator's first sentence to the engine back in service; the sheet must be without a
// finding. It takes some ten minutes each, so that it is run only where STEADYNEEDLE_WHOLE names how many
// times as fast as wall time it is to go:
//
//	STEADYNEEDLE_WHOLE=2 xvfb-run -a go test -v -timeout 60m -run Whole ./render/drive
func TestWhole(t *testing.T) {
	pace := os.Getenv("STEADYNEEDLE_WHOLE")
	if pace == "" {
		t.Skip("set STEADYNEEDLE_WHOLE to a pace, such as 2")
	}
	for name, h := range map[string]func(*driver) hands{"keyboard": newKeyboard, "pointer": newPointer} {
		t.Run(name, func(t *testing.T) {
			tape := filepath.Join(os.TempDir(), "steadyneedle-whole-"+name+".tape")
			d := open(t, "reverse-lay", "--pace", pace, "--record", tape)
			t.Logf("recorded in %s", tape)
			p := newPerson(t, d, h, "reverse-lay")
			p.work()
			d.until("the end of the drill", 120, func() bool { return d.now.Screen == "own-marks" })
			d.press("Escape")
			d.until("the sheet", 20, func() bool { return d.now.Screen == "debrief" })
			if found := d.findings(); len(found) > 0 {
				t.Errorf("the sheet finds %s", strings.Join(found, ", "))
			}
		})
	}
}

// findings are the rules that the sheet on the screen finds broken.
func (d *driver) findings() []string {
	var found []string
	for _, it := range d.now.Items {
		if it.Label != "" {
			found = append(found, it.Label)
		}
	}
	return found
}
