package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"

	"steadyneedle/scenarios/reader"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// Exit codes.
const (
	done     = 0
	wrongUse = 2
	broken   = 3 // an input file
	ourFault = 4
)

// errSilent is an outcome that the output has told already.
var errSilent = errors.New("the attempt was not passed")

// coded is an error with the exit code that it is to end in.
type coded struct {
	code int
	err  error
}

func (c coded) Error() string { return c.err.Error() }
func (c coded) Unwrap() error { return c.err }

// brokenInput marks an error as the fault of an input file.
func brokenInput(err error) error { return coded{broken, err} }

// run is the whole program.
func run(args []string, out, errs io.Writer) int {
	return guard(errs, func() int {
		root := newRoot()
		root.SetArgs(args)
		root.SetOut(out)
		root.SetErr(errs)
		err := root.Execute()
		if err != nil && !errors.Is(err, errSilent) {
			fmt.Fprintln(errs, err)
		}
		return codeOf(err)
	})
}

// guard turns a panic into one clear message and exit code 4. STEADYNEEDLE_TRACE shows where it came from.
func guard(errs io.Writer, work func() int) (code int) {
	defer func() {
		if r := recover(); r != nil {
			fmt.Fprintf(errs, "needle: a fault of this program, not of yours: %v\n", r)
			if os.Getenv("STEADYNEEDLE_TRACE") != "" {
				fmt.Fprintf(errs, "%s", debug.Stack())
			}
			code = ourFault
		}
	}()
	return work()
}

// codeOf is the exit code of an error. Faults in files speak for themselves; what cobra or an unknown
// name brings is wrong use.
func codeOf(err error) int {
	var c coded
	var faults reader.Faults
	switch {
	case err == nil:
		return done
	case errors.As(err, &c):
		return c.code
	case errors.As(err, &faults):
		return broken
	}
	return wrongUse
}
