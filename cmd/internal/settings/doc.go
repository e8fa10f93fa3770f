// Package settings holds the few choices that outlive a run: where the user's own files lie, which
// units are shown, how large the window's interface is and in which
// colors, and what a game-pad works.
//
// They come in layers: defaults, the file settings.yaml in the user's configuration folder, environment
// variables STEADYNEEDLE_*, command-line flags. In a browser there are the defaults alone.
package settings
