package main

import (
	"github.com/spf13/cobra"

	"steadyneedle/cmd/internal/settings"
)

// Under js the program has no settings beyond their defaults; it is built so that the same attempt can
// be hashed there too.

func addSettings(*cobra.Command) {}

func loadSettings(*cobra.Command) (settings.Settings, error) { return settings.Load() }
