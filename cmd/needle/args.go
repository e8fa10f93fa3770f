package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// one accepts a single argument, and says what it is to be where there is none or there are more.
func one(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch len(args) {
		case 0:
			return fmt.Errorf("%s: expected %s, found nothing (%[1]s --help tells more)", cmd.CommandPath(), what)
		case 1:
			return nil
		}
		return fmt.Errorf("%s: expected %s alone, found %d: %s", cmd.CommandPath(), what, len(args), strings.Join(args, " "))
	}
}

// some accepts any number but none.
func some(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) == 0 {
			return one(what)(cmd, args)
		}
		return nil
	}
}

// flagValues says what the values of a type of flag look like.
var flagValues = map[string]string{
	"bool": "true or false", "int": "a whole number", "uint64": "a whole number from 0", "float64": "a number",
}

// badFlag says what a flag's value was to be.
func badFlag(_ *cobra.Command, err error) error {
	var v *pflag.InvalidValueError
	if errors.As(err, &v) {
		if what, ok := flagValues[v.GetFlag().Value.Type()]; ok {
			return fmt.Errorf("--%s %s: expected %s", v.GetFlag().Name, v.GetValue(), what)
		}
	}
	return err
}
