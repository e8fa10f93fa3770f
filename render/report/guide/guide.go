// Package guide writes the objective test guide as one self-contained HTML page with inline SVG. It stands
// apart from package report so that the window does not carry the tests.
package guide

import (
	"html/template"
	"io"
	"sort"

	"steadyneedle/render/report"
	"steadyneedle/sim/fidelity"
)

// Guide is the objective test guide, ready to be written.
type Guide struct {
	Build   string // of the program
	Physics int    // number of the model
	Made    string // when
	Results []fidelity.Result
}

// area is the part of the guide that is about one area.
type area struct {
	Name, Short    string
	Tests          []entry
	Passed, Failed int
}

type entry struct {
	*fidelity.Result
	Picture template.HTML
	Bar     template.HTML
}

// source is one source with how many tests stand on it.
type source struct {
	Text, Mark string
	Tests      int
}

type tally struct {
	Name  string
	Tests int
}

// document is what the template is given.
type document struct {
	*Guide
	Caution        string
	Areas          []area
	Failures       []entry
	Passed, Failed int
	Sources        []source
	Marks, Tiers   []tally
	Devices        []fidelity.Device
	Assumptions    []fidelity.Assumption
	Unchecked      []string
	Weaknesses     []string
}

// HTML writes the guide as one page that needs nothing else.
func HTML(w io.Writer, g *Guide) error {
	p := document{Guide: g, Caution: report.Caution, Devices: fidelity.Devices(), Assumptions: fidelity.Assumptions(), Unchecked: fidelity.Unchecked(), Weaknesses: fidelity.Weaknesses()}
	for _, a := range fidelity.Areas() {
		part := area{Name: a.String(), Short: a.Short()}
		for i := range g.Results {
			r := &g.Results[i]
			if r.Area != a {
				continue
			}
			t := entry{r, curve(r), toleranceBar(r)}
			part.Tests = append(part.Tests, t)
			if r.Pass {
				part.Passed++
			} else {
				part.Failed++
				p.Failures = append(p.Failures, t)
			}
		}
		if len(part.Tests) > 0 {
			p.Areas = append(p.Areas, part)
		}
		p.Passed, p.Failed = p.Passed+part.Passed, p.Failed+part.Failed
	}
	p.count()
	return page.Execute(w, &p)
}

// count tells on what the tests stand.
func (p *document) count() {
	marks, tiers := map[fidelity.Mark]int{}, map[fidelity.Tier]int{}
	sources := map[fidelity.Source]int{}
	for i := range p.Results {
		r := &p.Results[i]
		marks[r.Source.Mark]++
		tiers[r.Tolerance.Tier]++
		sources[r.Source]++
	}
	for m := fidelity.Read; m <= fidelity.Assumed; m++ {
		if marks[m] > 0 {
			p.Marks = append(p.Marks, tally{m.String(), marks[m]})
		}
	}
	for t := fidelity.Numerical; t <= fidelity.Limit; t++ {
		if tiers[t] > 0 {
			p.Tiers = append(p.Tiers, tally{t.String(), tiers[t]})
		}
	}
	list := make([]fidelity.Source, 0, len(sources))
	for s := range sources {
		list = append(list, s)
	}
	sort.Slice(list, func(i, j int) bool {
		if list[i].Mark != list[j].Mark {
			return list[i].Mark < list[j].Mark
		}
		return list[i].Text < list[j].Text
	})
	for _, s := range list {
		p.Sources = append(p.Sources, source{s.Text, s.Mark.String(), sources[s]})
	}
}
