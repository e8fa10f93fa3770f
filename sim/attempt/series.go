package attempt

import (
	"fmt"
	"math"

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
// speed, flow, heat, lamps, and where the valves stand. What this world lacks is left out. With all set,
// every cell of the board is a channel.
func newSeries(b *board.Board, d *drill.Drill, all bool) Series {
	line := d.Setup.Ground.Discharge
	names := []string{fmt.Sprintf("line%d_gauge", line), "calculated", "tolerance", "intake_gauge", "discharge_gauge",
		"tach", fmt.Sprintf("line%d_gpm", line), "pump_f", "coolant_gauge", "amber", "ok_to_pump", "throttle_ready", "intake_open_lamp",
		"throttle", fmt.Sprintf("discharge%d", line), "intake", "tank_to_pump", "tank_fill", "recirculation", "relief_wheel", "hydrant_valve"}
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

// copy takes over the samples of another series with the same channels.
func (s *Series) copy(from *Series) {
	s.At = append(s.At[:0], from.At...)
	for i := range s.Channels {
		s.Channels[i].V = append(s.Channels[i].V[:0], from.Channels[i].V...)
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

// series packs the samples; the channels follow from the drill.
func (b *packer) series(s *Series) {
	b.word(uint64(len(s.Channels)))
	b.word(uint64(len(s.At)))
	for _, at := range s.At {
		b.word(uint64(at))
	}
	for i := range s.Channels {
		for _, v := range s.Channels[i].V {
			b.word(math.Float64bits(v))
		}
	}
}

func (u *unpacker) series(s *Series) {
	if u.word() != uint64(len(s.Channels)) {
		u.bad = true
		return
	}
	n := u.count(8 * (1 + len(s.Channels)))
	s.At = make([]world.Tick, n)
	for i := range s.At {
		s.At[i] = world.Tick(u.word())
	}
	for c := range s.Channels {
		v := make([]float64, n)
		for i := range v {
			v[i] = math.Float64frombits(u.word())
		}
		s.Channels[c].V = v
	}
}
