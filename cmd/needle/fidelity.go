package main

import (
	"fmt"
	"io"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/spf13/cobra"

	"steadyneedle/cmd/internal/recorded"
	"steadyneedle/render/report/guide"
	"steadyneedle/scenarios"
	"steadyneedle/sim/fidelity"
	"steadyneedle/sim/scene"
)

// fidelityFlags are what fidelity is asked for.
type fidelityFlags struct {
	json bool
	area string
	html target
}

func newFidelity() *cobra.Command {
	var f fidelityFlags
	cmd := &cobra.Command{
		Use:   "fidelity",
		Short: "Hold the model against published and computed values",
		Long: "fidelity works the simulated machine through its objective tests and compares what it does with\n" +
			"published and computed values, each with its source and tolerance. Exit code 1 says that a test\n" +
			"failed. The tests show that the model behaves as its sources say; they certify nothing.",
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error { return runFidelity(cmd, &f) },
	}
	cmd.Flags().BoolVar(&f.json, "json", false, "print JSON")
	cmd.Flags().Var(&f.html, "html", "write the guide, with plots, to this HTML file")
	cmd.Flags().StringVar(&f.area, "area", "", "one area only: "+shortAreas())
	return cmd
}

// shortAreas lists the areas as --area takes them.
func shortAreas() string {
	names := make([]string, 0, len(fidelity.Areas()))
	for _, a := range fidelity.Areas() {
		names = append(names, a.Short())
	}
	return strings.Join(names, ", ")
}

func runFidelity(cmd *cobra.Command, f *fidelityFlags) error {
	wanted := func(fidelity.Area) bool { return true }
	if f.area != "" {
		area, ok := fidelity.AreaNamed(f.area)
		if !ok {
			return fmt.Errorf("--area %s: expected %s", f.area, shortAreas())
		}
		wanted = func(a fidelity.Area) bool { return a == area }
	}
	trials, err := guideTrials()
	if err != nil {
		return err
	}
	if f.html == "" {
		return tellGuide(cmd, f, runGuide(trials, wanted))
	}
	var results []fidelity.Result
	err = wholeFile("--html", string(f.html), func(w io.Writer) error { // a name that cannot be written is refused before the work
		results = runGuide(trials, wanted)
		g := guide.Guide{Build: recorded.Build(), Physics: scene.Physics, Made: time.Now().Format("January 2, 2006"), Results: results}
		return guide.HTML(w, &g)
	})
	if err != nil {
		return err
	}
	return tellGuide(cmd, f, results)
}

// tellGuide prints the results and gives their verdict.
func tellGuide(cmd *cobra.Command, f *fidelityFlags, results []fidelity.Result) error {
	if f.json {
		if err := printJSON(cmd.OutOrStdout(), guideJSON(results)); err != nil {
			return err
		}
	} else {
		printGuide(cmd.OutOrStdout(), results)
	}
	return verdict(results)
}

// verdict makes a failed test the exit code; the output has told it already.
func verdict(results []fidelity.Result) error {
	for i := range results {
		if !results[i].Pass {
			return coded{failedAttempt, errSilent}
		}
	}
	return nil
}

// guideTrials are the guide's, and the service test of every shipped apparatus with a hand's throttle.
func guideTrials() ([]fidelity.Trial, error) {
	trials := fidelity.Guide()
	shelf := scenarios.Open(nil)
	list, err := shelf.List()
	if err != nil {
		return nil, err
	}
	for _, item := range list.Apparatus {
		def, err := shelf.Apparatus(item.Name)
		if err != nil {
			return nil, err
		}
		if def.Governor == nil {
			trials = append(trials, fidelity.ServiceTest(def)...)
		}
	}
	return trials, nil
}

// runGuide runs the trials of the areas wanted on all processors, and keeps the guide's order.
func runGuide(guide []fidelity.Trial, wanted func(fidelity.Area) bool) []fidelity.Result {
	var trials []fidelity.Trial
	for _, t := range guide {
		for _, a := range fidelity.Areas() {
			if wanted(a) && t.Has(a) {
				trials = append(trials, t)
				break
			}
		}
	}
	done := make([][]fidelity.Result, len(trials))
	var next atomic.Int64
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		workers.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(trials); i = int(next.Add(1)) - 1 {
				done[i] = trials[i].Run(fidelity.Model{})
			}
		})
	}
	workers.Wait()
	var results []fidelity.Result
	for _, list := range done {
		for i := range list {
			if wanted(list[i].Area) {
				results = append(results, list[i])
			}
		}
	}
	return results
}
