// Package theme holds every color of the window, by day, by night with the panel's lights on and
// off, and in high contrast, and nothing else. A test computes the contrasts: 4.5:1 for text, 3:1 for needles, pointers, lamps and focus.
package theme
