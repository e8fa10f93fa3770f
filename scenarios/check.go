package scenarios

import (
	"errors"
	"path"
	"strings"

	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/drill"
)

// Kind is what a file describes.
type Kind string

const (
	DrillFile     Kind = "drill"
	ApparatusFile Kind = "apparatus"
	OperatorFile  Kind = "operator"
	RulesFile     Kind = "rules"
	DemoFile      Kind = "demonstration"
)

// Entry says what a file holds and where on the shelf it belongs.
type Entry struct {
	Kind  Kind
	Name  string
	Drill string // of an operator
}

func (e Entry) path() string {
	switch e.Kind {
	case DrillFile:
		return "drills/" + e.Name + ".yaml"
	case ApparatusFile:
		return "apparatus/" + e.Name + ".yaml"
	case OperatorFile:
		return path.Join("operators", e.Drill, e.Name+".yaml")
	case DemoFile:
		return "demonstrations/" + e.Name + ".yaml"
	}
	return "rules/" + e.Name + ".yaml"
}

// WithFile lays one file, wherever it was read from, on the shelf in the place where it belongs.
// shown is what messages are to call it.
func (s *Shelf) WithFile(shown string, text []byte) (*Shelf, Entry, error) {
	n, faults := reader.Parse(shown, text)
	if n == nil {
		return nil, Entry{}, faults.Err()
	}
	e, ok := entryOf(n, shown)
	if !ok {
		return nil, e, reader.Faults{n.Fault("cannot tell what this file describes, expected a drill (objective, ground, steps), an apparatus (engine, pump …), an operator (drill with steps or edits), a demonstration (teaches, caution, steps) or shared rules (rules)")}
	}
	return s.Over(oneFile{e.path(), text}, func(string) string { return shown }), e, nil
}

// entryOf tells a file's kind by its keys. Where it has no usable name, the file's own name is taken.
func entryOf(n *reader.Node, shown string) (Entry, bool) {
	word := func(key, or string) string {
		if v := n.Get(key); v != nil && v.Kind == reader.Scalar && v.Text != "" && !strings.ContainsAny(v.Text, "/\\") && v.Text[0] != '.' {
			return v.Text
		}
		return or
	}
	base := strings.TrimSuffix(path.Base(strings.ReplaceAll(shown, "\\", "/")), ".yaml")
	has := func(keys ...string) bool {
		for _, k := range keys {
			if n.Get(k) != nil {
				return true
			}
		}
		return false
	}
	e := Entry{Name: word("name", base)}
	switch {
	case has("teaches", "caution"):
		e.Kind = DemoFile
	case has("objective", "ground", "crew", "par_s"):
		e.Kind = DrillFile
	case has("drill", "based_on", "edits"):
		e.Kind, e.Drill = OperatorFile, word("drill", "unknown")
	case has("rules"):
		e.Kind, e.Name = RulesFile, base
	case has("engine", "pump", "relief", "tank", "discharges", "instruments", "intake", "drive"):
		e.Kind = ApparatusFile
	default:
		return e, false
	}
	return e, true
}

// Check says everything that is wrong with a file, as reader.Faults: a drill in all its variants with
// all its hydrants, an operator in its drill, an apparatus by itself, and shared rules by their form
// (their conditions are compiled where a drill uses them).
func (s *Shelf) Check(shown string, text []byte) (Entry, error) {
	with, e, err := s.WithFile(shown, text)
	if err != nil {
		return e, err
	}
	l := with.loading()
	switch e.Kind {
	case DrillFile:
		err = l.checkDrill(e.Name)
	case ApparatusFile:
		_, err = l.apparatus(e.Name, nil)
	case OperatorFile:
		err = l.checkOperator(e)
	case DemoFile:
		err = l.checkDemonstration(e.Name)
	default:
		err = l.checkRules(e.path())
	}
	if err != nil {
		return e, err
	}
	return e, l.faults.Err()
}

// checkDrill builds every variant, and looks at every hydrant of it.
func (l *loading) checkDrill(name string) error {
	f, err := l.drillFile(name, nil)
	if f == nil || err != nil {
		return err
	}
	if len(l.faults) > 0 && !f.whole() {
		return nil // too much is missing to say more
	}
	def, err := l.rigOf(f, "")
	if err != nil {
		return err
	}
	variants := []*variant{nil}
	if len(f.Variants) > 0 {
		variants = variants[:0]
		for i := range f.Variants {
			variants = append(variants, &f.Variants[i].V)
		}
	}
	for _, v := range variants {
		b := builder{loading: l, file: f, variant: v, rig: def}
		hydrants := f.hydrants(v)
		if len(hydrants) > 0 {
			b.hydrant = &hydrants[0].V
		}
		d := b.build(1, false)
		if len(l.faults) == 0 {
			b.plausible(d, hydrants)
		}
	}
	return nil
}

// whole reports whether a drill's file has what building it stands on.
func (f *drillFile) whole() bool {
	return f.Ground != nil && f.Ground.Kind == reader.Mapping && f.Apparatus.Given() && len(f.Steps) > 0
}

// checkOperator writes the script under the seed and variant that the file asks for, and reports the
// operator's own faults even where the drill has some.
func (l *loading) checkOperator(e Entry) error {
	f, err := l.operatorFile(e.Drill, e.Name, nil)
	if f == nil || err != nil {
		return err
	}
	own := l.faults
	if _, _, err := l.shelf.read("drills/" + e.Drill + ".yaml"); errors.Is(err, ErrUnknown) {
		if f.Drill.Given() {
			l.at(f.Drill, 0, "drill %q is not on the shelf, %s", e.Drill, reader.DidYouMean(e.Drill, l.shelf.names("drills")))
		}
		return nil
	}
	l.faults = nil
	d, err := l.drillFor(e.Drill, f)
	if err != nil || d == nil || len(l.faults) > 0 {
		l.faults = append(own, l.faults...)
		return err
	}
	_, err = l.script(d, e.Name)
	l.faults = append(own, l.faults...)
	return err
}

func (l *loading) drillFor(name string, f *operatorFile) (*drill.Drill, error) {
	o := Options{Seed: f.Seed, Variant: f.Variant.Value}
	if f.Variant.Given() {
		df, err := l.drillFile(name, nil)
		if df == nil || err != nil {
			return nil, err
		}
		if _, err := df.chosen(o); err != nil {
			l.at(f.Variant, 0, "%v", err)
			return nil, nil
		}
	}
	return l.drill(name, o)
}

// checkRules checks the form of shared rules.
func (l *loading) checkRules(at string) error {
	n, err := l.file(at)
	if n == nil {
		return err
	}
	l.shared = &sharedRules{rule: map[string]*reader.Node{}, file: map[string]string{}}
	l.addShared(l.shared, n, at)
	for _, id := range l.shared.ids {
		rule := l.shared.rule[id]
		var f ruleFile
		l.take(rule.Decode(&f))
		l.kindOf(rule, f.Kind)
		if _, fits := severities[f.Severity.Value]; !fits && f.Severity.Given() {
			l.at(f.Severity, 0, "severity: found %q, expected minor, error or unsafe", f.Severity.Value)
		}
	}
	return nil
}
