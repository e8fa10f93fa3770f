package main

import (
	"errors"
	"io"
	"time"

	"steadyneedle/cmd/internal/recorded"
	"steadyneedle/cmd/internal/store"
	"steadyneedle/render/play"
	"steadyneedle/render/view"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// keeper keeps the attempt under way.
type keeper struct {
	store   *store.Store   // nil: nowhere
	journal *store.Journal // of the attempt under way; nil: it is not kept
	copy    io.Closer      // the recording that was asked for; nil: none
	now     *play.Play
	ids     map[*play.Play]string // of attempts that are kept
}

// modes as recordings and sheets name them.
const (
	rehearsal = "rehearsal"
	rated     = "rated"
)

// begin readies the recording of an attempt that is about to begin: its journal, and the file that was
// asked for.
func (f *front) begin(d *drill.Drill, h tape.Header, mode string) (attempt.Options, error) {
	o := attempt.Options{Live: true, Keys: true}
	if f.o.picture != "" {
		return o, nil
	}
	if err := f.settle(); err != nil {
		return o, err
	}
	now := time.Now()
	h.Build, h.Mode, h.Begun = recorded.Build(), mode, now.Format(time.RFC3339)
	o.Header = h
	var into []io.Writer
	if f.store != nil {
		j, err := f.store.Begin(d.Name, now)
		if err != nil {
			return o, err
		}
		f.journal = j
		into = append(into, j)
	}
	if f.o.record != "" {
		c, err := createCopy(f.o.record)
		if err != nil {
			return o, err
		}
		f.copy = c
		into = append(into, c)
	}
	if len(into) > 0 {
		o.Record = io.MultiWriter(into...)
	}
	return o, nil
}

// take makes an attempt the one under way.
func (f *front) take(a *attempt.Attempt, words, mode string) view.Attempt {
	f.now = play.New(a, f.title(a.Drill.Apparatus)+" · "+words, mode == rated).In(f.units)
	return f.now
}

// settle ends what is still under way, and keeps it.
func (f *front) settle() error {
	var bad error
	if f.now != nil {
		f.now.End()
		bad = f.finish(f.now)
	}
	if f.copy != nil {
		bad = errors.Join(bad, f.copy.Close())
		f.copy = nil
	}
	return bad
}

// finish keeps an attempt that is over, once.
func (f *front) finish(p *play.Play) error {
	if f.journal == nil || p != f.now {
		return nil
	}
	j := f.journal
	f.journal = nil
	f.ids[p] = j.ID
	return f.store.Finish(j, p.Kept(), p.Attempt().WriteFrames)
}

// Finish keeps an attempt that is over.
func (f *front) Finish(at view.Attempt) error {
	if p, ok := at.(*play.Play); ok {
		return f.finish(p)
	}
	return nil
}

// branch begins an attempt that goes on from a moment of another. One that is still under way is given
// up for it: the new one contains what came before.
func (f *front) branch(a *attempt.Attempt, at world.Tick) (view.Attempt, error) {
	gaveUp := ""
	if f.now != nil && f.now.Attempt() == a && f.journal != nil {
		gaveUp = f.journal.ID
		bad := f.journal.Close()
		f.journal = nil
		if bad != nil {
			return nil, bad
		}
	}
	h := a.Header()
	if h.From = h.Begun; h.From == "" {
		h.From = "a recording"
	}
	o, err := f.begin(a.Drill, h, rehearsal)
	if err != nil {
		return nil, err
	}
	o.Help = f.prompter(a.Drill)
	b, err := a.Branch(at, o)
	if err != nil {
		return nil, err
	}
	if gaveUp != "" {
		if err := f.store.Remove(gaveUp); err != nil {
			return nil, err
		}
	}
	return f.take(b, "taken over", rehearsal), nil
}
