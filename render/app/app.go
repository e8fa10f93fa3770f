package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/input"
	"steadyneedle/render/report"
	"steadyneedle/render/sound"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// Drill is one line of the first screen.
type Drill struct {
	Name, Title, About string
}

// Options is what the front door gives the window.
type Options struct {
	Drills []Drill
	// Start begins an attempt at a drill.
	Start func(name string, rated bool) (view.Attempt, error)
	// Shows are the prepared demonstrations, and Present begins one.
	Shows   []Drill
	Present func(name string) (view.Stage, error)
	// Save keeps a sheet as a file and returns its name; nil where there are no files.
	Save func(*report.Sheet) (string, error)
	// Done is told of an attempt that is over; an error says why it is not kept. It may be nil.
	Done  func(view.Attempt) error
	Sound Sound
	Pace  int       // times as fast as wall time; 1 unless set
	Zoom  float64   // size of the interface, 1 to 2 pixels a unit at most; 0: as large as the window lets it be
	Pad   input.Map // what the axes and buttons of a game-pad work
	Look  Look      // colors
	Level float64   // of all sound, 0 to 1
	Mix   sound.Mix // of each source
	// First shows the hint for one who works here for the first time.
	First bool
}

// Sound plays what is heard. It may be nil.
type Sound interface {
	Set(sound.State)
	// Mute turns sound off and on, and reports whether it is off.
	Mute() bool
	// Fault is a word about a missing device, once.
	Fault() string
}

// App is the whole interface. Make it with New.
type App struct {
	opt     Options
	shelf   *stage.Shelf
	theme   *theme.Theme
	frame   stage.Frame
	w, h    int     // px
	scale   float64 // px per unit
	zoom    float64 // px per unit wanted at most; 0: as large as the window lets it be
	size    draw.Point
	screen  screen
	attempt view.Attempt
	eyes    *view.Eyes
	hands   hands
	pad     pad
	tempo   float64 // times as fast as usual, in front of a class
	frozen  bool    // time stands still, likewise
	behind  float64 // s of world time not yet stepped
	lost    float64 // s of world time left out lately
	late    float64 // s until the notice that the machine can't keep up goes
	items   []Item
	focus   string // key of the focused item
	hover   string
	pointer draw.Point
	events  int  // that hands have made so far
	help    bool // F1: explain what is pointed at or focused
	flash   flash
	look    Look
	stale   bool // items must be collected again
	wall    float64
	// hintUntil is the wall time until which the first hint shows.
	hintUntil float64
	tested    float64 // wall time at which the lamp test was pressed; 0: never
	rpm       float64 // engine speed when it was last seen or heard
	ear       ear
}

// flash is a short notice on the lower strip.
type flash struct {
	text string
	left float64 // s
}

// screen is one state of the interface: first screen, a place, the list of phrases, the debrief.
type screen interface {
	key() string
	// layout arranges the screen for the app's present size.
	layout(a *App)
	// items are the things that can be focused, in any order.
	items(a *App) []Item
	// still paints what never moves; it is called once per layout.
	still(a *App, cv *draw.Canvas)
	// moving puts the rest.
	moving(a *App)
}

// keyed is a screen that takes keys before the app does.
type keyed interface {
	onKey(a *App, k Key) bool
}

// New makes the interface, standing on the first screen.
func New(o Options) *App {
	if o.Pace < 1 {
		o.Pace = 1
	}
	a := &App{opt: o, tempo: 1, shelf: stage.NewShelf(), theme: &theme.Day}
	a.hands.app = a
	a.zoom = o.Zoom
	a.pad = newPad(o.Pad)
	a.look = o.Look
	a.dress()
	a.Resize(1280, 720)
	a.show(&menu{})
	return a
}

// Shelf is where the art stands; a window frees its copies when the shelf tells it to.
func (a *App) Shelf() *stage.Shelf { return a.shelf }

// Resize fits the interface to a picture of w by h pixels.
func (a *App) Resize(w, h int) {
	if w == a.w && h == a.h || w < 1 || h < 1 {
		return
	}
	a.w, a.h = w, h
	a.fit()
	a.relayout()
}

// fit finds the size of a unit: as large as the window lets it be, or as the user wants it where that
// is smaller.
func (a *App) fit() {
	w, h := float64(a.w), float64(a.h)
	a.scale = min(w/1280, h/720)
	if a.zoom > 0 {
		a.scale = min(a.scale, a.zoom)
	}
	a.size = draw.Pt(w/a.scale, h/a.scale)
}

func (a *App) relayout() {
	a.shelf.Clear(a.scale)
	if a.screen != nil {
		a.screen.layout(a)
	}
	a.stale = true
}

