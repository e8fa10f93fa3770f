package drive

import (
	"os"
	"path/filepath"
	"testing"

	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// upToPanel lets the clean operator work the drill until the hydrant is open and the operator is back
// at the panel, and keeps the recording: from there the test takes over. It returns the file and the tick.
func upToPanel(t *testing.T) (string, world.Tick) {
	t.Helper()
	shelf := scenarios.Open(nil)
	d, script, err := shelf.DrillFor("reverse-lay", "clean", scenarios.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	texts, err := shelf.TextsOf(d, "")
	if err != nil {
		t.Fatal(err)
	}
	var files []tape.File
	for _, x := range texts {
		files = append(files, tape.File{Name: x.Path, Text: x.Body})
	}
	name := filepath.Join(t.TempDir(), "to-panel.tape")
	out, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	a, err := attempt.New(d, attempt.Options{Record: out, Header: tape.Header{Files: files}})
	if err != nil {
		t.Fatal(err)
	}
	o, err := a.Operator(script, operator.Hands{Speed: 1, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	hydrant, ok := a.Scene.Board.Cell("hydrant_valve")
	if !ok {
		t.Fatal("no hydrant valve on the board")
	}
	var reading world.Reading
	var acts []world.Action
	for a.Now() < 30*60*world.TicksPerSecond {
		acts = a.Hand(o, &reading, acts)
		a.Tick()
		if a.Scene.World.Place() == world.Panel && a.Scene.Board.V[hydrant] > 0.99 {
			at := a.Now()
			if err := a.Close(); err != nil {
				t.Fatal(err)
			}
			if err := out.Close(); err != nil {
				t.Fatal(err)
			}
			return name, at
		}
	}
	t.Fatal("the operator never came back from the hydrant")
	return "", 0
}
