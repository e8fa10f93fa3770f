package report

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"

	"steadyneedle/sim/world"
)

// Sheet is the debrief of one attempt, ready to be shown, printed or kept. As JSON it is what is kept of
// an attempt beside its recording; the series are left out there, for they follow from the recording.
type Sheet struct {
	Format    int         `json:"sheet"` // SheetFormat
	Begun     string      `json:"begun"` // RFC 3339; empty where nobody told
	Drill     string      `json:"drill"`
	Variant   string      `json:"variant"`
	Apparatus string      `json:"apparatus"`
	Operator  string      `json:"operator,omitempty"` // a script's name, or empty for a person
	Mode      string      `json:"mode,omitempty"`
	TakenOver bool        `json:"taken_over,omitempty"` // it went on from a moment of another attempt
	Seed      uint64      `json:"seed"`
	Physics   int         `json:"physics"`
	Build     string      `json:"build"`
	Hash      string      `json:"state_hash"`
	Title     string      `json:"title"`
	Under     string      `json:"under"`
	Procedure string      `json:"procedure"`
	Passed    bool        `json:"passed"`
	Early     bool        `json:"ended_early"`     // ended before the drill was over: no verdict
	Ended     string      `json:"ended,omitempty"` // how it ended where it has no verdict: "Ended early", "Stopped for safety" …
	Score     float64     `json:"score"`
	Full      float64     `json:"full"`
	Pass      float64     `json:"pass"`
	ClockS    float64     `json:"clock_s"` // the drill's clock
	ParS      float64     `json:"par_s"`
	Length    world.Tick  `json:"ticks"`
	Findings  []Finding   `json:"findings"`
	Steps     []Step      `json:"steps"`
	Help      string      `json:"help,omitempty"` // how much the prompter was to tell
	Hints     []Hint      `json:"hints,omitempty"`
	Marks     []Remark    `json:"marks,omitempty"`
	OnUnsafe  string      `json:"on_unsafe,omitempty"` // what an unsafe act did in this attempt
	Decisions []Decision  `json:"decisions,omitempty"` // what became of the attempt at its unsafe acts, where that was more
	Ruling    *Ruling     `json:"ruling,omitempty"`    // the evaluator's; nil: none
	Sums      *Sums       `json:"calculation,omitempty"`
	Series    []Series    `json:"-"`
	Band      *Band       `json:"-"`
	Facts     [][2]string `json:"-"` // seed, hash, apparatus …
	Own       *Own        `json:"-"` // kept in a file of its own
	Caution   string      `json:"caution"`
}

// SheetFormat is the number of the JSON's format.
const SheetFormat = 1

// Finding is one thing that was wrong.
type Finding struct {
	Rule     string      `json:"rule"`
	At       world.Tick  `json:"tick"`
	Severity string      `json:"severity"` // unsafe, error, minor
	Phase    string      `json:"phase"`
	Place    string      `json:"place"`
	From     world.Place `json:"from"`
	Title    string      `json:"title"`
	Expected string      `json:"expected,omitempty"`
	Measured string      `json:"measured,omitempty"`
	Why      string      `json:"why"`
	Follows  []string    `json:"came_of_it,omitempty"` // what was found as its consequence
}

// Step is one step of the drill and what became of it, in the drill's order.
type Step struct {
	ID     string     `json:"id"`
	Phase  string     `json:"phase"`
	Text   string     `json:"text"`
	Done   bool       `json:"done"`
	At     world.Tick `json:"tick"`
	Rank   int        `json:"rank,omitempty"`        // in the order of doing, from 1
	Early  bool       `json:"too_soon,omitempty"`    // before a step that it waits for
	Late   bool       `json:"passed_over,omitempty"` // after one that waits for it
	Missed bool       `json:"missed,omitempty"`
	Hinted bool       `json:"hinted,omitempty"`
}

// Hint is one thing that the prompter said.
type Hint struct {
	At    world.Tick `json:"tick"`
	Cause string     `json:"cause"` // told, hesitated, asked, unsafe, comment
	About string     `json:"about"` // a step, or a rule
	Text  string     `json:"text"`
}

// Remark is an evaluator's, at a moment.
type Remark struct {
	At   world.Tick `json:"tick"`
	Text string     `json:"text"`
}

