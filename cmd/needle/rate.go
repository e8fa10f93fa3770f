package main

import (
	"bytes"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"steadyneedle/cmd/internal/recorded"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/tape"
)

func newRate() *cobra.Command {
	asJSON := false
	cmd := &cobra.Command{
		Use:   "rate FILE",
		Short: "Replay a recording, prove it, and rate it",
		Long: "rate works a recording again, tick by tick, holds every second against the hash that was\n" +
			"recorded, and prints the same sheet. It uses the files that the recording carries.",
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error { return rate(cmd, args[0], asJSON) },
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON")
	return cmd
}

func rate(cmd *cobra.Command, name string, asJSON bool) error {
	text, err := readTape(name)
	if err != nil {
		return err
	}
	broken := func(err error) error { return brokenInput(fmt.Errorf("%s: %w", name, err)) }
	t, err := tape.NewReader(bytes.NewReader(text))
	if err != nil {
		return broken(err)
	}
	d, err := recorded.Drill(&t.Header)
	if err != nil {
		return broken(err)
	}
	a, err := attempt.Replay(t, d, attempt.Options{})
	if a == nil {
		return broken(err)
	}
	if err != nil {
		fmt.Fprintf(cmd.ErrOrStderr(), "What could be replayed, up to %s:\n", clock(a.Now()))
		return broken(errors.Join(err, silenced(printResult(cmd.ErrOrStderr(), a, false))))
	}
	return printResult(cmd.OutOrStdout(), a, asJSON)
}

// silenced drops the error that only says that an attempt failed.
func silenced(err error) error {
	if isFailedAttempt(err) {
		return nil
	}
	return err
}
