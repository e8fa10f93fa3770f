package plant
import "steadyneedle/sim/state"
type Plant struct{o Out}
func New(s Setup) (*Plant, error) { return &Plant{}, nil }
func (p *Plant) NewIn() In { return In{} }
func (p *Plant) Out() *Out { return &p.o }
func (p *Plant) Step(in *In) {}
func (p *Plant) Walk(w *state.Walker) {}
