package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"steadyneedle/scenarios"
	"steadyneedle/sim/demo"
)

// shown is what show prints as JSON.
type shown struct {
	Name   string       `json:"name"`
	Claims []shownClaim `json:"claims"`
}

type shownClaim struct {
	Text     string  `json:"text"`
	Measured float64 `json:"measured"`
	Unit     string  `json:"unit"`
	Step     string  `json:"step"`
	Holds    bool    `json:"holds"`
}

func newShow() *cobra.Command {
	asJSON := false
	cmd := &cobra.Command{
		Use:   "show DEMONSTRATION",
		Short: "Run a prepared demonstration without a window, and check every claim it makes",
		Long: "show plays a demonstration from beginning to end as fast as the machine allows, and asks the\n" +
			"simulator whether what its captions claim is so. It is one on the shelf (see list), or a file.\n" +
			"Exit code 1 says that a claim did not hold.",
		Args: one("the name of a demonstration"),
		RunE: func(cmd *cobra.Command, args []string) error {
			shelf, _, err := openShelf(cmd)
			if err != nil {
				return err
			}
			return show(cmd.OutOrStdout(), shelf, args[0], asJSON)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON")
	return cmd
}

func show(w io.Writer, shelf *scenarios.Shelf, name string, asJSON bool) error {
	shelf, name, err := withDemonstrationFile(shelf, name)
	if err != nil {
		return err
	}
	d, err := shelf.Demonstration(name)
	if err != nil {
		return err
	}
	p, err := demo.New(d)
	if err == nil {
		err = p.Run()
	}
	if err != nil {
		return coded{failedAttempt, err}
	}
	out, failed := shown{Name: name, Claims: []shownClaim{}}, 0
	for _, r := range p.Results() {
		out.Claims = append(out.Claims, shownClaim{r.Text, r.Measured, r.Unit, r.Step, r.Holds})
		if !r.Holds {
			failed++
		}
	}
	if asJSON {
		err = printJSON(w, out)
	} else {
		printShown(w, d, &out)
	}
	if err == nil && failed > 0 {
		err = coded{failedAttempt, fmt.Errorf("%s: %d of %d claims do not hold", name, failed, len(out.Claims))}
	}
	return err
}

func printShown(w io.Writer, d *demo.Demonstration, s *shown) {
	fmt.Fprintf(w, "%s\n%s\n", d.Drill.Title, d.Caution)
	step := ""
	for _, c := range s.Claims {
		if c.Step != step {
			step = c.Step
			fmt.Fprintf(w, "\n%s\n", step)
		}
		verdict := "holds"
		if !c.Holds {
			verdict = "FAILS"
		}
		measured := strings.TrimSpace(fmt.Sprintf("%.4g %s", c.Measured, c.Unit))
		fmt.Fprintf(w, "  %s  %14s  %s\n", verdict, measured, c.Text)
	}
}

// withDemonstrationFile puts a demonstration's file on the shelf, if it was given by its path.
func withDemonstrationFile(s *scenarios.Shelf, name string) (*scenarios.Shelf, string, error) {
	if !strings.HasSuffix(name, ".yaml") {
		return s, name, nil
	}
	text, err := readFile(name)
	if err != nil {
		return nil, "", err
	}
	with, e, err := around(s, name).WithFile(name, text)
	if err != nil {
		return nil, "", brokenInput(err)
	}
	if e.Kind != scenarios.DemoFile {
		return nil, "", brokenInput(fmt.Errorf("%s:1:1: is a file of kind %s, expected a demonstration", name, e.Kind))
	}
	return with, e.Name, nil
}
