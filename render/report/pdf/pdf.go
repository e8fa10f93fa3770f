package pdf

import (
	"fmt"
	"io"
	"io/fs"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"steadyneedle/assets"
	"steadyneedle/render/report"
	"steadyneedle/sim/unit"
)

// Measures of a Letter page, mm.
const (
	left  = 18.0
	width = 215.9 - 2*left
	line  = 5.0
	label = 42.0 // of a pair
)

// page is a sheet being written.
type page struct {
	*fpdf.Fpdf
	s *report.Sheet
}

// Write writes the sheet, which must have its series.
func Write(w io.Writer, s *report.Sheet) error {
	p := page{fpdf.New("P", "mm", "Letter", ""), s}
	p.SetCatalogSort(true)
	for _, face := range [][2]string{{"", "fonts/B612-Regular.ttf"}, {"B", "fonts/B612-Bold.ttf"}} {
		text, err := fs.ReadFile(assets.FS, face[1])
		if err != nil {
			return err
		}
		p.AddUTF8FontFromBytes("B612", face[0], text)
	}
	p.SetTitle(s.Title+": sheet", true)
	p.SetCreator("Steady Needle", true)
	if begun, err := time.Parse(time.RFC3339, s.Begun); err == nil { // the same sheet is the same file
		p.SetCreationDate(begun)
		p.SetModificationDate(begun)
	}
	p.SetMargins(left, 16, left)
	p.SetAutoPageBreak(true, 24)
	p.SetFooterFunc(p.foot)
	p.AddPage()
	p.head()
	p.plot()
	p.findings()
	p.missed()
	p.sums()
	p.own()
	p.facts()
	p.sign()
	return p.Output(w)
}

// foot puts the caution on every page.
func (p page) foot() {
	p.SetY(-20)
	p.style("", 7.5, 90)
	p.MultiCell(width, 3.4, p.s.Caution, "", "L", false)
	p.SetY(-10)
	p.CellFormat(width, 4, fmt.Sprint(p.PageNo()), "", 0, "R", false, 0, "")
}

// style chooses the type: bold or not, its size in points, and how light it is.
func (p page) style(weight string, size float64, gray int) {
	p.SetFont("B612", weight, size)
	p.SetTextColor(gray, gray, gray)
}

func (p page) text(weight string, size float64, gray int, text string) {
	p.style(weight, size, gray)
	p.MultiCell(width, size*0.46, text, "", "L", false)
}

func (p page) heading(text string) {
	p.Ln(3)
	if p.GetY() > 235 { // not alone at the foot of a page
		p.AddPage()
	}
	p.text("B", 12, 20, text)
	p.Ln(1)
}

func (p page) head() {
	s := p.s
	p.text("B", 18, 20, s.Title)
	p.text("", 9.5, 70, s.Under)
	p.Ln(2)
	p.text("B", 13, 20, fmt.Sprintf("%s: %.0f of %.0f points (%.0f to pass), clock %s", s.Verdict(), s.Score, s.Full, s.Pass, unit.Clock(s.ClockS)))
	if s.Ruling != nil {
		p.text("B", 11, 20, s.Ruling.Words())
	}
}

func (p page) findings() {
	for _, phase := range p.s.Phases() {
		p.heading(phase + ": " + p.s.Grade(phase))
		for i := range p.s.Findings {
			if p.s.Findings[i].Phase == phase {
				p.finding(&p.s.Findings[i])
			}
		}
	}
}

func (p page) finding(f *report.Finding) {
	p.text("B", 10, 20, f.Title)
	p.text("", 8.5, 80, fmt.Sprintf("%s, %s from the start, %s", f.Severity, unit.Clock(f.At.Seconds()), f.Place))
	for _, l := range [][2]string{{"Expected", f.Expected}, {"Found", f.Measured}, {"Why it counts", f.Why}, {"Came of it", strings.Join(f.Follows, "; ")}, {"Waived", p.s.WaivedFor(f)}} {
		if l[1] != "" {
			p.pair(l[0], l[1])
		}
	}
	p.Ln(2)
}

// pair writes a word and what belongs to it.
func (p page) pair(word, text string) {
	p.style("", 9, 80)
	p.CellFormat(label, line, word, "", 0, "L", false, 0, "")
	p.style("", 9, 20)
	p.MultiCell(width-label, line, text, "", "L", false)
}

func (p page) missed() {
	first := true
	for _, s := range p.s.Steps {
		if word := s.Became(); word != "" && word != "told" {
			if first {
				p.heading("Steps")
				first = false
			}
			p.pair(word, s.Text)
		}
	}
	if n := len(p.s.Hints); n > 0 {
		p.heading("Help")
		p.text("", 9, 20, fmt.Sprintf("Help in this attempt: %s. Something was said %d times.", p.s.Help, n))
	}
}

func (p page) sums() {
	s := p.s.Sums
	if s == nil {
		return
	}
	p.heading("Calculation")
	row := func(weight string, cells ...string) {
		p.style(weight, 8.5, 20)
		for i, w := range []float64{52, 26, 24, width - 102} {
			p.CellFormat(w, line, cells[i], "B", 0, "L", false, 0, "")
		}
		p.Ln(line)
	}
	p.SetDrawColor(210, 214, 216)
	row("B", "Term", "Yours", "Right", "Working")
	for _, l := range append(append([]report.Sum(nil), s.Lines...), s.Total) {
		own := "not written"
		if l.Given {
			own = l.Number(l.Answer)
		}
		row("", l.Title, own, l.Number(l.Right), l.Working)
	}
	p.Ln(1)
	for i := range s.Proofs {
		p.text("", 9, 20, s.Proofs[i].Words(s.Unit))
	}
	p.text("", 8.5, 90, report.SumsCaution)
}

func (p page) own() {
	if p.s.Own == nil {
		return
	}
	p.heading("Own marks")
	for _, phase := range p.s.Phases() {
		if mark := p.s.Own.Phases[phase]; mark != "" {
			p.pair(phase, fmt.Sprintf("candidate: %s, judge: %s", mark, p.s.Grade(phase)))
		}
	}
}

func (p page) facts() {
	p.heading("Attempt")
	for _, f := range p.s.Facts {
		p.pair(f[0], f[1])
	}
}

func (p page) sign() {
	if p.GetY() > 234 {
		p.AddPage()
	}
	p.Ln(12)
	y := p.GetY()
	p.SetDrawColor(20, 20, 20)
	half := (width - 16) / 2
	evaluator := "Evaluator"
	if r := p.s.Ruling; r != nil && r.SignedBy != "" {
		evaluator += ": " + r.SignedBy
	}
	for i, who := range []string{"Candidate", evaluator} {
		x := left + float64(i)*(half+16)
		p.Line(x, y, x+half, y)
		p.SetXY(x, y+1)
		p.style("", 9, 20)
		p.CellFormat(half, line, who, "", 0, "L", false, 0, "")
	}
}
