package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"steadyneedle/render/play"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// recorded opens a recording and makes its drill from the files that it has kept.
func (f *front) recorded(r io.Reader) (*tape.Reader, *drill.Drill, error) {
	t, err := tape.NewReader(r)
	if err != nil {
		return nil, nil, err
	}
	h := t.Header
	var texts []scenarios.Text
	for _, x := range h.Files {
		texts = append(texts, scenarios.Text{Path: x.Name, Body: x.Text, Sum: x.SHA256})
	}
	shelf := scenarios.FromTexts(texts)
	o := scenarios.Options{Seed: h.Seed, Variant: h.Variant}
	if h.Operator != "" {
		if o, err = shelf.Conditions(h.Drill, h.Operator, o); err != nil {
			return nil, nil, err
		}
	}
	d, err := shelf.Drill(h.Drill, o)
	return t, d, err
}

// takeOver works a recording up to a moment; from there the attempt is the candidate's.
func (f *front) takeOver() (view.Attempt, error) {
	file, err := os.Open(f.o.replay)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	t, d, err := f.recorded(file)
	if err != nil {
		return nil, err
	}
	a, err := attempt.New(d, attempt.Options{Live: true, Keys: true})
	if err != nil {
		return nil, err
	}
	f.now = play.New(a, f.title(d.Apparatus)+" · taken over", false)
	names := map[string]world.ControlID{}
	for i, c := range f.now.Controls() {
		names[c.Name] = world.ControlID(i)
	}
	for {
		l, err := t.Next()
		if errors.Is(err, io.EOF) || err == nil && l.At >= world.Tick(f.o.at) {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", f.o.replay, err)
		}
		for a.Now() < l.At && !a.Finished() {
			f.now.Tick()
		}
		if l.Kind == tape.Action {
			if err := a.Do(world.Action{By: l.By, From: l.From, Control: names[l.Control], Value: l.Value}); err != nil {
				return nil, fmt.Errorf("%s, line %d: %w", f.o.replay, l.Number, err)
			}
		}
	}
	for a.Now() < world.Tick(f.o.at) && !a.Finished() {
		f.now.Tick()
	}
	return f.now, nil
}
