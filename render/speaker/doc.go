// Package speaker plays what package sound makes on the machine's audio device, directly, so that a
// missing device is reported and does not end the program.
package speaker
