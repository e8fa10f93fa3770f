package attempt

import (
	"cmp"
	"errors"
	"fmt"
	"io"

	"steadyneedle/sim/drill"
	"steadyneedle/sim/scene"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// Replay works a drill from a recording, and proves it: every whole second's hash, what the people of
// the scene did, and the end must be as recorded. The drill must be the one that the header names, with
// its seed. On an error the attempt is returned as far as it came, closed; nil if it never began. What
// was recorded under another number of the physics is worked again all the same, to be looked at; the
// error then wraps tape.ErrVersion and names the first second that differs.
func Replay(t *tape.Reader, d *drill.Drill, o Options) (*Attempt, error) {
	r, err := NewReplay(t, d, o)
	if err != nil {
		return nil, err
	}
	for !r.Work(1 << 30) {
	}
	return r.Attempt(), r.Close()
}

// Replaying is a replay under way, for those who must not be kept waiting.
type Replaying struct {
	replayer
	from *tape.Reader
	done bool
	bad  error
}

// NewReplay readies a replay; see Replay.
func NewReplay(t *tape.Reader, d *drill.Drill, o Options) (*Replaying, error) {
	foreign := matches(&t.Header, d)
	if foreign != nil && !errors.Is(foreign, tape.ErrVersion) {
		return nil, foreign
	}
	o.Header = t.Header
	a, err := New(d, o)
	if err != nil {
		return nil, err
	}
	return &Replaying{replayer: replayer{Attempt: a, names: a.names(), foreign: foreign}, from: t}, nil
}

// matches reports whether a recording can be worked with a drill.
func matches(h *tape.Header, d *drill.Drill) error {
	switch {
	case h.Physics != scene.Physics:
		return &tape.Error{Line: 1, Problem: tape.ErrVersion,
			Detail: fmt.Sprintf("physics %d; this program has %d and cannot prove it", h.Physics, scene.Physics)}
	case h.Drill != d.Name || h.Seed != d.Setup.Seed || h.Variant != d.Variant || h.Apparatus != d.Apparatus:
		return &tape.Error{Line: 1, Problem: tape.ErrFile,
			Detail: fmt.Sprintf("recorded drill %s %s, apparatus %s, seed %d; given %s %s, %s, %d",
				h.Drill, h.Variant, h.Apparatus, h.Seed, d.Name, d.Variant, d.Apparatus, d.Setup.Seed)}
	}
	return nil
}

// names finds this world's controls by name.
func (a *Attempt) names() map[string]world.ControlID {
	names := map[string]world.ControlID{}
	for i, c := range a.Scene.World.Controls() {
		names[c.Name] = world.ControlID(i)
	}
	return names
}

// Work replays about so many ticks, and reports whether that was all.
func (r *Replaying) Work(ticks int) (done bool) {
	for until := r.Now() + world.Tick(ticks); !r.done && r.Now() < until; {
		more, err := r.next(r.from)
		r.done, r.bad = !more || err != nil, err
	}
	return r.done
}

// Attempt is the attempt as far as it came.
func (r *Replaying) Attempt() *Attempt { return r.replayer.Attempt }

// Close ends the attempt where it stands, and says what was wrong.
func (r *Replaying) Close() error {
	return errors.Join(r.foreign, r.first, r.bad, r.Attempt().Close())
}

// errEnded ends the replay of a foreign recording whose attempt is over sooner than it was.
var errEnded = errors.New("worked again the attempt ends here")

// replayer feeds a recording's lines to an attempt.
type replayer struct {
	*Attempt
	names map[string]world.ControlID
	want  []tape.Line // what people did, as recorded, in the coming tick
	line  int
	ended bool // the end line has come

	foreign error // recorded with another physics: what differs is noted once, and does not end the replay
	first   error // the first difference of a foreign recording
}

// next works up to the next line and takes it; more is false after the last.
func (r *replayer) next(t *tape.Reader) (more bool, err error) {
	l, err := t.Next()
	if errors.Is(err, io.EOF) {
		return false, nil
	}
	if err != nil {
		return false, err
	}
	r.line = l.Number
	if err := r.advance(l.At); err != nil {
		return false, err
	}
	return true, r.take(&l)
}

// advance makes the ticks before the line's.
func (r *replayer) advance(to world.Tick) error {
	for r.Now() < to {
		if r.Finished() {
			return cmp.Or(r.differs("the attempt going on", "its end"), errEnded)
		}
		r.Tick()
		if err := r.compare(); err != nil {
			return err
		}
	}
	return nil
}

// compare holds what people did in the last tick against the recording.
func (r *replayer) compare() error {
	got := r.derived
	for i := 0; i < max(len(got), len(r.want)); i++ {
		want, have := "nothing", "nothing"
		same := i < len(got) && i < len(r.want)
		if i < len(r.want) {
			l := &r.want[i]
			want = fmt.Sprintf("%s: %s %g", l.By, l.Control, l.Value)
			same = same && r.names[l.Control] == got[i].Control && l.By == got[i].By && l.From == got[i].From && l.Value == got[i].Value
		}
		if i < len(got) {
			have = fmt.Sprintf("%s: %s %g", got[i].By, r.Scene.World.Controls()[got[i].Control].Name, got[i].Value)
		}
		if !same {
			if err := r.differs(want, have); err != nil {
				return err
			}
		}
	}
	r.want = r.want[:0]
	return nil
}

// differs is the error of a difference; a foreign recording keeps the first and goes on.
func (r *replayer) differs(want, got string) error {
	err := &tape.Mismatch{Line: r.line, At: r.Now(), Want: want, Got: got}
	if r.foreign == nil {
		return err
	}
	if r.first == nil {
		r.first = err
	}
	return nil
}

// take does what a line says.
func (r *replayer) take(l *tape.Line) error {
	fault := func(problem error, detail string) error {
		return &tape.Error{Line: l.Number, Problem: problem, Detail: detail}
	}
	switch l.Kind {
	case tape.Hash, tape.End:
		r.ended = l.Kind == tape.End
		hash, _ := r.Scene.Hash()
		if hash != l.Hash {
			return r.differs("hash "+tape.HashText(l.Hash), tape.HashText(hash))
		}
	case tape.Mark:
		r.Mark(l.Text)
	case tape.Note:
		if r.ended || ruling(l.About) {
			if err := r.takeRuling(l); err != nil {
				return fault(tape.ErrRefused, err.Error())
			}
			return nil
		}
		r.Note(l.About, l.Text)
	case tape.Action, tape.Derived:
		id, ok := r.names[l.Control]
		if !ok {
			return fault(tape.ErrControl, l.Control)
		}
		if l.Kind == tape.Derived {
			r.want = append(r.want, *l)
			return nil
		}
		act := world.Action{By: l.By, From: l.From, Control: id, Value: l.Value}
		if err := r.Do(act); err != nil {
			return fault(tape.ErrRefused, err.Error())
		}
		if q := r.queue[len(r.queue)-1]; q.From != l.From {
			return r.differs("the candidate at "+l.From.String(), "at "+q.From.String())
		}
	}
	return nil
}
