package main

import (
	"fmt"
	"os"

	"steadyneedle/cmd/internal/recorded"
	"steadyneedle/render/view"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/world"
)

// replayed works the recording that the command line names.
func (f *front) replayed() (*attempt.Attempt, error) {
	text, err := os.ReadFile(f.o.replay)
	if err != nil {
		return nil, err
	}
	o, err := recorded.OpenText(text)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", f.o.replay, err)
	}
	for !o.Work(1 << 30) {
	}
	a, err := o.Attempt()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", f.o.replay, err)
	}
	return a, nil
}

// takeOver works a recording; from the moment that the command line names the attempt is the candidate's.
func (f *front) takeOver() (view.Attempt, error) {
	a, err := f.replayed()
	if err != nil {
		return nil, err
	}
	return f.branch(a, world.Tick(f.o.at))
}
