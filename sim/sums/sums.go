package sums

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"steadyneedle/sim/attempt"
	"steadyneedle/sim/board"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/judge"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// Note is what notes of the calculation sheet are about: the term's ID and the number, in its unit.
const Note = "sum"

// Total is the ID of the result, which is no term.
const Total = "total"

// Line is one term as it was found and as it should be.
type Line struct {
	drill.Term
	Given   bool // the candidate wrote it down
	Answer  float64
	Right   float64
	Working string // with its numbers
	SI      string // the working with the method's constants and numbers in SI; empty: the method has none
}

// OK reports whether the answer is right.
func (l *Line) OK() bool { return l.Given && math.Abs(l.Answer-l.Right) <= l.Within+1e-9 }

// Sheet is the whole calculation.
type Sheet struct {
	Lines    []Line
	Total    Line // the result as written down
	RoundPSI float64
	RoundKPA float64    // where the department reckons in SI; 0: not said
	Stated   float64    // the result as stated, psi; NaN: not stated
	At       world.Tick // the moment whose lay it is about
	Laid     Laid
	LimitPSI float64 // of the weakest hose of the lay; 0: not given
}

// Entries are what the candidate has written down so far, by term.
func Entries(a *attempt.Attempt) map[string]float64 {
	list := map[string]float64{}
	for _, n := range a.Notes(Note) {
		id, text, _ := strings.Cut(n.Text, " ")
		if v, err := strconv.ParseFloat(text, 64); err == nil {
			list[id] = v
		} else {
			delete(list, id)
		}
	}
	return list
}

// Write notes a term; NaN takes it back.
func Write(a *attempt.Attempt, id string, v float64) {
	if math.IsNaN(v) {
		a.Note(Note, id+" -")
		return
	}
	a.Note(Note, id+" "+strconv.FormatFloat(v, 'g', -1, 64))
}

// Of draws up the calculation sheet. ok is false for a drill without one, and for an attempt that
// cannot be looked back into.
func Of(a *attempt.Attempt) (s Sheet, ok bool) {
	c := a.Drill.Calculation
	if c == nil {
		return s, false
	}
	view, err := a.NewView()
	if err != nil {
		return s, false
	}
	s.At, s.Stated = moment(a, c)
	if err := a.Look(s.At, view); err != nil {
		return s, false
	}
	given := Entries(a)
	s.RoundPSI, s.RoundKPA, s.LimitPSI = c.RoundPSI, c.RoundKPA, Limit(a)
	for _, t := range c.Terms {
		s.Lines = append(s.Lines, line(view.Board, t, given))
	}
	s.Total = line(view.Board, drill.Term{ID: Total, Title: "Pump discharge pressure", Unit: "psi", Is: c.Total, Within: max(1, c.RoundPSI)}, given)
	s.Laid = Laid{Ft: read(view.Board, "laid_ft"), SizeIn: read(view.Board, "line_size"), LossC: read(view.Board, "line_c")}
	return s, true
}

// read is what stands on the board; 0 for what this world lacks.
func read(b *board.Board, name string) float64 {
	cell, ok := b.Cell(name)
	if !ok {
		return 0
	}
	return b.V[cell]
}

// moment is when the result was last stated, and what was; where it was not, the end of the time in
// which the line flowed.
func moment(a *attempt.Attempt, c *drill.Calculation) (world.Tick, float64) {
	at, said := world.Tick(-1), math.NaN()
	controls := a.Scene.World.Controls()
	for _, act := range a.Said(a.Now() + 1) {
		if controls[act.Control].Name == c.Stated && act.By == world.Candidate {
			at, said = act.At+board.Beat, act.Value
		}
	}
	if at >= 0 {
		return min(at, a.Now()), said
	}
	flow := fmt.Sprintf("line%d_gpm", a.Drill.Setup.Ground.Discharge)
	for i := range a.Series.Channels {
		if ch := &a.Series.Channels[i]; ch.Name == flow {
			for k, v := range ch.V {
				if v > 20 {
					at = a.Series.At[k]
				}
			}
		}
	}
	if at < 0 {
		at = a.Now()
	}
	return at, said
}

// line evaluates one term at the board's moment. Terms have no time words, and so no memory.
func line(b *board.Board, t drill.Term, given map[string]float64) Line {
	l := Line{Term: t, Right: value(t.Is, b)}
	l.Answer, l.Given = given[t.ID], false
	_, l.Given = given[t.ID]
	l.Working, l.SI = fill(t.Working, b, unit.US), fill(t.WorkingSI, b, unit.SI)
	return l
}

func value(p *cond.Program, b *board.Board) float64 {
	return p.Value(b.V, make([]float64, p.Slots))
}

// fill replaces each {name} by its number in a system of units.
func fill(text string, b *board.Board, sys unit.System) string {
	var out strings.Builder
	for {
		before, rest, found := strings.Cut(text, "{")
		out.WriteString(before)
		if !found {
			return out.String()
		}
		name, after, _ := strings.Cut(rest, "}")
		if cell, ok := b.Cell(name); ok {
			out.WriteString(judge.Number(math.Round(float64(sys.From(b.V[cell], b.Unit(cell))*100))/100, sys.Unit(b.Unit(cell))))
		}
		text = after
	}
}

// Limit is the lowest working pressure among the hoses of the line.
func Limit(a *attempt.Attempt) float64 {
	l := &a.Drill.Setup.Ground.Line
	least := l.Trunk.LimitPSI
	for i := range l.Branches {
		if p := l.Branches[i].Hose.LimitPSI; p > 0 && (least == 0 || p < least) {
			least = p
		}
	}
	return least
}
