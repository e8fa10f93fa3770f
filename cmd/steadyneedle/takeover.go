package main

import (
	"fmt"

	"steadyneedle/cmd/internal/files"
	"steadyneedle/cmd/internal/recorded"
	"steadyneedle/render/view"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/world"
)

// replayed works the recording that the command line names.
func (f *front) replayed() (*attempt.Attempt, error) {
	text, err := files.Read(f.o.replay, files.MaxTape)
	if err != nil {
		return nil, err
	}
	broken := func(err error) error { return brokenFile{fmt.Errorf("%s: %w", f.o.replay, err)} }
	o, err := recorded.OpenText(text)
	if err != nil {
		return nil, broken(err)
	}
	for !o.Work(1 << 30) {
	}
	a, err := o.Attempt()
	if err != nil {
		return nil, broken(err)
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
