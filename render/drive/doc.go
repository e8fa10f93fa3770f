// Package drive holds the tests that work the real window from outside, with pointer and keys, on
// whatever display DISPLAY names. It has no code of its own for the program.
package drive
