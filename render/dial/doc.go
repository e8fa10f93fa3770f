// Package dial draws gauges: a scale, its face (drawn once), and the needle that turns over it.
// It knows nothing of what is measured.
package dial
