package report

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"steadyneedle/sim/unit"
)

// Text writes a sheet as plain text.
func Text(w io.Writer, s *Sheet) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "%s (%s), %s, seed %d", s.Title, s.Variant, s.Apparatus, s.Seed)
	if s.Begun != "" {
		fmt.Fprintf(b, ", begun %s", s.Begun)
	}
	fmt.Fprintf(b, "\n%s with %.0f of %.0f, %.0f to pass; clock %s\n", s.Verdict(), s.Score, s.Full, s.Pass, unit.Clock(s.ClockS))
	if s.Ruling != nil {
		fmt.Fprintln(b, s.Ruling.Words())
	}
	for _, phase := range s.Phases() {
		fmt.Fprintf(b, "\n%s: %s\n", phase, s.Grade(phase))
		for i := range s.Findings {
			if f := &s.Findings[i]; f.Phase == phase {
				f.text(b, s.WaivedFor(f))
			}
		}
	}
	missed := 0
	for i := range s.Steps {
		p := &s.Steps[i]
		if !p.Missed {
			continue
		}
		if missed++; missed == 1 {
			fmt.Fprintln(b, "\nSteps missed")
		}
		fmt.Fprintf(b, "  %s (%s)\n", p.Text, p.Became())
	}
	if s.Sums != nil {
		s.Sums.text(b)
	}
	if s.Help != "" {
		fmt.Fprintf(b, "\nHelp: %s; told %d times\n", s.Help, len(s.Hints))
	}
	for _, d := range s.Decisions {
		fmt.Fprintf(b, "\n%s  %s\n", unit.Clock(d.At.Seconds()), d.Text())
	}
	for _, m := range s.Marks {
		fmt.Fprintf(b, "\n%s  mark: %s\n", unit.Clock(m.At.Seconds()), m.Text)
	}
	fmt.Fprintf(b, "\n%s\n", s.Caution)
	return b.Flush()
}

func (f *Finding) text(b io.Writer, waived string) {
	fmt.Fprintf(b, "  %s  %-6s %s, %s\n", unit.Clock(f.At.Seconds()), strings.ToUpper(f.Severity), f.Title, f.Place)
	for _, l := range [][2]string{{"expected", f.Expected}, {"found", f.Measured}, {"why", f.Why}, {"waived", waived}} {
		if l[1] != "" {
			fmt.Fprintf(b, "         %s: %s\n", l[0], l[1])
		}
	}
}

// Became says in a few words what a step became; empty where all is as it should be.
func (p Step) Became() string {
	switch {
	case !p.Done:
		return "not done"
	case p.Late:
		return "passed over in its turn"
	case p.Missed:
		return "done, with a finding"
	case p.Early:
		return "done too soon"
	case p.Hinted:
		return "told"
	}
	return ""
}

func (s *Sums) text(b io.Writer) {
	fmt.Fprintln(b, "\nCalculation")
	for _, l := range append(s.Lines, s.Total) {
		own := "not written"
		if l.Given {
			own = l.Number(l.Answer)
		}
		fmt.Fprintf(b, "  %s: %s, right %s", l.Title, own, l.Number(l.Right))
		if l.Working != "" {
			fmt.Fprintf(b, " (%s)", l.Working)
		}
		fmt.Fprintln(b)
	}
	for i := range s.Proofs {
		fmt.Fprintf(b, "  %s\n", s.Proofs[i].Words(s.Unit))
	}
	fmt.Fprintf(b, "  %s\n", SumsCaution)
}
