package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"steadyneedle/cmd/internal/recorded"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/unit"
)

func newRate() *cobra.Command {
	var f rateFlags
	cmd := &cobra.Command{
		Use:   "rate FILE",
		Short: "Replay a recording, prove it, and rate it",
		Long: "rate works a recording again, tick by tick, holds every second against the hash that was\n" +
			"recorded, and prints the same sheet. It uses the files that the recording carries.",
		Args: one("a recording"),
		RunE: func(cmd *cobra.Command, args []string) error { return rate(cmd, args[0], &f) },
	}
	cmd.Flags().BoolVar(&f.json, "json", false, "print JSON")
	cmd.Flags().StringArrayVar(&f.waive, "waive", nil, "evaluator: waive a finding, as RULE=REASON; needs --to")
	cmd.Flags().StringVar(&f.sign, "sign", "", "evaluator: sign the sheet with this name; needs --to")
	cmd.Flags().Var(&f.to, "to", "write the recording with the ruling to this file")
	return cmd
}

// rateFlags are what rate is asked for.
type rateFlags struct {
	json  bool
	waive []string
	sign  string
	to    target
}

func rate(cmd *cobra.Command, name string, f *rateFlags) error {
	if (len(f.waive) > 0 || f.sign != "") != (f.to != "") {
		return errors.New("--waive and --sign go with --to FILE, expected them together")
	}
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
	if err == nil && len(d.Unjudged) > 0 {
		err = fmt.Errorf("the recording has rules that this program does not understand; they were not judged:\n%s", strings.Join(d.Unjudged, "\n"))
	}
	if err != nil {
		how := "What could be replayed"
		if errors.Is(err, tape.ErrVersion) {
			how = "Worked again with another physics, no proof of what was recorded"
		}
		fmt.Fprintf(cmd.ErrOrStderr(), "%s, up to %s:\n", how, unit.Clock(a.Now().Seconds()))
		return broken(errors.Join(err, silenced(printResult(cmd.ErrOrStderr(), a, false))))
	}
	if f.to == "" {
		return printResult(cmd.OutOrStdout(), a, f.json)
	}
	if err := rule(a, f); err != nil {
		return err
	}
	return wholeFile("--to", string(f.to), func(out io.Writer) error {
		if err := a.WriteTape(out); err != nil {
			return err
		}
		return printResult(cmd.OutOrStdout(), a, f.json)
	})
}

// rule takes the evaluator's ruling. A rule that was broken more than once is waived wherever it was.
func rule(a *attempt.Attempt, f *rateFlags) error {
	for _, w := range f.waive {
		id, reason, _ := strings.Cut(w, "=")
		if reason == "" {
			return fmt.Errorf("--waive %q: expected RULE=REASON", w)
		}
		n := 0
		for _, found := range a.Sheet().Findings {
			if found.Rule != id {
				continue
			}
			if err := a.Waive(id, found.From, reason); err != nil {
				return fmt.Errorf("--waive %q: %w", w, err)
			}
			n++
		}
		if n == 0 {
			return fmt.Errorf("--waive %q: the sheet has no finding of rule %s", w, id)
		}
	}
	if f.sign != "" {
		if err := a.Sign(f.sign); err != nil {
			return fmt.Errorf("--sign %q: %w", f.sign, err)
		}
	}
	return nil
}

// silenced drops the error that only says that an attempt failed.
func silenced(err error) error {
	if isFailedAttempt(err) {
		return nil
	}
	return err
}
