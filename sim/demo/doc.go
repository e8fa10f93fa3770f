// Package demo plays prepared demonstrations: a setup, a script at human speed with captions and stops,
// and claims. A claim says in words what the caption teaches, and beside it a condition by which the
// simulator is asked whether that is so.
//
// A demonstration stands on an attempt, so that it can be recorded, rewound and looked at like one. The
// instructor may act at any time, interrupt the script and let it go on. How fast time passes, and what
// is drawn, is for the caller.
package demo
