package fidelity

// Mark says how well a value is founded.
type Mark uint8

const (
	Read     Mark = iota // read in the source named
	Memory               // from memory, not verified
	Computed             // computed from the formula or method stated
	Practice             // common practice of the trade, no published source
	Assumed              // an assumption of this model
)

// String says it in words.
func (m Mark) String() string {
	return [...]string{"read in the source", "from memory", "computed", "common practice, no published source", "assumption"}[m]
}

// Source is where an expected value comes from.
type Source struct {
	Mark Mark
	Text string
}

// String is the source with its mark, for a record.
func (s Source) String() string {
	switch s.Mark {
	case Read:
		return s.Text
	case Computed:
		return "computed: " + s.Text
	case Assumed:
		return "assumption: " + s.Text
	}
	return s.Text + " (" + s.Mark.String() + ")"
}
