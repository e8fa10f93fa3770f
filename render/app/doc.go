// Package app is the window without the window: screens, focus, what pointer and keys do, and the frame
// that results. It is driven by events and by elapsed time, so that tests and pictures need no display;
// package window connects it to a real one.
package app
