// Package flownet solves the flow of water, with some air in it, through a network of pipes.
//
// Nodes store water, links carry it. Every step solves pressures and flows together: backward Euler
// in time, Newton's method (global gradient), a sparse elimination whose order is fixed at build.
// The steady solve is the same network with an endless time step.
//
// Everything is SI: Pa above atmosphere, m³, m³/s. A step allocates nothing.
// The package knows nothing of pumps, hoses or hydrants: those set a link's coefficients, or give
// a Gain. Nor does it know of time other than the step it is told to take.
package flownet
