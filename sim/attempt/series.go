package attempt

import (
	"fmt"

	"steadyneedle/sim/board"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/world"
)

// Series is what the debrief plots: a few cells of the board, ten times a second.
type Series struct {
	Channels []Channel
	At       []world.Tick
}

// Channel is one plotted number.
type Channel struct {
	Name, Unit string
	V          []float64 // beside Series.At
	cell       int
}

// roomFor is how many samples room is made for at a time: ten minutes.
const roomFor = 10 * 60 * 10

// newSeries chooses the channels: the line's gauge and what it is judged by, intake and pump gauges,
// speed, flow, the relief valve's lamp, and the pump's heat. What this world lacks is left out. With all
// set, every cell of the board is a channel.
func newSeries(b *board.Board, d *drill.Drill, all bool) Series {
	line := d.Setup.Ground.Discharge
	names := []string{fmt.Sprintf("line%d_gauge", line), "calculated", "tolerance", "intake_gauge", "discharge_gauge",
		"tach", fmt.Sprintf("line%d_gpm", line), "amber", "pump_f", "throttle"}
	if all {
		names = b.Names()
	}
	var s Series
	for _, n := range names {
		if cell, ok := b.Cell(n); ok {
			s.Channels = append(s.Channels, Channel{Name: n, Unit: b.Unit(cell), cell: cell})
		}
	}
	s.grow(roomFor)
	return s
}

// grow makes room for so many more samples.
func (s *Series) grow(n int) {
	s.At = append(make([]world.Tick, 0, len(s.At)+n), s.At...)
	for i := range s.Channels {
		c := &s.Channels[i]
		c.V = append(make([]float64, 0, len(c.V)+n), c.V...)
	}
}

// look takes a sample on the beat.
func (s *Series) look(b *board.Board) {
	if b.At%board.Beat != 0 {
		return
	}
	if len(s.At) == cap(s.At) {
		s.grow(roomFor)
	}
	s.At = append(s.At, b.At)
	for i := range s.Channels {
		c := &s.Channels[i]
		c.V = append(c.V, b.V[c.cell])
	}
}

// after copies the samples later than a tick.
func (s *Series) after(at world.Tick) Series {
	n := len(s.At)
	for n > 0 && s.At[n-1] > at {
		n--
	}
	c := Series{At: append([]world.Tick(nil), s.At[n:]...), Channels: append([]Channel(nil), s.Channels...)}
	for i := range c.Channels {
		c.Channels[i].V = append([]float64(nil), s.Channels[i].V[n:]...)
	}
	return c
}

// cut forgets the samples after a tick.
func (s *Series) cut(after world.Tick) {
	n := len(s.At)
	for n > 0 && s.At[n-1] > after {
		n--
	}
	s.At = s.At[:n]
	for i := range s.Channels {
		s.Channels[i].V = s.Channels[i].V[:n]
	}
}
