// Package speech is the constant list of what can be said and shown, sorted by addressee, and the
// drawn pictograms of the gestures. What is offered never depends on what is due.
package speech
