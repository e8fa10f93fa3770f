package app

import (
	"fmt"
	"strconv"

	"steadyneedle/render/draw"
)

// The list of rigging as it is seen and pointed at: a sheet over what the class sees, rows, and below them a
// band of buttons, one for each key.

const (
	riggingRowH = 30.0
	riggingTop  = 96.0
	riggingBand = 58.0 // of the buttons
)

func (r *rigging) sheet(a *App) draw.Rect {
	return draw.Rect{X: a.size.X/2 - 500, Y: 30, W: 1000, H: a.size.Y - 90}
}

// layout fits the list to the window: a larger one may hold rows above the first that showed.
func (r *rigging) layout(a *App) {
	r.back.layout(a)
	r.top = max(0, min(r.top, len(r.rows)-r.fits(a)))
	r.move(a, 0)
}

// fits is how many rows show.
func (r *rigging) fits(a *App) int {
	return int((r.sheet(a).Bottom() - riggingBand - riggingTop) / riggingRowH)
}

func (r *rigging) box(a *App, i int) draw.Rect {
	return draw.Rect{X: a.size.X/2 - 470, Y: riggingTop + float64(i)*riggingRowH, W: 940, H: riggingRowH - 4}
}

const rowKeys = "rigging-" // with which the key of every row begins

func rowKey(n int) string { return rowKeys + strconv.Itoa(n) }

// buttons are the band below the list.
func (r *rigging) buttons(a *App) []Item {
	list := []Item{
		{Key: "now", Label: "Now", Help: "Does it, says it, or sets it back, at once. A click on the chosen row does the same. Key Enter.", Do: func() { r.act(a) }},
		{Key: "less", Label: "Less", Help: "A tenth less; a choice before. Key Left.", Do: func() { r.nudge(a, -0.1) }},
		{Key: "more", Label: "More", Help: "A tenth more; a choice further. Key Right.", Do: func() { r.nudge(a, 0.1) }},
		{Key: "arm-later", Label: "Arm for later", Help: "Lets it come at a moment, or when a reading stands beyond a level. Key A.", Do: func() { r.arm(a) }},
		{Key: "disarm", Label: "Disarm", Help: "Forgets what was armed. Key D.", Do: r.disarm},
		{Key: "back", Label: "Back", Help: "Back to what the class sees. Key Esc.", Do: func() { r.leave(a) }},
	}
	s := r.sheet(a)
	x := s.X + 30
	for i := range list {
		w := draw.Style{Size: 16, Weight: draw.Bold}.Width(a.scale, list[i].Label) + 30
		list[i].Box = draw.Rect{X: x, Y: s.Bottom() - riggingBand + 10, W: w, H: 38}
		x += w + 8
	}
	back := &list[len(list)-1].Box
	back.X = s.Right() - 30 - back.W
	return list
}

func (r *rigging) items(a *App) []Item {
	items := r.buttons(a)
	for i := 0; i < r.fits(a) && r.top+i < len(r.rows); i++ {
		n := r.top + i
		items = append(items, Item{Key: rowKey(n), Box: r.box(a, i), Label: r.control(n).Label, Help: "A click chooses it; another does it now. Enter does it now; A arms it for a moment or a reading; D disarms it.",
			Do: func() { r.click(a, n) }, Pull: func(by float64) { r.slide(a, -by) }})
	}
	return items
}

func (r *rigging) still(a *App, cv *draw.Canvas) { r.back.still(a, cv) }

func (r *rigging) moving(a *App) {
	r.picture(a)
	r.back.announce(a)
}

// picture is the list without what is announced, which lies over all of it.
func (r *rigging) picture(a *App) {
	r.back.picture(a)
	th := a.theme
	whole := draw.Rect{W: a.size.X, H: a.size.Y}
	a.frame.Put(a.shelf.Get("rigging/veil", whole, func(cv *draw.Canvas) {
		cv.Fill(draw.Box(whole), draw.Solid(draw.Fade(th.Room, 0.7)))
		b := r.sheet(a)
		cv.Fill(draw.Round(b, 12), draw.Solid(th.Card))
		cv.Fill(draw.Frame(b, 12, 1.5), draw.Solid(th.Rule))
		cv.Text(draw.Pt(b.X+30, b.Y+40), draw.Left, draw.Style{Size: 22, Weight: draw.Bold, Color: th.Text}, "Set up: faults, nozzles, people, voices")
		cv.Text(draw.Pt(b.Right()-30, b.Y+40), draw.Right, draw.Style{Size: 15, Color: th.CardSoft}, "Enter: now · left, right: how much · A: arm for later · D: disarm · Esc: back")
	}), draw.Point{})
	for i := 0; i < r.fits(a) && r.top+i < len(r.rows); i++ {
		r.row(a, i, r.top+i)
	}
	list := r.buttons(a)
	for _, b := range list {
		a.button(b.Box, b.Label, false)
	}
	if len(r.rows) > r.fits(a) {
		left, right := list[len(list)-2].Box.Right(), list[len(list)-1].Box.X
		text := fmt.Sprintf("%d to %d of %d · wheel, drag or Page Down", r.top+1, min(len(r.rows), r.top+r.fits(a)), len(r.rows))
		a.shelf.Middle(&a.frame, draw.Pt((left+right)/2, list[0].Box.Center().Y), draw.Center, draw.Style{Size: 15, Color: th.CardSoft}, text)
	}
}

func (r *rigging) row(a *App, i, n int) {
	th, c, b := a.theme, r.control(n), r.box(a, i)
	if n == r.at {
		a.frame.Put(a.shelf.Get(fmt.Sprint("rigging/at/", th.Name), draw.Rect{W: b.W, H: b.H}, func(cv *draw.Canvas) {
			cv.Fill(draw.Round(draw.Rect{W: b.W, H: b.H}, 6), draw.Solid(th.CardHi))
			cv.Fill(draw.Frame(draw.Rect{W: b.W, H: b.H}, 6, 2), draw.Solid(th.Focus))
		}), draw.Pt(b.X, b.Y))
	}
	st := draw.Style{Size: 16, Color: th.CardText}
	group := "Fault"
	switch {
	case isNozzle(c):
		group = "Crew"
	case isPerson(c):
		group = "Street"
	case isOthersWord(c):
		group = "Says"
	}
	a.shelf.Middle(&a.frame, draw.Pt(b.X+14, b.Center().Y), draw.Left, draw.Style{Size: 15, Color: th.CardSoft}, group)
	const value = 500.0 // its column
	y := b.Center().Y
	a.shelf.Middle(&a.frame, draw.Pt(b.X+76, y), draw.Left, st, st.Fit(a.scale, value-86, c.Label))
	free := b.X + value + 20 + a.shelf.Middle(&a.frame, draw.Pt(b.X+value, y), draw.Left, st, r.back.valueText(r.rows[n], r.back.handOf(r.rows[n])))
	if on, ok := r.back.stage.Player().Armed(r.rows[n]); ok && n == r.at { // only where the cursor is: the class looks on
		st.Color = th.Caution
		right := b.Right() - 14
		a.shelf.Middle(&a.frame, draw.Pt(right, y), draw.Right, st, st.Fit(a.scale, right-free, r.back.waits(on)))
	}
}
