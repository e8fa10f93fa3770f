package attempt

import (
	"fmt"
	"io"

	"steadyneedle/sim/board"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/judge"
	"steadyneedle/sim/prompter"
	"steadyneedle/sim/scene"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// Options is how an attempt is run.
type Options struct {
	Record    io.Writer          // gets the recording as it happens; nil: none
	Header    tape.Header        // Build, Operator and Files of the recording; the drill fills in the rest
	OnUnsafe  drill.OnUnsafe     // what an unsafe act does
	Live      bool               // tests on copies are left to Work, so that no tick takes long
	Keys      bool               // keep key frames, for Look, Rewind and Leave
	AllSeries bool               // the series hold every signal and value, not only what the debrief plots
	LongestS  float64            // an attempt is ended after this; 7200 s unless given
	Help      *prompter.Prompter // helps the candidate, and has what it says noted; nil: no help
}

// Attempt is one run of a drill. Its methods are not for concurrent use.
type Attempt struct {
	Drill  *drill.Drill
	Scene  *scene.Scene
	Judge  *judge.Judge
	Series Series

	o       Options
	tape    *tape.Writer
	queue   []world.Action // wait for the next tick
	derived []world.Action // what people did in the last one
	log     []entry
	rulings []entry // notes of the evaluator's after the end
	keys    []key
	coach   *prompter.Prompter // nil: no help
	told    []prompter.Hint    // of the log's notes
	steps   steps
	ends    []float64 // memory of the drill's Ends
	acts    acts
	over    bool
	closed  bool
	reached bool // the drill's own end has come
	// following: it is brought to a moment that it has been at, and what is found on the way was heeded then
	following bool
	noted     world.Tick // the last whole second whose hash is in the log
	hash      uint64     // of that second, or the final one
	err       error
}

// New readies an attempt at tick 0.
func New(d *drill.Drill, o Options) (*Attempt, error) {
	if o.LongestS == 0 {
		o.LongestS = 7200
	}
	s, err := scene.New(d.Setup, d.Values, d.Cues)
	if err != nil {
		return nil, fmt.Errorf("drill %s: %w", d.Name, err)
	}
	j, err := judge.New(judge.Options{
		Rules: d.Rules, Board: s.Board, Controls: s.World.Controls(), Scale: d.Scale, Grace: world.TicksIn(d.GraceS),
		Fork: func() (judge.Bench, error) { return s.Bench() },
	})
	if err != nil {
		return nil, fmt.Errorf("drill %s: %w", d.Name, err)
	}
	a := &Attempt{Drill: d, Scene: s, Judge: j, o: o, queue: make([]world.Action, 0, 64), log: make([]entry, 0, 1024), noted: -1}
	a.Series = newSeries(s.Board, d, o.AllSeries)
	a.steps = newSteps(d.Steps)
	a.coach = o.Help
	if d.Ends != nil {
		a.ends = make([]float64, d.Ends.Slots)
	}
	if o.Record != nil {
		if a.tape, err = tape.NewWriter(o.Record, a.Header(), s.World.Controls()); err != nil {
			return nil, fmt.Errorf("recording: %w", err)
		}
	}
	if a.coach != nil {
		a.Note(HelpNote, a.coach.Stage().String())
	}
	if o.OnUnsafe != drill.GoOn {
		a.OnUnsafe(o.OnUnsafe)
	}
	return a, nil
}

// Header is the recording's.
func (a *Attempt) Header() tape.Header {
	h, d := a.o.Header, a.Drill
	h.Tape, h.Physics = tape.Version, scene.Physics
	h.Drill, h.Apparatus, h.Variant, h.Seed = d.Name, d.Apparatus, d.Variant, d.Setup.Seed
	return h
}

// Now is the tick that the next Tick will make.
func (a *Attempt) Now() world.Tick { return a.Scene.World.Now() }

// Do takes an action for the coming tick. At, and a candidate's From, are filled in. What the world
// cannot do is refused with the reason, and nothing happens.
func (a *Attempt) Do(act world.Action) error {
	if a.over {
		return fmt.Errorf("the attempt is over")
	}
	if a.Undecided() != nil {
		return fmt.Errorf("the world stands until the evaluator has decided")
	}
	act.At = a.Now()
	if act.By == world.Candidate {
		act.From = a.Scene.World.Place()
	}
	if act.Value == 0 {
		act.Value = 0 // one zero only: it is recorded as text
	}
	if err := a.Scene.World.Check(act); err != nil {
		return err
	}
	a.queue = append(a.queue, act)
	return nil
}

// Mark notes an evaluator's remark at this moment.
func (a *Attempt) Mark(text string) {
	if !a.over {
		a.write(entry{kind: tape.Mark, action: world.Action{At: a.Now()}, text: text})
		a.flush()
	}
}

// Tick makes one tick: the judge looks at the actions, the scene steps, the judge looks at what came of
// it. After the attempt is over, and while the evaluator decides on an unsafe act, it does nothing.
func (a *Attempt) Tick() {
	if a.over || a.Undecided() != nil {
		return
	}
	now := a.Now()
	if now%tape.HashEvery == 0 && now != a.noted {
		a.second(now)
	}
	acted := len(a.queue) > 0
	for i := range a.queue {
		a.write(entry{kind: tape.Action, action: a.queue[i]})
	}
	if acted {
		a.flush() // what a person did is out before anything can go wrong with it
	}
	a.Judge.Before(a.queue)
	a.derived = a.Scene.Step(a.queue)
	a.queue = a.queue[:0]
	for i := range a.derived {
		a.write(entry{kind: tape.Derived, action: a.derived[i]})
	}
	a.Judge.After()
	a.steps.look(a.Scene.Board)
	if !a.o.Live && a.Judge.Pending() {
		a.note(a.Judge.Settle())
	}
	a.Series.look(a.Scene.Board)
	a.help(acted)
	a.heedUnsafe()
	if a.over || a.isOver() {
		a.Close()
	}
}

// second notes the hash, and every so often a key frame.
func (a *Attempt) second(now world.Tick) {
	hash, ok := a.Scene.Hash()
	if !ok {
		a.note(fmt.Errorf("at %.1f s a number of the model is not one", now.Seconds()))
		a.over = true
	}
	a.hash, a.noted = hash, now
	a.write(entry{kind: tape.Hash, action: world.Action{At: now}, hash: hash})
	if a.o.Keys && now%keyEvery == 0 && !a.Judge.Pending() {
		a.keep(now)
	}
}

// isOver reports whether the drill's end has come, or the longest time is over.
func (a *Attempt) isOver() bool {
	b := a.Scene.Board
	if b.At.Seconds() >= a.o.LongestS {
		return true
	}
	if a.Drill.Ends == nil || b.At%board.Beat != 0 {
		return false
	}
	a.Drill.Ends.Refresh(b.V, a.ends)
	a.reached = a.Drill.Ends.True(b.V, a.ends)
	return a.reached
}

// note keeps the first error.
func (a *Attempt) note(err error) {
	if a.err == nil {
		a.err = err
	}
}

// Work runs what tests on copies of the world are pending, for at most so many of their ticks.
func (a *Attempt) Work(ticks int) { a.Judge.Work(ticks) }

// Finished reports whether the attempt is over.
func (a *Attempt) Finished() bool { return a.over }

// Early reports whether the attempt was closed before its drill was over: it has no verdict.
func (a *Attempt) Early() bool { return a.closed && !a.reached && a.Drill.Ends != nil }

// Close ends the attempt here: the judge's last look, and the recording's last line. It returns the
// first thing that went wrong in the attempt, and may be called again.
func (a *Attempt) Close() error {
	if a.closed {
		return a.err
	}
	a.over, a.closed = true, true
	a.queue = a.queue[:0]
	a.note(a.Judge.Finalize())
	hash, ok := a.Scene.Hash()
	if !ok {
		a.note(fmt.Errorf("a number of the model is not one"))
	}
	a.hash = hash
	if a.tape != nil {
		a.note(a.tape.End(a.Now(), hash))
	}
	return a.err
}

// Hash is the scene's, at the end or at the last whole second.
func (a *Attempt) Hash() uint64 { return a.hash }

// Sheet draws up the sheet as things stand.
func (a *Attempt) Sheet() *judge.Sheet { return a.Judge.Sheet() }

// Read fills in what the candidate perceives where they stand.
func (a *Attempt) Read(r *world.Reading) { a.Scene.World.Read(a.Scene.World.Place(), r) }
