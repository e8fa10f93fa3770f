package scenarios

import (
	"fmt"
	"regexp"
	"strings"

	"steadyneedle/scenarios/expression"
	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

// Options are what may be chosen when a drill is begun.
type Options struct {
	Seed      uint64             // 0: 1
	Variant   string             // empty: drawn by the seed
	Apparatus string             // empty: the drill's own
	Start     map[string]float64 // controls that begin elsewhere, over the drill's own
	Lenient   bool               // rules that this program does not understand are left out, see Drill.Unjudged
}

// Drill makes a drill ready to run: names resolved, variant, hydrant and planted faults drawn by the
// seed, conditions compiled. An unknown name wraps ErrUnknown; a faulty file gives reader.Faults.
func (s *Shelf) Drill(name string, o Options) (*drill.Drill, error) {
	l := s.loading()
	d, err := l.drill(name, o)
	if err != nil {
		return nil, err
	}
	if err := l.faults.Err(); err != nil {
		return nil, err
	}
	return d, nil
}

func (l *loading) drill(name string, o Options) (*drill.Drill, error) {
	f, err := l.drillFile(name, nil)
	if f == nil || err != nil {
		return nil, err
	}
	if len(l.faults) > 0 {
		return nil, nil
	}
	if o.Seed == 0 {
		o.Seed = 1
	}
	v, err := f.chosen(o)
	if err != nil {
		return nil, err
	}
	def, err := l.rigOf(f, o.Apparatus)
	if err != nil {
		return nil, err
	}
	b := builder{loading: l, file: f, variant: v, rig: def}
	if list := f.hydrants(v); len(list) > 0 {
		b.hydrant = &list[draw(o.Seed, "hydrant", len(list))].V
	}
	sound := len(l.faults) == 0
	d := b.build(o.Seed, o.Lenient)
	if o.Apparatus != "" && sound && len(l.faults) > 0 {
		return nil, fmt.Errorf("drill %s does not go with apparatus %s: %w", name, o.Apparatus, l.faults[:1].Err())
	}
	if o.Apparatus != "" {
		d.Apparatus = o.Apparatus
	}
	for c, v := range o.Start {
		if _, known := b.scope.control[c]; !known {
			return nil, fmt.Errorf("start: unknown control %q", c)
		}
		d.Setup.Start[c] = v
	}
	return d, nil
}

// draw picks one of n by the seed. Each purpose has dice of its own.
func draw(seed uint64, purpose string, n int) int {
	var dice state.Dice
	dice.Seed(seed, purpose)
	return dice.Pick(n)
}

// chosen is the variant asked for, or the seed's; nil where the drill has none.
func (f *drillFile) chosen(o Options) (*variant, error) {
	names := f.variantNames()
	if o.Variant != "" {
		for i := range f.Variants {
			if names[i] == o.Variant {
				return &f.Variants[i].V, nil
			}
		}
		return nil, fmt.Errorf("variant %q of drill %s is %w, %s", o.Variant, f.Name.Value, ErrUnknown, reader.DidYouMean(o.Variant, names))
	}
	if len(names) == 0 {
		return nil, nil
	}
	return &f.Variants[draw(o.Seed, "variant", len(names))].V, nil
}

func (l *loading) rigOf(f *drillFile, other string) (rig.Def, error) {
	if other != "" {
		return l.apparatus(other, nil)
	}
	return l.apparatus(f.Apparatus.Value, f.Apparatus.Node())
}

// builder makes one variant of a drill.
type builder struct {
	*loading
	file    *drillFile
	variant *variant // nil: the drill has none
	hydrant *fireground.HydrantDef
	rig     rig.Def
	scope   *scope
	dropped map[string]bool // rules that do not apply to the apparatus
}

func (b *builder) build(seed uint64, lenient bool) *drill.Drill {
	f := b.file
	d := &drill.Drill{
		Name: f.Name.Value, Title: f.Title, Objective: f.Objective, Procedure: f.Procedure, Apparatus: f.Apparatus.Value,
		Scale: drill.Scale{Full: f.Scale.Full, Minor: f.Scale.Minor, Error: f.Scale.Error, Unsafe: f.Scale.Unsafe, Pass: f.Scale.Pass, UnsafeFails: f.Scale.UnsafeFails},
		ParS:  f.ParS, GraceS: f.GraceS, Plan: drill.Plan{Street: f.Plan.Street, FireAt: f.Plan.FireAt, HydrantAt: f.Plan.HydrantAt},
	}
	if b.variant != nil {
		d.Variant = b.variant.Name.Value
	}
	d.OnUnsafe = b.onUnsafe()
	d.Setup = world.Setup{Rig: b.rig, Ground: b.ground(), Seed: seed, Start: map[string]float64{}}
	b.scope = newScope(&d.Setup)
	b.start(seed, d.Setup.Start)
	d.Values = b.values()
	d.Steps = b.steps()
	d.Cues = b.cues()
	d.Rules, d.Unjudged = b.rules(lenient)
	b.stepRules(d)
	d.Calculation = b.calculation()
	d.Ends = b.compile(f.Ends, expression.Condition, b.scope.truth)
	return d
}

// onUnsafe is what an unsafe act does unless whoever begins the attempt says otherwise.
func (b *builder) onUnsafe() drill.OnUnsafe {
	t := b.file.OnUnsafe
	o, known := drill.OnUnsafeNamed(t.Value)
	if t.Given() && !known {
		b.at(t, 0, "on_unsafe: found %q, expected %s", t.Value, strings.Join(drill.OnUnsafeNames(), ", "))
	}
	return o
}

// start is where controls begin: the drill's settings, the variant's, and what chance has planted.
func (b *builder) start(seed uint64, into map[string]float64) {
	b.settings(b.file.Start, b.scope, into)
	if b.variant != nil {
		b.settings(b.variant.Start, b.scope, into)
	}
	var dice state.Dice
	dice.Seed(seed, "planted")
	for i := range b.file.Planted {
		p := &b.file.Planted[i].V
		here := map[string]float64{}
		b.settings(p.Set, b.scope, here)
		if dice.Float64() < p.Chance {
			for c, v := range here {
				into[c] = v
			}
		}
	}
}

var identifier = regexp.MustCompile(`^[a-z][a-z0-9_]*$`)

// values compiles the drill's named numbers; each may use those before it.
func (b *builder) values() []drill.Value {
	var list []drill.Value
	given := map[string]bool{}
	for i := range b.file.Values {
		v := &b.file.Values[i].V
		name := v.Name.Value
		given[name] = true
		_, taken := b.scope.signal[name]
		switch {
		case !v.Name.Given():
			continue
		case !identifier.MatchString(name):
			b.at(v.Name, 0, "value name %q, expected small letters, digits and _", name)
			continue
		case taken || name == valueName || expression.Reserved(name):
			b.at(v.Name, 0, "the name %q is taken, expected a new one", name)
			continue
		}
		is := v.Is
		if b.variant != nil {
			if other, ok := b.variant.Values[name]; ok {
				is = other
			}
		}
		out := drill.Value{Name: name, Unit: v.Unit, Doc: v.Doc, Is: b.compile(is, expression.Number, b.scope.truth)}
		if out.Is == nil {
			out.Is = expression.Constant("0", 0) // faulted above; later names still resolve
		}
		b.scope.add(out)
		list = append(list, out)
	}
	if b.variant != nil {
		for name, t := range b.variant.Values {
			if !given[name] {
				b.at(t, 0, "the drill has no value %q, %s", name, reader.DidYouMean(name, b.valueNames()))
			}
		}
	}
	return list
}

func (b *builder) valueNames() []string {
	var list []string
	for i := range b.file.Values {
		list = append(list, b.file.Values[i].V.Name.Value)
	}
	return list
}

// Variants lists the names of a drill's variants, in the order of its file; none where it has none.
func (s *Shelf) Variants(name string) ([]string, error) {
	l := s.loading()
	f, err := l.drillFile(name, nil)
	if err == nil {
		err = l.faults.Err()
	}
	if err != nil {
		return nil, err
	}
	return f.variantNames(), nil
}
