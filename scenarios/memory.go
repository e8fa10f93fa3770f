package scenarios

import (
	"sync"

	"steadyneedle/scenarios/reader"
)

// memory keeps what the files of a shelf were parsed into: one drill is read several times for one
// attempt, and many times for a proof. A file that has changed since is parsed again. It is safe for
// concurrent use, and so are the nodes, which nobody writes to.
type memory struct {
	mu    sync.Mutex
	files map[string]parsed // by the name that messages use
}

type parsed struct {
	sum    string // of the text
	node   *reader.Node
	faults reader.Faults
}

// parse is reader.Parse, for a text whose sum is known.
func (m *memory) parse(shown string, text []byte, sum string) (*reader.Node, reader.Faults) {
	m.mu.Lock()
	p, ok := m.files[shown]
	m.mu.Unlock()
	if ok && p.sum == sum {
		return p.node, p.faults
	}
	p.sum = sum
	p.node, p.faults = reader.Parse(shown, text)
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.files == nil {
		m.files = map[string]parsed{}
	}
	m.files[shown] = p
	return p.node, p.faults
}
