package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/input"
	"steadyneedle/render/report"
	"steadyneedle/render/sound"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/world"
)

// Drill is one line of the first screen.
type Drill struct {
	Name, Title, About string
	OnUnsafe           drill.OnUnsafe // what an unsafe act does in a rated attempt, unless the evaluator chooses otherwise
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
	// Store keeps attempts; nil: nothing is kept, and nothing taken over.
	Store Store
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
	class   *show   // what is shown to a class; nil: nothing
	tempo   float64 // times as fast as usual, in front of a class
	frozen  bool    // time stands still, likewise
	behind  float64 // s of world time not yet stepped
	lost    float64 // s of world time left out lately
	late    float64 // s until the notice that the machine can't keep up goes
	items   []Item
	focus   string            // key of the focused item
	foci    map[string]string // what was focused at places, by their screens
	hover   string
	pointer draw.Point
	stirred float64 // wall time at which the pointer last moved; a click puts it far back
	events  int     // that hands have made so far
	help    bool    // F1: explain what is pointed at or focused
	flash   flash
	look    Look
	stale   bool   // items must be collected again
	changed bool   // something may look other than in the last frame
	opened  opened // the message that lies open below its box
	wall    float64
	prompt  prompt
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
	a.changed = true
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
	a.changed = true
	a.keepFocus()
	a.screen = s
	a.hover = ""
	s.layout(a)
	a.dress()
	a.stale = true
	if _, ok := s.(*place); ok {
		if old, ok := a.foci[s.key()]; ok {
			a.focus = old
		}
	}
}

// keepFocus remembers what was focused at a place: who comes back to it finds it there.
func (a *App) keepFocus() {
	if p, ok := a.screen.(*place); ok && a.focus != "" {
		if a.foci == nil {
			a.foci = map[string]string{}
		}
		a.foci[p.key()] = a.focus
	}
}

// redraw paints what never moves anew: the screen has turned a page.
func (a *App) redraw() {
	a.shelf.Forget(a.stillKey())
	a.stale, a.changed = true, true
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
	a.adopt(at)
	a.behind = 0
	a.prompt = prompt{heeded: len(at.Hints())}
	a.ear = ear{}
	if a.opt.First {
		a.opt.First, a.hintUntil = false, a.wall+hintS
	}
	a.focus, a.foci = "", nil
	a.opened = opened{}
	a.show(a.placeScreen(a.eyes.Place()))
	if name := a.pad.missing(a); name != "" {
		a.say("The game-pad's map names " + name + ", which this apparatus does not have.")
	}
}

// ended keeps an attempt that is over, and opens its sheet.
func (a *App) ended() {
	a.keep()
	if s := a.attempt.Sheet(); !s.Early {
		a.show(newOwn(a.attempt))
		return
	}
	a.show(newDebrief(a, a.attempt))
}

// keep keeps an attempt that is over.
func (a *App) keep() {
	if a.opt.Store == nil {
		return
	}
	if err := a.opt.Store.Finish(a.attempt); err != nil {
		a.say(sentence(err.Error()))
	}
}

// leave goes back to the drills.
func (a *App) leave() {
	a.attempt, a.class = nil, nil
	a.show(&menu{})
}

// Advance lets wall time pass. The world catches up at most a quarter of a second at a time; what a
// slow machine misses beyond that is left out, and said.
func (a *App) Advance(seconds float64) {
	a.wall += seconds
	a.changed = a.changed || a.flash.left > 0 || a.late > 0 || !rests(a.screen)
	a.flash.left = max(0, a.flash.left-seconds)
	a.late = max(0, a.late-seconds)
	if o, ok := a.screen.(*opening); ok {
		o.advance(a)
	}
	a.listen()
	if a.attempt == nil || a.attempt.Over() || !a.running() {
		return
	}
	a.prompt.readOn(seconds)
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
	for a.behind >= 1.0/world.TicksPerSecond && !a.attempt.Over() && a.attempt.Undecided() == nil {
		a.behind -= 1.0 / world.TicksPerSecond
		a.hands.tick()
		a.attempt.Tick()
	}
	a.eyes.See(a.attempt.Reading())
	if a.attempt.Over() {
		a.hands.letGo()
		a.ended()
		return
	}
	if a.standAtUnsafe() {
		return
	}
	a.heed()
	a.follow()
}

// running reports whether the world goes on while this screen shows.
func (a *App) running() bool {
	switch a.screen.(type) {
	case *menu, *debrief, *moment, *own, *records, *opening, *stop, *decide, *writing, *demos:
		return false
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
	a.show(a.placeScreen(now))
}

// resume goes back to a place after something lay over it; the candidate may have moved on meanwhile.
func (a *App) resume(s *place) {
	if now := a.eyes.Place(); s.stands != now {
		s = a.placeScreen(now)
	}
	a.show(s)
	if s.focus != "" {
		a.focus, s.focus = s.focus, ""
	}
}

// say puts a notice on the lower strip for some seconds.
func (a *App) say(text string) { a.flash, a.changed = flash{text, 5}, true }

// Frame puts the present picture together. It is valid until the next call.
func (a *App) Frame() *stage.Frame {
	a.dress()
	a.collect()
	a.shelf.Tick()
	a.frame.Reset(a.scale)
	whole := a.shelf.Page(&a.frame, a.stillKey(), a.size.X, a.size.Y, func(cv *draw.Canvas) {
		cv.Fill(draw.Box(draw.Rect{W: a.size.X, H: a.size.Y}), draw.Solid(a.theme.Room))
		a.screen.still(a, cv)
	})
	if whole { // what moves comes when all that it stands on is there
		a.screen.moving(a)
		a.marks()
	}
	a.changed = a.shelf.Short()
	return &a.frame
}

// rests reports whether a screen shows the same until hands do something.
func rests(s screen) bool {
	switch s := s.(type) {
	case *menu, *gallery, *moment, *debrief, *own, *records, *stop, *decide, *writing, *demos:
		return true
	case *pause:
		return !s.rated
	}
	return false
}

// Still reports that the next frame would look like the last: nothing has happened since.
func (a *App) Still() bool { return !a.changed }

// Size is the picture's size in pixels.
func (a *App) Size() (w, h int) { return a.w, a.h }
