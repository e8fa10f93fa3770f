package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"steadyneedle/cmd/internal/recorded"
	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/tape"
)

// runFlags are what run is asked for.
type runFlags struct {
	operator, apparatus, variant, onUnsafe string
	record                                 target
	seed                                   uint64
	shuffle, json                          bool
	speed                                  float64
}

func newRun() *cobra.Command {
	var f runFlags
	cmd := &cobra.Command{
		Use:   "run DRILL",
		Short: "Let a scripted operator work a drill, and rate the attempt",
		Long: "run works a drill as fast as the machine allows. The operator is one on the shelf (see list),\n" +
			"or a file. Exit code 1 says that the attempt was not passed.",
		Args: one("the name of a drill"),
		RunE: func(cmd *cobra.Command, args []string) error { return runDrill(cmd, args[0], &f) },
	}
	cmd.Flags().StringVar(&f.operator, "operator", "clean", "operator on the shelf, or an operator file")
	cmd.Flags().Uint64Var(&f.seed, "seed", 0, "seed of all chance (default 1, or what the operator asks for)")
	cmd.Flags().StringVar(&f.variant, "variant", "", "variant of the drill (default: drawn by the seed)")
	cmd.Flags().StringVar(&f.apparatus, "apparatus", "", "apparatus (default: the drill's own)")
	cmd.Flags().Var(&f.record, "record", "write the recording to this file")
	cmd.Flags().BoolVar(&f.json, "json", false, "print JSON")
	cmd.Flags().BoolVar(&f.shuffle, "shuffle", false, "take the steps in any order that the drill allows, by the seed")
	cmd.Flags().StringVar(&f.onUnsafe, "on-unsafe", "", "what an unsafe act does: go-on, stop, or ask you (default: what settings or drill say)")
	cmd.Flags().Float64Var(&f.speed, "speed", 1, "speed of the hands, 0.5 to 2")
	return cmd
}

func runDrill(cmd *cobra.Command, drill string, f *runFlags) error {
	if !(f.speed >= 0.5 && f.speed <= 2) {
		return fmt.Errorf("--speed %g: expected 0.5 to 2", f.speed)
	}
	shelf, set, err := openShelf(cmd)
	if err != nil {
		return err
	}
	if shelf, f.operator, err = withOperatorFile(shelf, f.operator); err != nil {
		return err
	}
	asked := scenarios.Options{Seed: f.seed, Variant: f.variant, Apparatus: f.apparatus}
	d, script, err := shelf.DrillFor(drill, f.operator, asked)
	if err != nil {
		if _, first := shelf.Drill(drill, asked); first != nil { // an unknown drill has no operators
			return first
		}
		return err
	}
	files, err := shelf.TextsOf(d, f.operator)
	if err != nil {
		return err
	}
	terms, err := termsOf(f.onUnsafe, set, d)
	if err != nil {
		return err
	}
	header := tape.Header{Build: recorded.Build(), Operator: f.operator, Files: recorded.Files(files)}
	return record(string(f.record), func(out io.Writer) error {
		a, err := attempt.New(d, attempt.Options{Record: out, Header: header, OnUnsafe: terms})
		if err != nil {
			return err
		}
		o, err := a.Operator(script, operator.Hands{Speed: f.speed, Shuffle: f.shuffle, Seed: d.Setup.Seed})
		if err != nil {
			return err
		}
		ask := asker{from: bufio.NewReader(cmd.InOrStdin()), to: cmd.ErrOrStderr(), attempt: a}
		stuck := a.RunWatched(f.operator, o, ask.look)
		if ask.bad != nil {
			return ask.bad
		}
		if err := printResult(cmd.OutOrStdout(), a, f.json); err != nil && stuck == nil {
			return err
		}
		if stuck != nil {
			return coded{failedAttempt, stuck}
		}
		return nil
	})
}

// withOperatorFile puts an operator's file on the shelf, if it was given by its path.
func withOperatorFile(s *scenarios.Shelf, name string) (*scenarios.Shelf, string, error) {
	if !strings.HasSuffix(name, ".yaml") {
		return s, name, nil
	}
	text, err := readFile(name)
	if err != nil {
		return nil, "", err
	}
	with, e, err := s.WithFile(name, text)
	if err != nil {
		return nil, "", brokenInput(err)
	}
	return with, e.Name, nil
}

// record gives work a file for the recording; without a name, nothing is kept.
func record(name string, work func(io.Writer) error) error {
	if name == "" {
		return work(nil)
	}
	return wholeFile("--record", name, work)
}

func isFailedAttempt(err error) bool {
	var c coded
	return errors.As(err, &c) && c.code == failedAttempt
}
