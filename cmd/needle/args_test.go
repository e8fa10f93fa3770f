package main

import (
	"strings"
	"testing"
)

// What is wrong with a command line is said in one line, with what was expected.
func TestWrongUse(t *testing.T) {
	for _, c := range []struct{ args, want string }{
		{"run", "needle run: expected the name of a drill, found nothing (needle run --help tells more)"},
		{"run a b", "needle run: expected the name of a drill alone, found 2: a b"},
		{"check", "needle check: expected files, found nothing (needle check --help tells more)"},
		{"records export", "needle records export: expected the ID of an attempt, or last, found nothing (needle records export --help tells more)"},
		{"run reverse-lay --seed -1", "--seed -1: expected a whole number from 0"},
		{"run reverse-lay --speed fast", "--speed fast: expected a number"},
		{"prove reverse-lay --runs many", "--runs many: expected a whole number"},
		{"prove reverse-lay --pairs -1", "--pairs -1: expected a whole number from 0, or all"},
		{"prove reverse-lay --part 3/2", "--part 3/2: expected two whole numbers such as 2/8: the second part of eight"},
		{"prove reverse-lay --part 0/2", "--part 0/2: expected two whole numbers such as 2/8: the second part of eight"},
		{"prove reverse-lay --part 2", "--part 2: expected two whole numbers such as 2/8: the second part of eight"},
		{"run reverse-lay --record=", "--record: expected the name of a file, found nothing"},
		{"rate x --sign Brook --to=", "--to: expected the name of a file, found nothing"},
	} {
		_, errs, code := needle(t, strings.Fields(c.args)...)
		if got := strings.TrimSpace(errs); got != c.want || code != wrongUse {
			t.Errorf("needle %s: exit code %d, %s\nwant %d, %s", c.args, code, got, wrongUse, c.want)
		}
	}
	for _, args := range [][]string{{"check", ""}, {"check", "a", ""}, {"rate", ""}} { // as of a variable that is not set
		if _, errs, code := needle(t, args...); code != wrongUse || !strings.Contains(errs, ", found nothing (") {
			t.Errorf("%q: exit code %d, %s", args, code, errs)
		}
	}
}
