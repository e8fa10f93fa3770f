package recorded

import (
	"runtime/debug"

	"steadyneedle/scenarios"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/tape"
)

// Drill is the drill as the recording's own files have it.
func Drill(h *tape.Header) (*drill.Drill, error) {
	texts := make([]scenarios.Text, len(h.Files))
	for i, f := range h.Files {
		texts[i] = scenarios.Text{Path: f.Name, Body: f.Text, Sum: f.SHA256}
	}
	shelf := scenarios.FromTexts(texts)
	opts := scenarios.Options{Seed: h.Seed, Variant: h.Variant, Apparatus: h.Apparatus}
	if _, err := shelf.Drill(h.Drill, opts); err != nil { // before its operators: an unknown drill has none
		return nil, err
	}
	if h.Operator != "" {
		var err error
		if opts, err = shelf.Conditions(h.Drill, h.Operator, opts); err != nil {
			return nil, err
		}
	}
	return shelf.Drill(h.Drill, opts)
}

// Files are a recording's copies of the files that an attempt is made from.
func Files(texts []scenarios.Text) []tape.File {
	list := make([]tape.File, len(texts))
	for i, t := range texts {
		list[i] = tape.File{Name: t.Path, Text: t.Body}
	}
	return list
}

// Build names the program's version in a recording: the commit, where Go knows it.
func Build() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unknown"
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" {
			return s.Value
		}
	}
	return info.Main.Version
}
