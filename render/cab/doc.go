// Package cab is the driver's seat: the street through the windshield, the instruments, brakes,
// transmission, pump shift and lights, and the decisions of the way to the hydrant.
package cab
