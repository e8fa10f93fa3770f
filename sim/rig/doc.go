// Package rig holds the parts of the apparatus that water and power run through: engine, drive, pump,
// relief valve, primer, tank, valves, instruments. Each is one type in one file and steps by itself;
// package plant connects them with water. Def describes an apparatus, Default is Engine 41.
package rig
