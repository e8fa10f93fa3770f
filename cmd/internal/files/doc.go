// Package files reads what a user names and writes what a user asks for, and says of both in one line
// what was wrong.
package files
