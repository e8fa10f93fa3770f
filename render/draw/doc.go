// Package draw is a small vector canvas over an RGBA image: paths, gradients, soft shadows and text at
// exact device pixels. Static art is drawn with it once and kept; nothing here knows of a window, so
// pictures and tests need no display.
//
// Lengths are units; the canvas multiplies them by its scale. One unit is one pixel at 1280×720.
package draw