// show goes to another screen.
func (a *App) show(s screen) {
	if a.screen != nil {
		a.shelf.Forget(a.stillKey())
	}
	a.hands.letGo()
	a.screen = s
	a.hover = ""
	s.layout(a)
	a.dress()
	a.stale = true
}

func (a *App) stillKey() string { return "still/" + a.screen.key() }

// Begin starts an attempt at a drill and goes to where the candidate sits.
func (a *App) Begin(name string, rated bool) error {
	at, err := a.opt.Start(name, rated)
	if err != nil {
		return err
	}
	a.take(at)
	return nil
}

// take goes to work on an attempt.
func (a *App) take(at view.Attempt) {
	a.attempt = at
	a.eyes = view.NewEyes(view.NewTable(at.Controls(), at.Signals()))
	a.eyes.Units = at.Info().Units
	a.eyes.See(at.Reading())
	a.behind = 0
	a.ear = ear{}
	if a.opt.First {
		a.opt.First, a.hintUntil = false, a.wall+hintS
	}
	a.focus = ""
	a.show(a.placeScreen(a.eyes.Place()))
	if name := a.pad.missing(a); name != "" {
		a.say("The game-pad's map names " + name + ", which this apparatus does not have.")
	}
}

// ended keeps an attempt that is over, and opens its sheet.
func (a *App) ended() {
	a.keep()
	a.show(newDebrief(a.attempt))
}

// keep tells the front door that the attempt is over.
func (a *App) keep() {
	if a.opt.Done == nil {
		return
	}
	if err := a.opt.Done(a.attempt); err != nil {
		a.say(sentence(err.Error()))
	}
}

// leave goes back to the drills.
func (a *App) leave() {
	a.attempt = nil
	a.show(&menu{})
}

// Advance lets wall time pass. The world catches up at most a quarter of a second at a time; what a
// slow machine misses beyond that is left out, and said.
func (a *App) Advance(seconds float64) {
	a.wall += seconds
	a.flash.left = max(0, a.flash.left-seconds)
	a.late = max(0, a.late-seconds)
	a.listen()
	if a.attempt == nil || a.attempt.Over() || !a.running() {
		return
	}
	pace := float64(a.opt.Pace) * a.tempo
	a.behind += seconds * pace
	const most = 0.25
	if limit := most * max(1, pace); a.behind > limit {
		a.lost += a.behind - limit
		a.behind = limit
	}
	a.lost = max(0, a.lost-0.05*seconds)
	if a.lost > max(1, pace) { // a whole second, and not by one hitch
		a.fellBehind(a.lost)
		a.lost = 0
	}
	for a.behind >= 1.0/world.TicksPerSecond && !a.attempt.Over() {
		a.behind -= 1.0 / world.TicksPerSecond
		a.hands.tick()
		a.attempt.Tick()
	}
	a.eyes.See(a.attempt.Reading())
	if a.attempt.Over() {
		a.hands.letGo()
		a.ended()
	}
	a.follow()
}

// running reports whether the world goes on while this screen shows.
func (a *App) running() bool {
	switch a.screen.(type) {
	case *menu, *debrief, *moment, *demos:
		return false
	case *show, *rigging:
		return !a.frozen
	case *pause:
		return a.attempt.Info().Rated
	}
	return !a.frozen
}

// follow goes with the candidate: to the street plan while walking, to the room on arriving there.
func (a *App) follow() {
	p, ok := a.screen.(*place)
	if !ok {
		return
	}
	now := a.eyes.Place()
	if p.stands == now {
		return
	}
	a.hands.letGo()
	keep := a.focus
	a.show(a.placeScreen(now))
	a.focus = keep
}

// resume goes back to a place after something lay over it; the candidate may have moved on meanwhile.
func (a *App) resume(s *place) {
	if now := a.eyes.Place(); s.stands != now {
		s = a.placeScreen(now)
	}
	a.show(s)
	a.focus, s.focus = s.focus, ""
}

// say puts a notice on the lower strip for some seconds.
func (a *App) say(text string) { a.flash = flash{text, 5} }

// Frame puts the present picture together. It is valid until the next call.
func (a *App) Frame() *stage.Frame {
	a.dress()
	a.collect()
	a.shelf.Tick()
	a.frame.Reset(a.scale)
	whole := draw.Rect{W: a.size.X, H: a.size.Y}
	a.frame.Put(a.shelf.Get(a.stillKey(), whole, func(cv *draw.Canvas) {
		cv.Fill(draw.Box(whole), draw.Solid(a.theme.Room))
		a.screen.still(a, cv)
	}), draw.Point{})
	a.screen.moving(a)
	a.marks()
	return &a.frame
}

// Size is the picture's size in pixels.
func (a *App) Size() (w, h int) { return a.w, a.h }
