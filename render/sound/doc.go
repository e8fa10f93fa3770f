// Package sound makes what is heard at a place from the state alone: engine, pump, by-pass, gravel, air,
// horn, the radio's tone. Nothing is sampled. It begins at a low level, can be muted, and where there is
// no audio device a silent twin takes its place; every sound has a caption on the screen anyway.
package sound
