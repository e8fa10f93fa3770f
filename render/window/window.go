package window

import (
	"encoding/json"
	"image"
	"io"
	"math"
	"time"

	"github.com/hajimehoshi/ebiten/v2"
	"github.com/hajimehoshi/ebiten/v2/inpututil"

	"steadyneedle/render/app"
	"steadyneedle/render/stage"
)

// Options is how the window opens.
type Options struct {
	Width, Height int
	Title         string
	FullScreen    bool
	Trace         io.Writer // one JSON line a frame; nil: none
}

// game is the ebiten side of the interface.
type game struct {
	app      *app.App
	last     time.Time
	drawn    stage.Frame
	fresh    bool // an update has come since the last drawing
	resized  bool // the whole screen has to be drawn
	size     sizing
	frames   int // drawn so far
	op       ebiten.DrawImageOptions
	short    time.Time // since when the picture has not been whole
	began    time.Time // the drawing of this frame
	boxes    []image.Rectangle
	textures map[*stage.Art]*ebiten.Image
	devices  devices
	trace    *json.Encoder
	line     app.Trace
}

// Run opens the window and returns when it is closed.
func Run(a *app.App, o Options) error {
	g := &game{app: a, textures: map[*stage.Art]*ebiten.Image{}}
	if o.Trace != nil {
		g.trace = json.NewEncoder(o.Trace)
	}
	a.Shelf().Gone, a.Shelf().Late = g.free, g.late
	ebiten.SetWindowTitle(o.Title)
	ebiten.SetWindowSize(o.Width, o.Height)
	ebiten.SetWindowSizeLimits(1024, 640, -1, -1)
	ebiten.SetWindowResizingMode(ebiten.WindowResizingModeEnabled)
	ebiten.SetFullscreen(o.FullScreen)
	ebiten.SetScreenClearedEveryFrame(false)
	ebiten.SetRunnableOnUnfocused(true)
	return ebiten.RunGameWithOptions(g, &ebiten.RunGameOptions{SingleThread: false})
}

// Layout is required by ebiten; LayoutF is what it calls.
func (g *game) Layout(w, h int) (int, int) { return w, h }

// LayoutF gives the screen one pixel for each of the monitor's.
func (g *game) LayoutF(w, h float64) (float64, float64) {
	scale := 1.0
	if m := ebiten.Monitor(); m != nil {
		scale = m.DeviceScaleFactor()
	}
	pw, ph := int(w*scale+0.5), int(h*scale+0.5)
	if g.size.wants(g.app, pw, ph, time.Now()) {
		g.app.Resize(pw, ph)
		g.resized = true
	}
	return float64(pw), float64(ph)
}

// Update takes input and lets the time that has passed pass.
func (g *game) Update() error {
	now := time.Now()
	if g.last.IsZero() {
		g.last = now
	}
	if inpututil.IsKeyJustPressed(ebiten.KeyF11) {
		ebiten.SetFullscreen(!ebiten.IsFullscreen())
	}
	g.devices.feed(g.app)
	g.app.Advance(now.Sub(g.last).Seconds())
	g.last = now
	g.fresh = true
	if g.trace != nil {
		g.app.Trace(&g.line)
		g.line.Frames = g.frames
		if err := g.trace.Encode(&g.line); err != nil {
			return err
		}
	}
	return nil
}

// paintFor is how long one frame may paint art that is shown for the first time: a page comes in pieces
// rather than late.
const paintFor = 25 * time.Millisecond

// Draw draws the frame if it differs from what the screen shows.
func (g *game) Draw(screen *ebiten.Image) {
	g.frames++
	if g.size.changing() {
		g.stretch(screen)
		return
	}
	if !g.resized && (!g.fresh || g.app.Still()) {
		return
	}
	g.fresh = false
	g.began = time.Now()
	f := g.app.Frame()
	if g.unfinished() {
		return
	}
	if g.resized {
		g.resized = false
		for i := range f.Sprites {
			g.put(screen, &f.Sprites[i])
		}
		g.drawn.Copy(f)
		return
	}
	g.boxes = stage.Changed(&g.drawn, f, g.boxes[:0])
	for _, box := range g.boxes {
		g.redraw(screen, f, box)
	}
	if len(g.boxes) > 0 {
		g.drawn.Copy(f)
	}
}

// holdFor is how long the last picture may stand while a new page is painted, before its parts are shown.
const holdFor = 200 * time.Millisecond

// unfinished reports whether the new picture lacks something, and the last one may stand a little longer.
func (g *game) unfinished() bool {
	if !g.app.Shelf().Short() {
		g.short = time.Time{}
		return false
	}
	if g.short.IsZero() {
		g.short = g.began
	}
	return time.Since(g.short) < holdFor
}

// late reports that this frame has painted for long enough.
func (g *game) late() bool { return time.Since(g.began) > paintFor }

// redraw draws what lies in a box of the screen, which keeps the rest from the frame before.
func (g *game) redraw(screen *ebiten.Image, f *stage.Frame, box image.Rectangle) {
	part, ok := screen.SubImage(box).(*ebiten.Image)
	if !ok || part.Bounds().Empty() {
		return
	}
	for i := range f.Sprites {
		if f.Sprites[i].Bounds().Overlaps(box) {
			g.put(part, &f.Sprites[i])
		}
	}
}

func (g *game) put(screen *ebiten.Image, s *stage.Sprite) {
	if s.Art.Img.Rect.Empty() {
		return // not painted yet
	}
	screen.DrawImage(g.texture(s.Art), g.place(s))
}

// place is where and how a sprite is drawn.
func (g *game) place(s *stage.Sprite) *ebiten.DrawImageOptions {
	op := &g.op
	*op = ebiten.DrawImageOptions{}
	if s.Turned {
		op.GeoM.Translate(-s.Art.Pivot.X, -s.Art.Pivot.Y)
		op.GeoM.Rotate(s.Angle * (math.Pi / 180))
		op.Filter = ebiten.FilterLinear
	}
	op.GeoM.Translate(s.X, s.Y)
	if s.Alpha < 1 {
		op.ColorScale.ScaleAlpha(float32(s.Alpha))
	}
	return op
}

// texture is the art on the graphics side, made when it is first shown.
func (g *game) texture(a *stage.Art) *ebiten.Image {
	if t, ok := g.textures[a]; ok {
		return t
	}
	b := a.Img.Bounds()
	t := ebiten.NewImage(b.Dx(), b.Dy())
	t.WritePixels(a.Img.Pix)
	g.textures[a] = t
	return t
}

func (g *game) free(a *stage.Art) {
	if t, ok := g.textures[a]; ok {
		t.Deallocate()
		delete(g.textures, a)
	}
}
