//go:build !js

package main

import (
	"errors"

	"github.com/spf13/cobra"

	"steadyneedle/cmd/internal/settings"
)

func addSettings(root *cobra.Command) { settings.AddFlags(root.PersistentFlags()) }

// loadSettings reads the settings; a wrong flag is wrong use, anything else a broken file.
func loadSettings(cmd *cobra.Command) (settings.Settings, error) {
	s, err := settings.Load(cmd.Flags())
	if flag := (settings.FlagError{}); err != nil && !errors.As(err, &flag) {
		err = brokenInput(err)
	}
	return s, err
}
