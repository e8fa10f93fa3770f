// Package window connects the interface to a real window: input, wall time, and the frame's sprites as
// textures. It draws only what has changed.
package window
