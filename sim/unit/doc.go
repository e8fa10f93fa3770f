// Package unit holds the trade's quantities (psi, gpm, ft, rpm, °F …) as types,
// their conversion to and from the SI values that the model works in, and how they are written out.
//
// It knows nothing of pumps or panels.
package unit
