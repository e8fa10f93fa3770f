package main

import (
	"errors"

	"steadyneedle/render/app"
	"steadyneedle/render/play"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/sim/demo"
)

// shows lists the prepared demonstrations.
func (f *front) shows() ([]app.Drill, error) {
	list, err := f.shelf.List()
	if err != nil {
		return nil, err
	}
	var shows []app.Drill
	for _, i := range list.Demonstrations {
		d, err := f.shelf.Demonstration(i.Name)
		if err != nil {
			return nil, err
		}
		shows = append(shows, app.Drill{Name: i.Name, Title: f.units.Prose(d.Drill.Title), About: f.units.Prose(d.Teaches)})
	}
	return shows, nil
}

// present readies a demonstration, or a drill as one without a script.
func (f *front) present(name string) (view.Stage, error) {
	d, err := f.shelf.Demonstration(name)
	if errors.Is(err, scenarios.ErrUnknown) {
		made, ofDrill := f.shelf.Drill(name, scenarios.Options{Seed: f.o.seed, Apparatus: f.o.apparatus})
		if errors.Is(ofDrill, scenarios.ErrUnknown) {
			return nil, err
		}
		if ofDrill != nil {
			return nil, ofDrill
		}
		d, err = demo.OfDrill(made), nil
	}
	if err != nil {
		return nil, err
	}
	p, err := demo.New(d)
	if err != nil {
		return nil, err
	}
	return play.NewStage(p, f.title(d.Drill.Apparatus)+" · for a class", f.units), nil
}
