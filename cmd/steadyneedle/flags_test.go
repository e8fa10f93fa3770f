package main

import (
	"strings"
	"testing"
)

func TestParse(t *testing.T) {
	o, err := parse(strings.Fields("--seed 7 reverse-lay --rated --width 1920 --height 1080"))
	if err != nil || o.drill != "reverse-lay" || !o.rated || o.seed != 7 || o.width != 1920 {
		t.Errorf("%+v, %v", o, err)
	}
	for line, want := range map[string]string{
		"reverse-lay other":      "two drills",
		"--rated --rehearse":     "exclude",
		"x --rated --pace 4":     "not for rated",
		"x --rated --trace f":    "not for rated",
		"--pace 0":               "1 to 64",
		"--width 800":            "1024",
		"--replay f --rated":     "not taken over",
		"--at -1":                "from 0",
		"x --show --record f":    "no recording is made of it",
		"--picture p --record f": "exclude each other",
		"--nonsense":             "--help",
	} {
		if _, err := parse(strings.Fields(line)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", line, err, want)
		}
	}
}
