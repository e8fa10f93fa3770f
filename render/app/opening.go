package app

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// opening shows how far an attempt has been opened, and goes on when it is there.
type opening struct {
	work Opening
	then func(at view.Attempt, err error)
	back screen
	done bool
}

// openSlow opens an attempt in slices; one that is there at once shows nothing in between.
func (a *App) openSlow(o Opening, then func(view.Attempt, error)) {
	if o.Work() {
		then(o.Attempt())
		return
	}
	a.show(&opening{work: o, then: then, back: a.screen})
}

func (o *opening) key() string { return "opening" }

func (o *opening) layout(*App) {}

func (o *opening) items(a *App) []Item {
	return []Item{{Key: "cancel", Box: draw.Rect{X: a.size.X/2 - 70, Y: a.size.Y/2 + 50, W: 140, H: 40}, Label: "Cancel", Help: "Key Esc.", Do: func() { a.show(o.back) }}}
}

// advance does a slice of the work; it is called once a frame.
func (o *opening) advance(a *App) {
	if o.done || !o.work.Work() {
		return
	}
	o.done = true
	o.then(o.work.Attempt())
}

func (o *opening) still(a *App, cv *draw.Canvas) {
	cv.Text(draw.Pt(a.size.X/2, a.size.Y/2-40), draw.Center, draw.Style{Size: 22, Weight: draw.Bold, Color: a.theme.Text}, "The attempt is worked again from its recording")
}

func (o *opening) moving(a *App) {
	th := a.theme
	now, whole := o.work.Reached()
	share := float64(int(100*float64(now)/float64(max(1, whole)))) / 100
	const w, h = 480.0, 16.0
	art := a.shelf.Once("opening", fmt.Sprintf("opening/%s/%v", th.Name, share), draw.Rect{W: w, H: h}, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(draw.Rect{W: w, H: h}, 8), draw.Solid(th.Card))
		cv.Fill(draw.Round(draw.Rect{W: max(h, w*share), H: h}, 8), draw.Solid(th.Water))
	})
	a.frame.Put(art, draw.Pt(a.size.X/2-w/2, a.size.Y/2))
	a.shelf.Text(&a.frame, draw.Pt(a.size.X/2, a.size.Y/2-12), draw.Center, draw.Style{Size: 16, Color: th.Soft},
		"up to "+clockText(now.Seconds())+" of "+clockText(whole.Seconds())+" from the start")
	a.button(o.items(a)[0].Box, "Cancel", false)
}

func (o *opening) onKey(a *App, k Key) bool {
	if k.Down && k.Name == "Escape" {
		a.show(o.back)
		return true
	}
	return false
}

// debriefOf shows the debrief of an attempt that was opened. One that does not match its recording, or
// breaks off, is shown as far as it goes, and says so.
func (a *App) debriefOf(at view.Attempt, err error) {
	if at == nil {
		a.say(sentence(err.Error()))
		a.show(&menu{})
		return
	}
	a.adopt(at)
	d := newDebrief(a, at)
	if err != nil {
		d.doubt = sentence(err.Error())
	}
	a.show(d)
}

// adopt makes an attempt the one that is looked at.
func (a *App) adopt(at view.Attempt) {
	a.attempt, a.class = at, nil
	a.eyes = view.NewEyes(view.NewTable(at.Controls(), at.Signals()))
	a.eyes.Units = at.Info().Units
	a.eyes.See(at.Reading())
	a.focus = ""
}

// takeOver begins a rehearsal from a moment of an attempt.
func (a *App) takeOver(at view.Attempt, moment world.Tick) {
	next, err := a.opt.Store.TakeOver(at, moment)
	if err != nil {
		a.say(sentence(err.Error()))
		return
	}
	a.take(next)
}

// practice begins a rehearsal where a step's turn came in the newest attempt that missed it.
func (a *App) practice(drill, step string) {
	o, from, err := a.opt.Store.Practice(drill, step)
	if err != nil {
		a.say(sentence(err.Error()))
		return
	}
	a.openSlow(o, func(at view.Attempt, err error) {
		if at == nil {
			a.debriefOf(at, err)
			return
		}
		a.takeOver(at, from(at))
	})
}
