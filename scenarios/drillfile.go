package scenarios

import (
	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/fireground"
)

// drillFile is drills/NAME.yaml as it is written. Expressions are compiled, and names looked up, when
// the variant is known: see build.go.
type drillFile struct {
	Name        reader.Text                 `file:"name" need:"yes"`
	Title       string                      `file:"title" need:"yes"`
	Objective   string                      `file:"objective" need:"yes"`
	Procedure   string                      `file:"procedure" need:"yes"` // its source
	Apparatus   reader.Text                 `file:"apparatus" need:"yes"`
	ParS        float64                     `file:"par_s" range:"10..7200" need:"yes"`
	GraceS      float64                     `file:"grace_s" range:"0..1200"`
	Scale       scaleFile                   `file:"scale" need:"yes"`
	OnUnsafe    reader.Text                 `file:"on_unsafe"` // go-on, stop or ask; go-on unless given
	Plan        planFile                    `file:"plan"`
	Ground      *reader.Node                `file:"ground" need:"yes"`
	Start       *reader.Node                `file:"start"`
	Hydrants    []hydrantFile               `file:"hydrants" size:"1..100"`
	Variants    []variantFile               `file:"variants" size:"1..20"`
	Planted     []plantedFile               `file:"planted" size:"0..100"`
	Values      []valueFile                 `file:"values" size:"0..200"`
	Calculation *reader.At[calculationFile] `file:"calculation"`
	Steps       []stepFile                  `file:"steps" size:"1..200" need:"yes"`
	Crew        []cueFile                   `file:"crew" size:"0..200"`
	Rules       reader.At[[]*reader.Node]   `file:"rules" size:"0..300"`
	Ends        reader.Text                 `file:"ends" need:"yes"`
	Gating      bool                        `file:"gating"`     // pressures below idle on the hydrant are the lesson
	LikeLines   bool                        `file:"like_lines"` // further like lines are asked for; true unless given

	node *reader.Node
}

type (
	hydrantFile = reader.At[fireground.HydrantDef]
	variantFile = reader.At[variant]
	plantedFile = reader.At[planted]
	valueFile   = reader.At[value]
	stepFile    = reader.At[step]
	cueFile     = reader.At[cue]
	deedFile    = reader.At[deed]
)

type scaleFile struct {
	Full        float64 `file:"full" range:"1..1000" need:"yes"`
	Minor       float64 `file:"minor" range:"0..1000" need:"yes"`
	Error       float64 `file:"error" range:"0..1000" need:"yes"`
	Unsafe      float64 `file:"unsafe" range:"0..1000" need:"yes"`
	Pass        float64 `file:"pass" range:"0..1000" need:"yes"`
	UnsafeFails bool    `file:"unsafe_fails"`
}

type planFile struct {
	Street    string `file:"street"`
	FireAt    string `file:"fire_at"`
	HydrantAt string `file:"hydrant_at"`
}

// variant changes the drill: what it gives replaces the drill's own, key by key.
type variant struct {
	Name     reader.Text            `file:"name" need:"yes"`
	Title    string                 `file:"title" need:"yes"`
	Ground   *reader.Node           `file:"ground"`
	Start    *reader.Node           `file:"start"`
	Hydrants []hydrantFile          `file:"hydrants" size:"1..100"`
	Values   map[string]reader.Text `file:"values"`
	Working  map[string]reader.Text `file:"working"` // of terms of the calculation

	WorkingSI map[string]reader.Text `file:"working_si"` // the same with the constants of the method in SI
}

type planted struct {
	Chance float64      `file:"chance" range:"0..1" need:"yes"`
	Set    *reader.Node `file:"set" need:"yes"`
}

type value struct {
	Name reader.Text `file:"name" need:"yes"`
	Unit string      `file:"unit"`
	Doc  string      `file:"doc"`
	Is   reader.Text `file:"is" need:"yes"`
}

type step struct {
	ID    reader.Text  `file:"id" need:"yes"`
	Phase string       `file:"phase" need:"yes"`
	Hint  string       `file:"hint" need:"yes"`
	Place reader.Text  `file:"place"`
	After reader.Words `file:"after"`
	Soon  bool         `file:"soon"`  // has a deadline
	State bool         `file:"state"` // what it asks for may stand so by the way
	Done  reader.Text  `file:"done" need:"yes"`
	Rules reader.Words `file:"rules"` // rules that speak of it

	OnlyWith reader.Text `file:"only_with"` // a part that not every apparatus has: without it the step falls away
}

type cue struct {
	ID     reader.Text `file:"id" need:"yes"`
	By     reader.Text `file:"by" need:"yes"`
	When   reader.Text `file:"when" need:"yes"`
	Until  reader.Text `file:"until"`
	Delay  reader.Text `file:"delay"`
	ExtraS float64     `file:"extra_s" range:"0..3600"`
	AgainS float64     `file:"again_s" range:"0.5..3600"`
	Once   bool        `file:"once"`
	Do     []deedFile  `file:"do" size:"1..20" need:"yes"`
}

type deed struct {
	Set   reader.Text `file:"set"`
	Say   reader.Text `file:"say"`
	Value reader.Text `file:"value"`
}

// drillFile reads a drill's file. Without faults it is complete as far as one file can tell.
func (l *loading) drillFile(name string, at *reader.Node) (*drillFile, error) {
	n, err := l.named("drill", "drills", name, at)
	if n == nil {
		return nil, err
	}
	f := &drillFile{node: n, LikeLines: true}
	l.take(n.Decode(f))
	l.itsName(f.Name, name)
	if f.Scale.Pass > f.Scale.Full {
		l.fail(n.Get("scale"), "pass: %v is above full %v, expected at most that", f.Scale.Pass, f.Scale.Full)
	}
	names := map[string]bool{}
	for i := range f.Variants {
		v := &f.Variants[i].V
		if names[v.Name.Value] && v.Name.Given() {
			l.at(v.Name, 0, "variant %q stands twice, expected different names", v.Name.Value)
		}
		names[v.Name.Value] = true
		if len(f.Hydrants) > 0 && len(v.Hydrants) > 0 {
			l.fail(v.Hydrants[0].Node, "hydrants: the drill has hydrants of its own, expected them either there or in every variant")
		}
	}
	return f, nil
}

// variantNames lists them.
func (f *drillFile) variantNames() []string {
	var list []string
	for i := range f.Variants {
		list = append(list, f.Variants[i].V.Name.Value)
	}
	return list
}

// hydrants are those of the drill, or else of the variant.
func (f *drillFile) hydrants(v *variant) []hydrantFile {
	if len(f.Hydrants) == 0 && v != nil {
		return v.Hydrants
	}
	return f.Hydrants
}
