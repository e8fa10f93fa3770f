//go:build !nowindow

package main

import (
	"os"

	"steadyneedle/render/app"
	"steadyneedle/render/speaker"
	"steadyneedle/render/window"
)

// openWindow shows the interface until its window is closed.
func openWindow(a *app.App, o options) error {
	w := window.Options{Width: o.width, Height: o.height, Title: "Steady Needle", FullScreen: o.fullscreen}
	if o.trace != "" {
		t, err := os.Create(o.trace)
		if err != nil {
			return err
		}
		defer t.Close()
		w.Trace = t
	}
	return window.Run(a, w)
}

// speakers opens the audio device; a picture needs none.
func speakers(o options) app.Sound {
	if o.picture != "" {
		return nil
	}
	return speaker.Start()
}
