package draw

// Zoom lets paint draw with everything k times as large, about the point from which units are counted.
// What it writes is noted in Words, and what it fills in Cards, in the canvas's own units.
func (c *Canvas) Zoom(k float64, paint func()) {
	scale, origin, base, from := c.Scale, c.Origin, c.base, len(c.Words)
	card := len(c.Cards)
	c.Scale, c.Origin, c.base = scale*k, origin.Mul(1/k), base.Mul(1/k)
	paint()
	c.Scale, c.Origin, c.base = scale, origin, base
	for i := range c.Words[from:] {
		w := &c.Words[from+i]
		w.Box = w.Box.Times(k)
	}
	for i := range c.Cards[card:] {
		w := &c.Cards[card+i]
		w.Box = w.Box.Times(k)
	}
}
