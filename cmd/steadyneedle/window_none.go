//go:build nowindow

package main

import (
	"errors"

	"steadyneedle/render/app"
)

// openWindow says that this build has none: the window library ends a program that is started without a
// display, so that pictures are drawn where there is none by a build that leaves it out.
func openWindow(*app.App, options) error {
	return errors.New("this build has no window; it draws pictures only (--picture FILE)")
}

func speakers(options) app.Sound { return nil }
