package main

import (
	"github.com/spf13/cobra"

	"steadyneedle/cmd/internal/settings"
	"steadyneedle/scenarios"
)

func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:   "needle",
		Short: "Fire pump training without a window: check, list, run and rate",
		Long: "needle is the command line of Steady Needle, a training simulator of the fire pump panel.\n" +
			"Training aid only: department procedure, the apparatus maker's manual, local codes and a\n" +
			"qualified instructor come first. It certifies nobody.",
		Args:          cobra.NoArgs,
		RunE:          func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	root.CompletionOptions.DisableDefaultCmd = true
	root.SetFlagErrorFunc(badFlag)
	addSettings(root)
	root.AddCommand(newCheck(), newFidelity(), newList(), newProve(), newRate(), newRecords(), newRun(), newShow())
	return root
}

// openShelf opens the user's folder over the shipped files.
func openShelf(cmd *cobra.Command) (*scenarios.Shelf, settings.Settings, error) {
	s, err := loadSettings(cmd)
	if err != nil {
		return nil, s, err
	}
	return s.OpenShelf(), s, nil
}
