package state

import (
	"encoding/binary"
	"math/rand/v2"
)

// Dice is one source of chance. Each use of chance has its own, so that drawing more of one
// never changes another. Only Uint64 and Float64 are offered: they are equal on every processor.
type Dice struct{ pcg rand.PCG }

// Seed sets the source from the drill's seed and the name of what it is for.
func (d *Dice) Seed(seed uint64, purpose string) {
	h := uint64(0xcbf29ce484222325)
	for i := 0; i < len(purpose); i++ {
		h = (h ^ uint64(purpose[i])) * 0x100000001b3
	}
	d.pcg.Seed(seed, h)
}

// Uint64 draws 64 bits.
func (d *Dice) Uint64() uint64 { return d.pcg.Uint64() }

// Float64 draws a number in [0, 1).
func (d *Dice) Float64() float64 { return float64(float64(d.pcg.Uint64()<<11>>11) / (1 << 53)) }

// Between draws evenly between lo and hi.
func (d *Dice) Between(lo, hi float64) float64 { return lo + float64((hi-lo)*d.Float64()) }

// Pick draws a whole number in [0, n).
func (d *Dice) Pick(n int) int { return int(d.Float64() * float64(n)) }

// Walk visits the source's position.
func (d *Dice) Walk(w *Walker) {
	var room [32]byte
	b, _ := d.pcg.AppendBinary(room[:0]) // "pcg:" and two big-endian words; it cannot fail
	hi, lo := binary.BigEndian.Uint64(b[4:]), binary.BigEndian.Uint64(b[12:])
	w.Word(&hi)
	w.Word(&lo)
	if w.Loading() {
		d.pcg.Seed(hi, lo)
	}
}
