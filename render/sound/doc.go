// Package sound makes what is heard at a place from the state alone: engine, pump, by-pass, gravel, air,
// valves, gears, horn, the radio's tone. Nothing is sampled. It begins at a low level, each source has its
// own, all can be muted, and where there is no audio device a silent twin takes its place; every sound has
// a caption for the screen anyway.
package sound
