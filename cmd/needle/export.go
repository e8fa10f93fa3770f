package main

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"steadyneedle/cmd/internal/recorded"
	"steadyneedle/cmd/internal/store"
	"steadyneedle/render/report"
	"steadyneedle/render/report/pdf"
	"steadyneedle/sim/attempt"
)

// exports are the formats.
var exports = []string{"html", "pdf", "csv", "json", "xapi"}

func newRecordsExport() *cobra.Command {
	var as string
	var to target
	who := report.Account{}
	cmd := &cobra.Command{
		Use:   "export ID",
		Short: "Write an attempt as HTML, PDF, CSV, JSON or xAPI",
		Long: "html  the sheet as one page that needs nothing else\n" +
			"pdf   the sheet for the printer\n" +
			"csv   pressures, speed, flow, heat, lamps and valves, ten times a second\n" +
			"json  the sheet as data\n" +
			"xapi  xAPI 2.0 statements (IEEE 9274.1.1): passed or failed with its score, and each phase\n" +
			"Every sheet carries its caution: a score certifies nothing.",
		Args: one("the ID of an attempt, or last"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if !slices.Contains(exports, as) {
				return fmt.Errorf("--as %s: expected %s", as, strings.Join(exports, ", "))
			}
			s, id, err := findAttempt(cmd, args[0])
			if err != nil {
				return err
			}
			var b bytes.Buffer
			if err := export(&b, s, id, as, who); err != nil {
				return err
			}
			write := func(w io.Writer) error {
				_, err := w.Write(b.Bytes())
				return err
			}
			if to == "" {
				return write(cmd.OutOrStdout())
			}
			return wholeFile("--to", string(to), write)
		},
	}
	cmd.Flags().StringVar(&as, "as", "html", "html, pdf, csv, json or xapi")
	cmd.Flags().Var(&to, "to", "write to this file, not to the screen")
	cmd.Flags().StringVar(&who.Name, "account", "candidate", "xapi: the learner's account name, never an e-mail address")
	cmd.Flags().StringVar(&who.HomePage, "home", "https://alder-ferry.example/", "xapi: address of the system that the account is of")
	return cmd
}

func export(w io.Writer, s *store.Store, id, as string, who report.Account) error {
	sheet, err := sheetOf(s, id)
	if err != nil {
		return err
	}
	switch as {
	case "json":
		return printJSON(w, sheet)
	case "xapi":
		list, err := sheet.Statements(id, who)
		if err != nil {
			return err
		}
		return printJSON(w, list)
	}
	a, err := openAttempt(s, id)
	if err != nil {
		return err
	}
	if as == "csv" {
		return report.CSV(w, a)
	}
	if as == "pdf" {
		return pdf.Write(w, report.Again(sheet, a))
	}
	return report.HTML(w, report.Again(sheet, a))
}

// openAttempt opens an attempt whole.
func openAttempt(s *store.Store, id string) (*attempt.Attempt, error) {
	o, err := recorded.Open(s, id)
	if err != nil {
		return nil, brokenInput(err)
	}
	for !o.Work(1 << 30) {
	}
	a, err := o.Attempt()
	if err != nil {
		return nil, brokenInput(fmt.Errorf("attempt %s: %w", id, err))
	}
	return a, nil
}
