package main

import (
	"encoding/json"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"steadyneedle/scenarios"
)

func newList() *cobra.Command {
	asJSON := false
	cmd := &cobra.Command{
		Use:   "list",
		Short: "List drills, apparatus and operators",
		Args:  cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			shelf, _, err := openShelf(cmd)
			if err != nil {
				return err
			}
			list, err := shelf.List() // files that cannot be read are left out, and told of at the end
			if asJSON {
				if err := printJSON(cmd.OutOrStdout(), list); err != nil {
					return err
				}
			} else {
				printList(cmd.OutOrStdout(), list)
			}
			return err
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON")
	return cmd
}

// printJSON writes a value as one indented document.
func printJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}

func printList(w io.Writer, list scenarios.Listing) {
	section := func(title string, items []scenarios.Item) {
		if len(items) == 0 {
			return
		}
		fmt.Fprintln(w, title)
		for _, i := range items {
			fmt.Fprintf(w, "  %-24s %s\n", i.Name, i.Title)
		}
	}
	section("Drills", list.Drills)
	section("Apparatus", list.Apparatus)
	section("Demonstrations", list.Demonstrations)
	if len(list.Operators) > 0 {
		fmt.Fprintln(w, "Operators")
	}
	for _, o := range list.Operators {
		what := "works it without a mistake"
		if o.Breaks != "" {
			what = "breaks " + o.Breaks
		}
		fmt.Fprintf(w, "  %-24s %s: %s\n", o.Name, o.Drill, what)
	}
}
