// Package report is the sheet of an attempt: drawn up from the attempt, and written as a file without a
// window: one self-contained HTML page with its
// timeline as inline SVG.
package report
