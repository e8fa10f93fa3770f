package store

import (
	"sync"
	"time"
)

// syncEvery is how long an action may wait before it is on disk.
const syncEvery = 250 * time.Millisecond

// Journal is the recording of the attempt under way. Write never waits for the disk; what was written
// is durable a quarter of a second later.
type Journal struct {
	ID   string
	file growing
	mu   sync.Mutex
	buf  []byte
	err  error
	stop chan struct{}
	done chan struct{}
}

func newJournal(id string, g growing) *Journal {
	j := &Journal{ID: id, file: g, stop: make(chan struct{}), done: make(chan struct{})}
	go j.work()
	return j
}

// Write takes a piece of the recording. It gives the first error of the disk, which may be of an
// earlier piece.
func (j *Journal) Write(p []byte) (int, error) {
	j.mu.Lock()
	defer j.mu.Unlock()
	if j.err != nil {
		return 0, j.err
	}
	j.buf = append(j.buf, p...)
	return len(p), nil
}

// Close writes what is left and closes the file. It may be called again.
func (j *Journal) Close() error {
	select {
	case <-j.stop:
	default:
		close(j.stop)
	}
	<-j.done
	j.mu.Lock()
	defer j.mu.Unlock()
	return j.err
}

func (j *Journal) work() {
	defer close(j.done)
	t := time.NewTicker(syncEvery)
	defer t.Stop()
	for {
		select {
		case <-t.C:
			j.sync()
		case <-j.stop:
			j.sync()
			j.note(j.file.close())
			return
		}
	}
}

// sync makes what was written durable.
func (j *Journal) sync() {
	j.mu.Lock()
	piece := j.buf
	j.buf = nil
	bad := j.err != nil
	j.mu.Unlock()
	switch {
	case bad:
	case len(piece) == 0:
		j.file.beat()
	default:
		j.note(j.file.add(piece))
	}
}

func (j *Journal) note(err error) {
	j.mu.Lock()
	defer j.mu.Unlock()
	if j.err == nil {
		j.err = err
	}
}
