package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"

	"steadyneedle/cmd/internal/settings"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/unit"
)

// asker asks the evaluator at the terminal what an unsafe act does to the attempt.
type asker struct {
	from    *bufio.Reader
	to      io.Writer
	attempt *attempt.Attempt
	bad     error // the input ended before the answer came
}

// look asks when the attempt stands at an unsafe act.
func (k *asker) look() {
	for f := k.attempt.Undecided(); f != nil; f = k.attempt.Undecided() {
		fmt.Fprintf(k.to, "%s  UNSAFE %s (%s)\n       expected: %s\n       why: %s\n", unit.Clock(f.From.Seconds()), f.Title, f.Rule, f.Expected, f.Why)
		if k.bad = k.decide(); k.bad != nil {
			k.attempt.Close()
		}
	}
}

// decide reads until there is an answer.
func (k *asker) decide() error {
	for {
		fmt.Fprint(k.to, "The world stands. Type end to end the attempt here, or go-on: ")
		line, err := k.from.ReadString('\n')
		switch strings.TrimSpace(line) {
		case "end":
			return k.attempt.Decide(false)
		case "go-on":
			return k.attempt.Decide(true)
		}
		if err != nil {
			fmt.Fprintln(k.to)
			return errors.New("an unsafe act waits for the evaluator's word, and the input has ended; expected end or go-on (or --on-unsafe go-on)")
		}
	}
}

// termsOf is what an unsafe act does: by the flag, else by the settings, else by the drill.
func termsOf(flag string, set settings.Settings, d *drill.Drill) (drill.OnUnsafe, error) {
	if flag == "" {
		return settings.Terms(set.OnUnsafe, d)
	}
	o, err := settings.Terms(flag, d)
	if err != nil {
		err = fmt.Errorf("--on-unsafe: %w", err)
	}
	return o, err
}