// Decision is what became of the attempt at an unsafe act.
type Decision struct {
	At    world.Tick `json:"tick"`
	Rule  string     `json:"rule"`
	Title string     `json:"title"` // of the act
	Was   string     `json:"text"`
}

// Text says the act and what became of the attempt at it. (In sheets kept by earlier builds both stand
// in one text.)
func (d *Decision) Text() string {
	if d.Title == "" {
		return d.Was
	}
	return d.Title + ": " + d.Was
}

// Series is one plotted line: one value a second from the drill's beginning.
type Series struct {
	Name, Unit string
	V          []float64
}

// Band is where the line pressure should have been, and from when to when it applied.
type Band struct {
	Lo, Hi   float64
	From, To world.Tick
}

// Own is how the candidates marked themselves before they saw the sheet.
type Own struct {
	Phases map[string]string `json:"phases"` // by name of the phase: a grade of Grades
	Said   bool              `json:"said"`   // whether they said if they have passed
	Pass   bool              `json:"pass"`
}

// Grades are the marks of a phase, from best to worst; each is the gravest thing found in it.
var Grades = []string{"clean", "minor", "error", "unsafe"}

// Phases lists the phases in the drill's order.
func (s *Sheet) Phases() []string {
	var list []string
	for i := range s.Steps {
		if p := s.Steps[i].Phase; len(list) == 0 || list[len(list)-1] != p {
			list = append(list, p)
		}
	}
	return list
}

// Grade is what the judge found in a phase: its gravest finding.
func (s *Sheet) Grade(phase string) string {
	worst := 0
	for i := range s.Findings {
		if s.Findings[i].Phase != phase {
			continue
		}
		for g, name := range Grades {
			if name == s.Findings[i].Severity {
				worst = max(worst, g)
			}
		}
	}
	return Grades[worst]
}

// Main are the series that every timeline shows: pressures and speed.
func (s *Sheet) Main() []Series {
	var list []Series
	for _, x := range s.Series {
		if x.Unit == "psi" || x.Unit == "kPa" || x.Unit == "rpm" {
			list = append(list, x)
		}
	}
	return list
}

// Missed and Hinted list steps by ID, for what is known of earlier attempts.
func (s *Sheet) Missed() []string { return s.those(func(p *Step) bool { return p.Missed }) }

// Hinted lists the steps that were told.
func (s *Sheet) Hinted() []string { return s.those(func(p *Step) bool { return p.Hinted }) }

func (s *Sheet) those(is func(*Step) bool) []string {
	var list []string
	for i := range s.Steps {
		if is(&s.Steps[i]) {
			list = append(list, s.Steps[i].ID)
		}
	}
	return list
}

// Caution stands on the first screen, before every rated attempt, and on every sheet.
const Caution = "Training aid only. Your department's procedures, the apparatus maker's manual, local codes and a qualified instructor come first. A score certifies nothing, and the numbers are those of an invented apparatus."

// Parse reads a sheet's JSON.
func Parse(text []byte) (*Sheet, error) {
	var s Sheet
	if err := json.Unmarshal(text, &s); err != nil {
		return nil, notJSON(text, err)
	}
	if s.Format != SheetFormat {
		return nil, fmt.Errorf("a sheet of format %d; this program reads %d", s.Format, SheetFormat)
	}
	return &s, nil
}

// notJSON says in which line, and in words that need no programmer, why a text is not a sheet.
func notJSON(text []byte, err error) error {
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	at, what := int64(len(text)), "the text breaks off"
	switch {
	case errors.As(err, &kind) && kind.Field == "":
		at, what = kind.Offset, fmt.Sprintf("found %s, expected names and values in braces", kind.Value)
	case errors.As(err, &kind):
		at, what = kind.Offset, fmt.Sprintf("%s: found %s, expected another kind of value", kind.Field, kind.Value)
	case errors.As(err, &syntax) && syntax.Offset < at:
		at, what = syntax.Offset, "expected JSON"
	}
	return fmt.Errorf("line %d: not a sheet: %s", 1+bytes.Count(text[:min(at, int64(len(text)))], []byte("\n")), what)
}

// Verdict is the sheet's first word.
func (s *Sheet) Verdict() string {
	switch {
	case s.Early:
		return s.Ended
	case s.Passed:
		return "Passed"
	}
	return "Not passed"
}
