// Package report is the sheet of an attempt: drawn up from the attempt, and written without a window as
// one self-contained HTML page with its timeline as inline SVG.
package report
