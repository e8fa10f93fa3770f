package main

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"
	"time"

	"github.com/spf13/cobra"

	"steadyneedle/cmd/internal/store"
	"steadyneedle/render/report"
	"steadyneedle/sim/unit"
)

func newRecords() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "records",
		Short: "Attempts kept on this machine: list, show, export",
		Long: "records reads the folder of attempts, plain files that the window program keeps. An attempt is\n" +
			"named by its ID, by the beginning of it, or as \"last\".\n" +
			"Training aid only: a score certifies nothing.",
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	cmd.AddCommand(newRecordsList(), newRecordsShow(), newRecordsExport())
	return cmd
}

// openStore opens the folder of attempts that the settings name.
func openStore(cmd *cobra.Command) (*store.Store, error) {
	set, err := loadSettings(cmd)
	if err != nil {
		return nil, err
	}
	return store.Open(set.Attempts)
}

// findAttempt opens the store and completes the ID of an attempt in it.
func findAttempt(cmd *cobra.Command, word string) (*store.Store, string, error) {
	s, err := openStore(cmd)
	if err != nil {
		return nil, "", err
	}
	id, err := s.Find(word)
	return s, id, err
}

func newRecordsList() *cobra.Command {
	asJSON, drill := false, ""
	cmd := &cobra.Command{
		Use:   "list",
		Short: "List the attempts, oldest first, and the steps that keep going wrong",
		Args:  cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			s, err := openStore(cmd)
			if err != nil {
				return err
			}
			list, bad := s.List() // what cannot be read is left out, and told of at the end
			if bad != nil {
				bad = brokenInput(bad)
			}
			if len(list) == 0 && bad != nil {
				return bad
			}
			list = ofDrill(list, drill)
			if asJSON {
				err = printJSON(cmd.OutOrStdout(), rows(list))
			} else {
				err = printRecords(cmd.OutOrStdout(), list)
			}
			return errors.Join(err, bad)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON")
	cmd.Flags().StringVar(&drill, "drill", "", "only attempts at this drill")
	return cmd
}

func ofDrill(list []store.Item, drill string) []store.Item {
	if drill == "" {
		return list
	}
	var some []store.Item
	for _, it := range list {
		if it.Sheet != nil && it.Sheet.Drill == drill || it.Sheet == nil && strings.HasSuffix(it.ID, "-"+drill) {
			some = append(some, it)
		}
	}
	return some
}

// recordRow is one attempt in a list.
type recordRow struct {
	ID         string  `json:"id"`
	Unfinished bool    `json:"unfinished,omitempty"`
	Drill      string  `json:"drill,omitempty"`
	Variant    string  `json:"variant,omitempty"`
	Mode       string  `json:"mode,omitempty"`
	Begun      string  `json:"begun,omitempty"`
	Verdict    string  `json:"verdict,omitempty"` // the judge's
	Ruling     string  `json:"ruling,omitempty"`  // the evaluator's, in words
	Passed     bool    `json:"passed"`
	Score      float64 `json:"score"`
	ClockS     float64 `json:"clock_s"`
	Findings   int     `json:"findings"`
	Hints      int     `json:"hints"`
}

func rows(list []store.Item) []recordRow {
	all := []recordRow{}
	for _, it := range list {
		r := recordRow{ID: it.ID, Unfinished: it.Unfinished}
		if s := it.Sheet; s != nil {
			r.Drill, r.Variant, r.Mode, r.Begun, r.Verdict = s.Drill, s.Variant, s.Mode, s.Begun, s.Verdict()
			if s.Ruling != nil {
				r.Ruling = s.Ruling.Verdict()
			}
			r.Passed, r.Score, r.ClockS, r.Findings, r.Hints = s.Passed, s.Score, s.ClockS, len(s.Findings), len(s.Hints)
		}
		all = append(all, r)
	}
	return all
}

func printRecords(w io.Writer, list []store.Item) error {
	if len(list) == 0 {
		_, err := fmt.Fprintln(w, "no attempts are kept")
		return err
	}
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "ID\tMODE\tVERDICT\tSCORE\tCLOCK\tFINDINGS\tHINTS\tEVALUATOR")
	for _, r := range rows(list) {
		if r.Unfinished {
			fmt.Fprintf(t, "%s\t\tcut off\t\t\t\t\t\n", r.ID)
			continue
		}
		fmt.Fprintf(t, "%s\t%s\t%s\t%.0f\t%s\t%d\t%d\t%s\n", r.ID, r.Mode, r.Verdict, r.Score, unit.Clock(r.ClockS), r.Findings, r.Hints, r.Ruling)
	}
	if err := t.Flush(); err != nil {
		return err
	}
	for _, line := range comeBack(list) {
		fmt.Fprintln(w, line)
	}
	return nil
}

// comeBack says which steps were missed more than once, by drill.
func comeBack(list []store.Item) []string {
	var drills []string
	by := map[string][]*report.Sheet{}
	for _, it := range list {
		if it.Sheet == nil {
			continue
		}
		if by[it.Sheet.Drill] == nil {
			drills = append(drills, it.Sheet.Drill)
		}
		by[it.Sheet.Drill] = append(by[it.Sheet.Drill], it.Sheet)
	}
	var lines []string
	for _, d := range drills {
		for _, e := range report.History(by[d], time.Now()).Practice(report.StepsOf(by[d])) {
			if e.CameBack {
				lines = append(lines, fmt.Sprintf("comes back in %s: %s Missed in %d of %d attempts.", d, e.Step.Hint, e.Misses, e.Of))
			}
		}
	}
	return lines
}

// sheetOf reads an attempt's sheet; one that is there and cannot be read is a broken file.
func sheetOf(s *store.Store, id string) (*report.Sheet, error) {
	sheet, err := s.Sheet(id)
	if err != nil && !errors.Is(err, store.ErrUnknown) {
		err = brokenInput(err)
	}
	return sheet, err
}

func newRecordsShow() *cobra.Command {
	asJSON := false
	cmd := &cobra.Command{
		Use:   "show ID",
		Short: "Show the sheet of an attempt",
		Args:  one("the ID of an attempt, or last"),
		RunE: func(cmd *cobra.Command, args []string) error {
			s, id, err := findAttempt(cmd, args[0])
			if err != nil {
				return err
			}
			sheet, err := sheetOf(s, id)
			if err != nil {
				return err
			}
			if asJSON {
				return printJSON(cmd.OutOrStdout(), sheet)
			}
			return report.Text(cmd.OutOrStdout(), sheet)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON")
	return cmd
}
