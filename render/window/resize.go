package window

import (
	"time"

	"github.com/hajimehoshi/ebiten/v2"

	"steadyneedle/render/app"
)

// A window that is being resized changes its size many times a second, and every size wants all art
// painted anew. So the interface follows only when the size has come to rest; until then the last frame
// is stretched.

// rest is how long a size must stay before the interface follows.
const rest = 120 * time.Millisecond

// sizing watches the window's size.
type sizing struct {
	w, h  int
	since time.Time // when it became that
	moves bool      // the interface has another size still
}

// wants takes the size of now, and reports whether the interface is to follow.
func (s *sizing) wants(a *app.App, w, h int, now time.Time) bool {
	first := s.w == 0
	if w != s.w || h != s.h {
		s.w, s.h, s.since = w, h, now
	}
	if aw, ah := a.Size(); aw == w && ah == h {
		s.moves = false
		return false
	}
	s.moves = !first && now.Sub(s.since) < rest
	return !s.moves
}

// changing reports whether the size is under way.
func (s *sizing) changing() bool { return s.moves }

// stretch draws the last frame over the whole of a screen of another size.
func (g *game) stretch(screen *ebiten.Image) {
	w, h := g.app.Size()
	b := screen.Bounds()
	sx, sy := float64(b.Dx())/float64(w), float64(b.Dy())/float64(h)
	for i := range g.drawn.Sprites {
		t, ok := g.textures[g.drawn.Sprites[i].Art]
		if !ok {
			continue // thrown away since
		}
		op := g.place(&g.drawn.Sprites[i])
		op.GeoM.Scale(sx, sy)
		op.Filter = ebiten.FilterLinear
		screen.DrawImage(t, op)
	}
}
