package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"steadyneedle/scenarios"
)

func newCheck() *cobra.Command {
	return &cobra.Command{
		Use:   "check FILE...",
		Short: "Say what is wrong with drill, apparatus, operator, demonstration and rule files",
		Long: "check reads each file as the programs do and says everything that is wrong with it, one line\n" +
			"each: file:line:col: message. Files named together are checked with each other; a file that\n" +
			"lies in a folder drills, apparatus, demonstrations, rules or operators/DRILL is checked with those beside it.",
		Args: some("files"),
		RunE: func(cmd *cobra.Command, args []string) error {
			shelf, _, err := openShelf(cmd)
			if err != nil {
				return err
			}
			return check(cmd, shelf, args)
		},
	}
}

// check lays all files on the shelf, then checks each. A file that cannot be read does not keep the
// others from being checked.
func check(cmd *cobra.Command, shelf *scenarios.Shelf, names []string) error {
	texts := make([][]byte, len(names))
	var wrong []error
	for i, name := range names {
		text, err := readFile(name)
		if err != nil {
			wrong = append(wrong, err)
			continue
		}
		texts[i] = text
		shelf = around(shelf, name)
	}
	for i, name := range names {
		if texts[i] == nil {
			continue
		}
		if with, _, err := shelf.WithFile(name, texts[i]); err == nil {
			shelf = with
		}
	}
	for i, name := range names {
		if texts[i] == nil {
			continue
		}
		e, err := shelf.Check(name, texts[i])
		if err != nil {
			wrong = append(wrong, err)
			continue
		}
		fmt.Fprintf(cmd.OutOrStdout(), "%s: %s %s is sound\n", name, e.Kind, e.Name)
	}
	if len(wrong) > 0 {
		return brokenInput(errors.Join(wrong...))
	}
	return nil
}
