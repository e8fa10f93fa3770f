// Package report writes sheets as files, without a window: one self-contained HTML page with its
// timeline as inline SVG.
package report
