// Package cond is how rules, crew cues, steps and scripted operators ask about the world: checked
// programs over a flat table of signals, with their own memory for the words that speak of time.
//
// Programs are written as text in files; package scenarios checks and compiles them.
package cond
