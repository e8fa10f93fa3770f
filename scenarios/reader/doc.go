// Package reader reads the YAML files that people write into Go structs, and says everything that is
// wrong with a file at once, each fault with its line, its column and what was expected.
//
// It knows positions and types, not drills: what the keys mean is package scenarios' business. It
// never panics, whatever it is given; it opens no files.
package reader
