// Package pdf writes a sheet as a PDF for printing and for the file. It stands apart from package report
// so that the browser build, which has no use for it, does not carry its library.
package pdf
