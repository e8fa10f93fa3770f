package demo

import (
	"fmt"

	"steadyneedle/sim/attempt"
	"steadyneedle/sim/board"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/world"
)

// Phase is what a player is doing.
type Phase uint8

const (
	Asking      Phase = iota // a question stands; Go begins the step
	Playing                  // the script is at work
	Waiting                  // at a stop; Go goes on
	Interrupted              // the instructor has taken over; Resume goes on
	Ended
	Stuck // the script cannot go on: see Err
)

func (p Phase) String() string {
	return [...]string{"asking", "playing", "waiting", "interrupted", "ended", "stuck"}[p]
}

// longestPrepareS is how long the time before the curtain may be, s.
const longestPrepareS = 900

// Player plays one demonstration. It is not safe for concurrent use.
type Player struct {
	Demonstration *Demonstration
	Attempt       *attempt.Attempt

	phase   Phase
	before  Phase // that Resume goes back to
	step    int   // −1: preparing
	hand    *operator.Operator
	claims  claims
	began   world.Tick // of the step's moves
	touched bool       // the instructor has acted
	votes   [][]int
	armed   []armed
	keys    []key
	err     error

	seen world.Reading
	acts []world.Action
}

// New readies a demonstration: everything before its first step is done already.
func New(d *Demonstration) (*Player, error) {
	a, err := attempt.New(d.Drill, attempt.Options{Keys: true, AllSeries: true})
	if err != nil {
		return nil, fmt.Errorf("demonstration: %w", err)
	}
	p := &Player{Demonstration: d, Attempt: a, step: -1, phase: Playing, votes: make([][]int, len(d.Steps))}
	p.claims = newClaims(d)
	p.acts = make([]world.Action, 0, 16)
	if err := p.take(&d.Prepare); err != nil {
		return nil, err
	}
	for p.step < 0 {
		if p.phase == Stuck {
			return nil, p.err
		}
		if a.Now().Seconds() > longestPrepareS {
			return nil, fmt.Errorf("demonstration %s: its preparation takes longer than %d s", d.Drill.Name, longestPrepareS)
		}
		p.Tick()
	}
	return p, nil
}

// take gives a script to the hands.
func (p *Player) take(s *operator.Script) error {
	hand, err := p.Attempt.Operator(s, operator.Hands{Seed: p.Demonstration.Drill.Setup.Seed})
	if err != nil {
		return fmt.Errorf("demonstration %s: %w", p.Demonstration.Drill.Name, err)
	}
	p.hand = hand
	return nil
}

// Tick makes one tick of the world, whatever the phase: at a stop the water runs on.
func (p *Player) Tick() {
	p.keep()
	p.spring()
	if p.phase == Playing {
		p.work()
	}
	p.Attempt.Tick()
	p.claims.look(p.Attempt.Scene.Board)
}

// work lets the script act in the coming tick, or ends its step.
func (p *Player) work() {
	now := p.Attempt.Now()
	if now%board.Beat == 0 {
		p.seen.At, p.seen.Place = now, world.Panel
		p.seen.V = append(p.seen.V[:0], p.Attempt.Scene.World.Truth().V...)
	}
	p.acts = p.hand.Step(now, &p.seen, p.acts[:0])
	for i := range p.acts {
		p.acts[i].By = world.Instructor
		if err := p.Attempt.Do(p.acts[i]); err != nil {
			p.hand.Refused(err)
			break
		}
	}
	if !p.hand.Done() {
		return
	}
	if why, line := p.hand.Stuck(); why != "" {
		p.phase = Stuck
		p.err = fmt.Errorf("demonstration %s, line %d, at %.1f s: %s", p.Demonstration.Drill.Name, line, now.Seconds(), why)
		return
	}
	p.finish()
}

// finish ends the step under way and takes the next one, or waits.
func (p *Player) finish() {
	if p.step >= 0 {
		s := &p.Demonstration.Steps[p.step]
		p.claims.settle(p.step, p.Attempt.Scene.Board, p.touched)
		if s.Stop {
			p.phase = Waiting
			return
		}
	}
	p.next()
}

