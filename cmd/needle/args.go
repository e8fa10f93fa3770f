package main

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// one accepts a single argument, and says what it is to be where there is none or there are more.
func one(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch {
		case slices.Contains(args, "") || len(args) == 0:
			return fmt.Errorf("%s: expected %s, found nothing (%[1]s --help tells more)", cmd.CommandPath(), what)
		case len(args) == 1:
			return nil
		}
		return fmt.Errorf("%s: expected %s alone, found %d: %s", cmd.CommandPath(), what, len(args), strings.Join(args, " "))
	}
}

// some accepts any number but none.
func some(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) == 0 || slices.Contains(args, "") {
			return one(what)(cmd, args)
		}
		return nil
	}
}

// target is a flag for a file to be written; where it is given it names one.
type target string

func (t *target) String() string { return string(*t) }

func (t *target) Set(s string) error {
	if s == "" {
		return errors.New("no name")
	}
	*t = target(s)
	return nil
}

func (*target) Type() string { return "file" }

// howMany is a flag for a number of things, negative for all there are.
type howMany int

func (n *howMany) String() string {
	if *n < 0 {
		return "all"
	}
	return strconv.Itoa(int(*n))
}

func (n *howMany) Set(s string) error {
	if s == "all" {
		*n = -1
		return nil
	}
	v, err := strconv.ParseUint(s, 10, 31)
	*n = howMany(v)
	return err
}

func (*howMany) Type() string { return "number" }

func (p *part) String() string {
	if p.of == 0 {
		return ""
	}
	return fmt.Sprintf("%d/%d", p.n, p.of)
}

func (p *part) Set(s string) error {
	n, of, _ := strings.Cut(s, "/")
	a, err := strconv.ParseUint(n, 10, 31)
	b, bad := strconv.ParseUint(of, 10, 31)
	if err != nil || bad != nil || a < 1 || a > b {
		return errors.New("not a part")
	}
	*p = part{int(a), int(b)}
	return nil
}

func (*part) Type() string { return "part" }

// flagValues says what the values of a type of flag look like.
var flagValues = map[string]string{
	"bool": "true or false", "int": "a whole number", "uint64": "a whole number from 0", "float64": "a number",
	"file": "the name of a file", "number": "a whole number from 0, or all", "part": "two whole numbers such as 2/8: the second part of eight",
}

// badFlag says what a flag's value was to be.
func badFlag(_ *cobra.Command, err error) error {
	var v *pflag.InvalidValueError
	if errors.As(err, &v) {
		if what, ok := flagValues[v.GetFlag().Value.Type()]; ok {
			if v.GetValue() == "" {
				return fmt.Errorf("--%s: expected %s, found nothing", v.GetFlag().Name, what)
			}
			return fmt.Errorf("--%s %s: expected %s", v.GetFlag().Name, v.GetValue(), what)
		}
	}
	return err
}
