package main

import (
	"fmt"
	"io"
	"math"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"

	"github.com/spf13/cobra"

	"steadyneedle/scenarios"
	"steadyneedle/sim/proof"
	"steadyneedle/sim/unit"
)

// proveFlags are what prove is asked for.
type proveFlags struct {
	runs  int
	pairs howMany
	part  part
	json  bool
}

func newProve() *cobra.Command {
	f := proveFlags{pairs: 10}
	cmd := &cobra.Command{
		Use:   "prove [DRILL...]",
		Short: "Prove the judge: every mistake found, nothing else",
		Long: "prove holds a drill's rules against attempts of which the outcome is known: every operator who\n" +
			"makes one mistake, pairs of mistakes in one attempt, and legal variations of the clean run. It\n" +
			"prints how many of the mistakes were found (recall) and how many of the findings had a cause\n" +
			"(precision). Exit code 1 says that the judge is not proved, or that a rule has no operator who\n" +
			"breaks it. Without names it proves every drill on the shelf. All pairs of a large drill take an hour;\n" +
			"--part works them in parts, one after the other or each on a machine of its own.",
		RunE: func(cmd *cobra.Command, args []string) error { return prove(cmd, args, &f) },
	}
	cmd.Flags().IntVar(&f.runs, "runs", 50, "legal variations of each drill's clean run")
	cmd.Flags().Var(&f.pairs, "pairs", "attempts of each drill with two mistakes; all: each pair in each variant")
	cmd.Flags().Var(&f.part, "part", "only this part of each drill's attempts: 2/8 is the second of eight")
	cmd.Flags().BoolVar(&f.json, "json", false, "print JSON")
	return cmd
}

// proved is what prove prints of one drill.
type proved struct {
	Name          string   `json:"name"`
	Rules         int      `json:"rules"`
	Unproved      []string `json:"unproved"`
	Faults        int      `json:"faults"`
	Caught        int      `json:"caught"`
	Wrong         int      `json:"wrong"` // attempts with a mistake in which anything was not as it should be
	Pairs         int      `json:"pairs"`
	PairsRight    int      `json:"pairs_right"`
	CleanRuns     int      `json:"clean_runs"`
	FalseFindings int      `json:"false_findings"` // in clean runs
	Recall        float64  `json:"recall"`
	Precision     float64  `json:"precision"`
	Failures      []string `json:"failures"`
}

func prove(cmd *cobra.Command, names []string, f *proveFlags) error {
	if f.runs < 0 {
		return fmt.Errorf("--runs %d: expected no negative number", f.runs)
	}
	shelf, _, err := openShelf(cmd)
	if err != nil {
		return err
	}
	list, err := shelf.List()
	if err != nil {
		return err
	}
	if len(names) == 0 {
		for _, d := range list.Drills {
			names = append(names, d.Name)
		}
	}
	var all struct {
		Drills []proved `json:"drills"`
	}
	all.Drills = []proved{}
	much := amount{legal: make([]uint64, f.runs), pairs: int(f.pairs), part: f.part}
	for i := range much.legal {
		much.legal[i] = uint64(i) + 1
	}
	holds := true
	for _, name := range names {
		m, err := proveDrill(shelf, &list, name, much)
		if err != nil {
			return err
		}
		holds = holds && m.Holds()
		all.Drills = append(all.Drills, provedOf(name, m))
	}
	if f.json {
		err = printJSON(cmd.OutOrStdout(), all)
	} else {
		printProof(cmd.OutOrStdout(), all.Drills)
	}
	if err == nil && !holds {
		return coded{failedAttempt, errSilent}
	}
	return err
}

// proveDrill tries every case of one drill, as many at once as there are processors.
func proveDrill(shelf *scenarios.Shelf, list *scenarios.Listing, name string, much amount) (*proof.Matrix, error) {
	c, err := casesOf(shelf, list, name, much)
	if err != nil {
		return nil, err
	}
	verdicts, errs := make([]proof.Verdict, len(c.makers)), make([]error, len(c.makers))
	var next atomic.Int64
	var wait sync.WaitGroup
	for range runtime.NumCPU() {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(c.makers); i = int(next.Add(1)) - 1 {
				var one proof.Case
				if one, errs[i] = c.makers[i](); errs[i] == nil {
					verdicts[i] = one.Try()
				}
			}
		})
	}
	wait.Wait()
	m := proof.NewMatrix(c.rules, c.broken)
	for i := range verdicts {
		if errs[i] != nil {
			return nil, errs[i]
		}
		m.Add(verdicts[i])
	}
	return m, nil
}

func provedOf(name string, m *proof.Matrix) proved {
	p := proved{
		Name: name, Rules: m.Rules, Unproved: append([]string{}, m.Unproved...), Faults: m.Faults, Caught: m.Caught,
		Pairs: m.Pairs, PairsRight: m.PairsRight, CleanRuns: m.Legal,
		Recall: m.Recall(), Precision: m.Precision(), Failures: []string{},
	}
	for i := range m.Failures {
		v := &m.Failures[i]
		switch v.Kind {
		case proof.Fault:
			p.Wrong++
		case proof.Legal:
			p.FalseFindings += len(v.Wrong)
		}
		p.Failures = append(p.Failures, failure(v))
	}
	return p
}

// failure says in one line what was not as it should be.
func failure(v *proof.Verdict) string {
	var what []string
	if len(v.Missed) > 0 {
		what = append(what, "missed "+strings.Join(v.Missed, ", "))
	}
	for i := range v.Wrong {
		what = append(what, fmt.Sprintf("found %s at %s without a cause", v.Wrong[i].Rule, unit.Clock(v.Wrong[i].From.Seconds())))
	}
	if math.Abs(v.OffS) > proof.OnsetS {
		what = append(what, fmt.Sprintf("onset %+.1f s from the act", v.OffS))
	}
	if v.Err != nil {
		what = append(what, v.Err.Error())
	}
	return v.Name + ": " + strings.Join(what, "; ")
}

func printProof(w io.Writer, drills []proved) {
	for i := range drills {
		d := &drills[i]
		fmt.Fprintf(w, "%s: %d rules\n", d.Name, d.Rules)
		fmt.Fprintf(w, "  one mistake      %4d attempts, %4d caught, %d with something wrong\n", d.Faults, d.Caught, d.Wrong)
		fmt.Fprintf(w, "  two mistakes     %4d attempts, %4d right\n", d.Pairs, d.PairsRight)
		fmt.Fprintf(w, "  legal variations %4d attempts, %4d false findings\n", d.CleanRuns, d.FalseFindings)
		fmt.Fprintf(w, "  recall %.1f %%, precision %.1f %%\n", 100*d.Recall, 100*d.Precision)
		if len(d.Unproved) > 0 {
			fmt.Fprintf(w, "  rules that no operator breaks: %s\n", strings.Join(d.Unproved, ", "))
		}
		for _, f := range d.Failures {
			fmt.Fprintf(w, "  %s\n", f)
		}
	}
}