// next begins the step after this one.
func (p *Player) next() {
	p.step++
	if p.step >= len(p.Demonstration.Steps) {
		p.step = len(p.Demonstration.Steps) - 1
		p.phase = Ended
		return
	}
	s := &p.Demonstration.Steps[p.step]
	p.phase, p.began = Playing, p.Attempt.Now()
	if s.Ask != nil {
		p.phase = Asking
	}
	if err := p.take(&s.Moves); err != nil {
		p.phase, p.err = Stuck, err
	}
}

// Go ends a stop, or a question: the step that was asked about begins. Otherwise, and where there is no
// script, it does nothing.
func (p *Player) Go() {
	switch p.phase {
	case Waiting:
		if !p.Demonstration.Free {
			p.next()
		}
	case Asking:
		p.phase, p.began = Playing, p.Attempt.Now()
	}
}

// Interrupt stops the script where it is; the world runs on, and the instructor has the panel.
func (p *Player) Interrupt() {
	if p.phase == Playing || p.phase == Waiting || p.phase == Asking {
		p.before, p.phase = p.phase, Interrupted
	}
}

// Resume lets the script go on from where it was interrupted. What the instructor has changed meanwhile
// stays changed.
func (p *Player) Resume() {
	if p.phase == Interrupted {
		p.phase = p.before
	}
}

// Do is the instructor's own action for the coming tick. Claims that are settled after it say so.
func (p *Player) Do(control world.ControlID, value float64) error {
	err := p.Attempt.Do(world.Action{By: world.Instructor, From: world.Panel, Control: control, Value: value})
	if err == nil {
		p.touched = true
	}
	return err
}

// Vote notes how many of the class chose each option of the question that stands.
func (p *Player) Vote(counts []int) error {
	s := p.Step()
	switch {
	case p.phase != Asking:
		return fmt.Errorf("no question stands")
	case len(counts) != len(s.Ask.Options):
		return fmt.Errorf("%d counts for %d options", len(counts), len(s.Ask.Options))
	}
	for _, n := range counts {
		if n < 0 {
			return fmt.Errorf("a count of %d", n)
		}
	}
	p.votes[p.step] = append([]int(nil), counts...)
	return nil
}

// Votes are the counts for step i's question; nil: none were given.
func (p *Player) Votes(i int) []int { return p.votes[i] }

// Phase is what the player is doing.
func (p *Player) Phase() Phase { return p.phase }

// Index is the number of the step that is being asked about, done, or was done last.
func (p *Player) Index() int { return p.step }

// Step is that step.
func (p *Player) Step() *Step { return &p.Demonstration.Steps[p.step] }

// Hidden reports whether a signal is covered now, for the class has been asked about it.
func (p *Player) Hidden(signal string) bool {
	s := p.Step()
	if s.Ask == nil || p.claims.done[p.step] {
		return false
	}
	for _, name := range s.Ask.Hide {
		if name == signal {
			return true
		}
	}
	return false
}

// Began is when the moves of the step under way began: what is covered was open until then.
func (p *Player) Began() world.Tick { return p.began }

// Results are the claims settled so far, in order.
func (p *Player) Results() []Result { return p.claims.results(p.Demonstration) }

// Limit is what the plotted lines are to be seen against in the step under way, and at what level.
func (p *Player) Limit() (l *Limit, level float64) {
	if v, ok := p.claims.limit(p.step); ok {
		return p.Step().Limit, v
	}
	return nil, 0
}

// Err is why the script is stuck.
func (p *Player) Err() error { return p.err }

// Run plays to the end without stopping; without a script there is nothing to play.
func (p *Player) Run() error {
	for p.phase != Ended && !p.Demonstration.Free {
		switch p.phase {
		case Asking, Waiting:
			p.Go()
		case Stuck:
			return p.err
		case Interrupted:
			return fmt.Errorf("demonstration %s: interrupted", p.Demonstration.Drill.Name)
		}
		p.Tick()
	}
	return nil
}
