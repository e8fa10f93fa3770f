package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"steadyneedle/cmd/internal/files"
	"steadyneedle/cmd/internal/recorded"
	"steadyneedle/cmd/internal/settings"
	"steadyneedle/cmd/internal/store"
	"steadyneedle/render/app"
	"steadyneedle/render/play"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/unit"
)

// front is what the window is given: the shelf, and how attempts begin and are kept.
type front struct {
	o     options
	units unit.System
	shelf *scenarios.Shelf
	kept  string // folder where sheets are saved; empty: where the program was started
	keeper
}

func run(o options) int {
	shelf, set, err := openShelf()
	if err != nil {
		return complain(err)
	}
	c, err := o.choose(set)
	if err != nil {
		return complain(err)
	}
	f := &front{o: o, units: c.units, shelf: shelf, kept: set.Attempts, keeper: keeper{ids: map[*play.Play]string{}}}
	if o.picture == "" || o.place == "records" || o.place == "all-attempts" {
		if f.store, err = store.Open(set.Attempts); err != nil {
			fmt.Fprintln(os.Stderr, "steadyneedle: attempts are not kept:", err)
		}
	}
	drills, err := f.drills(c.onUnsafe)
	if err != nil {
		return complain(err)
	}
	shows, err := f.shows()
	if err != nil {
		return complain(err)
	}
	opts := app.Options{Drills: drills, Shows: shows, Present: f.present, Start: f.start, Save: f.save, Sound: speakers(o), Pace: o.pace, Zoom: c.zoom, Pad: c.pad, Look: c.look, Level: c.level, Mix: c.mix,
		First: o.picture == "" && settings.First()}
	if f.store != nil {
		opts.Store = f
	}
	a := app.New(opts)
	a.Resize(o.width, o.height)
	if o.picture != "" {
		return f.picture(a)
	}
	switch {
	case o.replay != "":
		at, err := f.takeOver()
		if err != nil {
			return complain(err)
		}
		a.Take(at)
	case o.drill != "" && o.show:
		if err := a.Present(o.drill); err != nil {
			return complain(err)
		}
	case o.drill != "":
		if err := a.Offer(o.drill, o.rated); err != nil {
			return complain(err)
		}
	}
	if err := openWindow(a, o); err != nil {
		return complain(err)
	}
	return f.close()
}

func (f *front) drills(onUnsafe func(*drill.Drill) drill.OnUnsafe) ([]app.Drill, error) {
	list, err := f.shelf.List()
	if err != nil {
		return nil, err
	}
	var drills []app.Drill
	for _, d := range list.Drills {
		made, err := f.shelf.Drill(d.Name, scenarios.Options{Seed: f.o.seed})
		if err != nil {
			return nil, err
		}
		drills = append(drills, app.Drill{Name: d.Name, Title: f.units.Prose(d.Title), About: f.units.Prose(made.Objective), OnUnsafe: onUnsafe(made)})
	}
	return drills, nil
}

// start begins an attempt and its recording.
func (f *front) start(name string, asRated bool) (view.Attempt, error) {
	d, err := f.shelf.Drill(name, scenarios.Options{Seed: f.o.seed, Apparatus: f.o.apparatus})
	if err != nil {
		return nil, err
	}
	texts, err := f.shelf.TextsOf(d, "")
	if err != nil {
		return nil, err
	}
	mode := rehearsal
	if asRated {
		mode = rated
	}
	o, err := f.begin(d, tape.Header{Files: recorded.Files(texts)}, mode)
	if err != nil {
		return nil, err
	}
	if mode == rehearsal {
		o.Help = f.prompter(d)
	}
	a, err := attempt.New(d, o)
	if err != nil {
		return nil, err
	}
	return f.take(a, mode, mode), nil
}

// title is an apparatus's name as people say it.
func (f *front) title(name string) string {
	if list, err := f.shelf.List(); err == nil {
		for _, a := range list.Apparatus {
			if a.Name == name && a.Title != "" {
				short, _, _ := strings.Cut(a.Title, ",")
				return short
			}
		}
	}
	return name
}

// close ends what is still open.
func (f *front) close() int {
	if err := f.settle(); err != nil {
		return complain(err)
	}
	return done
}

// complain says what is wrong in a line and gives its exit code.
func complain(err error) int {
	fmt.Fprintln(os.Stderr, "steadyneedle:", err)
	var te *tape.Error
	var wrong wrongChoice
	var file brokenFile
	var unwritable *files.Unwritable
	switch {
	case errors.As(err, &file):
		return badFile
	case errors.As(err, &unwritable):
		return wrongUse
	case errors.As(err, &wrong):
		return wrongUse
	case errors.Is(err, scenarios.ErrUnknown):
		return wrongUse
	case errors.As(err, &te), broken(err):
		return badFile
	}
	return failed
}

// brokenFile is what is wrong with a file that was named, whatever it is.
type brokenFile struct{ error }

func (b brokenFile) Unwrap() error { return b.error }

func broken(err error) bool {
	var faults reader.Faults
	return errors.As(err, &faults)
}
