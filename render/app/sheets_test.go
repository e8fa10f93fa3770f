package app

import (
	"fmt"
	"testing"

	plot "steadyneedle/render/debrief"
	"steadyneedle/render/draw"
	"steadyneedle/render/play"
	"steadyneedle/render/report"
	"steadyneedle/scenarios"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// manyFound is an attempt whose sheet holds a finding of every rule that ships.
type manyFound struct {
	*play.Play
	sheet report.Sheet
}

func (m *manyFound) Sheet() *report.Sheet { return &m.sheet }

func newManyFound(t *testing.T, p *play.Play) *manyFound {
	m := &manyFound{p, *p.Sheet()}
	m.sheet.Findings, m.sheet.Own = nil, nil
	phases := p.Sheet().Phases()
	shelf := scenarios.Open(nil)
	list, err := shelf.List()
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, d := range list.Drills {
		drill, err := shelf.Drill(d.Name, scenarios.Options{Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		for i := range drill.Rules {
			r := &drill.Rules[i]
			if seen[r.Title+r.Expected] {
				continue
			}
			seen[r.Title+r.Expected] = true
			n := len(m.sheet.Findings)
			m.sheet.Findings = append(m.sheet.Findings, report.Finding{Rule: r.ID, At: world.Tick(n * 100), Severity: "error",
				Phase: phases[n*len(phases)/400%len(phases)], Place: "walking round the scene", Title: r.Title, Expected: r.Expected,
				Measured: "by-passing 651 gpm in normal flow; put right at 12:34", Why: r.Why,
				Follows: []string{"Pressure and flow not confirmed with the crew"}})
		}
	}
	if len(m.sheet.Findings) < 50 {
		t.Fatalf("only %d rules ship", len(m.sheet.Findings))
	}
	return m
}

// TestTurnedViewKeepsTheChoice: the finding that was chosen stays in the list when the timeline takes more
// of the height, and below it there is room for everything that was lit and open.
func TestTurnedViewKeepsTheChoice(t *testing.T) {
	at := newManyFound(t, worked(t, "clean"))
	for i := range at.sheet.Series {
		if s := &at.sheet.Series[i]; s.Unit == "lamp" || s.Unit == "open" {
			for k := range s.V {
				s.V[k] = 1
			}
		}
	}
	a := storeApp(&shelfStore{})
	a.shelf.Dry = true
	a.Take(at.Play)
	atEverySize(a, func(size string) {
		d := newDebrief(a, at)
		a.show(d)
		f := d.leaves[0].(*findings)
		for range 20 {
			f.turn(a, d, 1)
		}
		for range 3 {
			d.turnView(a)
			seen := false
			f.visible(a, d, func(_ int, r sheetRow, _ draw.Rect) { seen = seen || r.finding == f.chosen })
			if !seen {
				t.Errorf("%s, %v: finding %d is out of sight", size, d.view, f.chosen)
			}
			where := fmt.Sprintf("%s, %v", size, d.view)
			keepsClear(t, a, where)
		}
	})
}

// TestSheetLayout is TestLayout for the debrief of an attempt in which everything went wrong: whatever
// finding is chosen and whatever the timeline shows, all of its words have room.
func TestSheetLayout(t *testing.T) {
	for _, sys := range []unit.System{unit.US, unit.SI} {
		at := newManyFound(t, worked(t, "clean").In(sys))
		a := storeApp(&shelfStore{})
		a.shelf.Dry = true
		a.Take(at.Play)
		for _, p := range pairs[:6] {
			a.zoom, a.w = p.zoom, 0
			a.Resize(p.w, p.h)
			for _, view := range []plot.View{plot.Pressures, plot.Positions} {
				d := newDebrief(a, at)
				d.view = view
				a.show(d)
				f := d.leaves[0].(*findings)
				for n, r := range f.rows {
					if r.finding < 0 {
						continue
					}
					f.choose(a, d, r.finding)
					f.reveal(a, d, n)
					where := fmt.Sprintf("%v %d×%d at %g, %v, %s", sys, p.w, p.h, p.zoom, view, d.sheet.Findings[r.finding].Rule)
					itemsKeepClear(t, a, where)
					keepsClear(t, a, where)
				}
			}
		}
	}
}
