// Package input is the one layer that everything hands do goes through on its way to the interface:
// pointer, fingers, wheel, keys, typed characters, and the axes and buttons of a game-pad or of a
// throttle box that is wired as one.
//
// It knows no devices. Package window makes its events from real ones, tests make them by hand.
package input
