// Package play lets the window look at and work a real attempt: it turns the attempt's readings into
// what was heard, its findings into a sheet, and hands' moves into actions.
package play
