// Package rig holds the parts of the apparatus that water and power run through: engine, drive, pump,
// relief valve, governor, primer, tank, valves, instruments. Each is one type in one file.
package rig
