// Package display says in one line that there is no display, before the window library panics over it:
// Go initializes packages that are ready in the order of their import paths, and this one, which needs
// nothing but syscall, is ready before the library, which needs more.
package display
