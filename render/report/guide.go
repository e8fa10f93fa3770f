package report

import (
	"html/template"
	"io"
	"sort"

	"steadyneedle/sim/fidelity"
)

// Guide is the objective test guide, ready to be written.
type Guide struct {
	Build   string // of the program
	Physics int    // number of the model
	Made    string // when
	Results []fidelity.Result
}

// guideArea is the part of the guide that is about one area.
type guideArea struct {
	Name, Short    string
	Tests          []guideTest
	Passed, Failed int
}

type guideTest struct {
	*fidelity.Result
	Picture template.HTML
	Bar     template.HTML
}

// guideSource is one source with how many tests stand on it.
type guideSource struct {
	Text, Mark string
	Tests      int
}

type guideCount struct {
	Name  string
	Tests int
}

// guidePage is what the template is given.
type guidePage struct {
	*Guide
	Caution        string
	Areas          []guideArea
	Failures       []guideTest
	Passed, Failed int
	Sources        []guideSource
	Marks, Tiers   []guideCount
	Assumptions    []fidelity.Assumption
	Unchecked      []string
}

// GuideHTML writes the guide as one page that needs nothing else.
func GuideHTML(w io.Writer, g *Guide) error {
	p := guidePage{Guide: g, Caution: Caution, Assumptions: fidelity.Assumptions(), Unchecked: fidelity.Unchecked()}
	for _, a := range fidelity.Areas() {
		part := guideArea{Name: a.String(), Short: a.Short()}
		for i := range g.Results {
			r := &g.Results[i]
			if r.Area != a {
				continue
			}
			t := guideTest{r, curve(r), toleranceBar(r)}
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
	return guideTemplate.Execute(w, &p)
}

// count tells on what the tests stand.
func (p *guidePage) count() {
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
			p.Marks = append(p.Marks, guideCount{m.String(), marks[m]})
		}
	}
	for t := fidelity.Numerical; t <= fidelity.Limit; t++ {
		if tiers[t] > 0 {
			p.Tiers = append(p.Tiers, guideCount{t.String(), tiers[t]})
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
		p.Sources = append(p.Sources, guideSource{s.Text, s.Mark.String(), sources[s]})
	}
}
