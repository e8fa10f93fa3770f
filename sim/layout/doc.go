// Package layout is hose laid out on the ground as data, and the same built into a network.
//
// A Plan lists parts: hose, wye, siamese, appliance, monitor, riser, valve, nozzle, a hydrant, open
// water, another pumper. Each part names where its water comes from: a discharge of the apparatus, the
// hydrant of the ground, or parts listed above it. So a plan is a graph without circles, in the order
// in which water runs through it. One kind of part a file.
//
// The package knows nothing of the apparatus itself, but for the places where a plan meets it (Taps).
package layout
