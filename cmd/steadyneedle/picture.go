package main

import (
	"fmt"
	"image/png"
	"io"
	"strings"

	"steadyneedle/cmd/internal/files"
	"steadyneedle/render/app"
	"steadyneedle/render/play"
	"steadyneedle/render/stage"
	"steadyneedle/sim/world"
)

// picture draws one exact frame into a file.
func (f *front) picture(a *app.App) int {
	if err := f.stage(a); err != nil {
		return complain(err)
	}
	frame := a.Frame()
	w, h := a.Size()
	enc := png.Encoder{CompressionLevel: png.BestCompression}
	err := files.Write("--picture", f.o.picture, files.None, func(out io.Writer) error {
		return enc.Encode(out, stage.Compose(frame, w, h))
	})
	if err != nil {
		return complain(err)
	}
	return done
}

// stage brings the interface to what the picture is to show.
func (f *front) stage(a *app.App) error {
	place := f.o.place
	if place == "" {
		place = "panel"
	}
	if place == "menu" && f.o.replay == "" {
		return nil
	}
	if f.o.show {
		if err := a.Present(f.o.drill); err != nil {
			return err
		}
		return a.Fast(world.Tick(f.o.at), f.o.place)
	}
	p, err := f.moment()
	if err != nil {
		return err
	}
	if at, ok := world.PlaceNamed(strings.TrimPrefix(place, "street-")); ok {
		if err := p.Stand(world.Tick(f.o.at), at); err != nil {
			return err
		}
	}
	a.Take(p)
	if f.o.replay != "" {
		a.Recall(world.Tick(f.o.at))
	}
	if !a.Open(place) {
		return wrongChoice{fmt.Errorf("--place: no place is named %q", place)}
	}
	return nil
}

// moment is the attempt that the picture shows: of a recording, or a fresh one.
func (f *front) moment() (*play.Play, error) {
	if f.o.replay == "" {
		name := f.o.drill
		if name == "" {
			name = "reverse-lay"
		}
		if _, err := f.start(name, f.o.rated); err != nil {
			return nil, err
		}
		return f.now, nil
	}
	a, err := f.replayed()
	if err != nil {
		return nil, err
	}
	return play.New(a, f.title(a.Drill.Apparatus)+" · replay", f.o.rated).In(f.units), nil
}
