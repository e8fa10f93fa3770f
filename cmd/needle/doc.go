// Command needle is the command line of Steady Needle: it checks and lists what is on the shelf, and
// runs and rates attempts without a window. It works on a server: no window library, no cgo.
//
// Each command is one file. Exit codes: 0 done, 1 a failed attempt, 2 wrong use, 3 a broken input file,
// 4 a fault of this program.
package main
