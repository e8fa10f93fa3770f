// Command steadyneedle is the window: a training aid at a live pump panel. It qualifies nobody;
// department procedure, the apparatus maker's manual and a qualified instructor come first.
package main

import (
	"fmt"
	"os"
	"runtime/debug"
)

// Exit codes.
const (
	done     = 0
	failed   = 1
	wrongUse = 2
	badFile  = 3
	ourFault = 4
)

func main() { os.Exit(guarded()) }

// guarded turns a panic of ours into a clear message and its own exit code.
func guarded() (code int) {
	defer func() {
		if p := recover(); p != nil {
			fmt.Fprintf(os.Stderr, "steadyneedle: a fault of ours: %v\n%s", p, debug.Stack())
			code = ourFault
		}
	}()
	o, err := parse(os.Args[1:])
	if err != nil {
		fmt.Fprintln(os.Stderr, "steadyneedle:", err)
		return wrongUse
	}
	if o.help {
		fmt.Print(usage)
		return done
	}
	return run(o)
}
