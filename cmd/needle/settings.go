//go:build !js

package main

import (
	"github.com/spf13/cobra"

	"steadyneedle/cmd/internal/settings"
)

func addSettings(root *cobra.Command) { settings.AddFlags(root.PersistentFlags()) }

func loadSettings(cmd *cobra.Command) (settings.Settings, error) { return settings.Load(cmd.Flags()) }
