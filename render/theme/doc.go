// Package theme holds every color of the window, by day and by night, and nothing else. A test
// computes the contrasts: 4.5:1 for text, 3:1 for needles, pointers, lamps and focus.
package theme
