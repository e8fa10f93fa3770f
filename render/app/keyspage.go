package app

import "steadyneedle/render/draw"

// keysPage lists every key. It lies over any screen; the world runs on under it as it would there.
type keysPage struct{ back screen }

// keyGroup is some keys that belong together.
type keyGroup struct {
	title string
	keys  [][2]string
}

// allKeys is every key there is; what a control takes beyond these, its own line on the lower strip says.
var allKeys = []keyGroup{
	{"Working", [][2]string{
		{"Tab, Shift-Tab", "the next control, the one before"},
		{"Ctrl and an arrow", "the control that lies that way"},
		{"↑↓, with Shift", "more or less; fine"},
		{"Page Up, Page Down", "in large steps"},
		{"Home, End", "one end, the other"},
		{"Enter, Space", "throw, press, choose; a push button: hold"},
	}},
	{"Going and speaking", [][2]string{
		{"1, 2, 3", "cab, panel, street plan"},
		{"S", "say or signal; type to narrow the list"},
		{"M", "everything that was said"},
		{"L", "look round, or in the mirror"},
		{"H", "ask the prompter for the next step"},
		{"C", "calculation sheet"},
		{"Esc", "the menu, or one step back"},
	}},
	{"Seeing and hearing", [][2]string{
		{"F1", "what is this?"},
		{"F2", "these keys"},
		{"F3", "colors: by the hour, day, night, contrast"},
		{"F4", "sound off and on"},
		{"Ctrl +, Ctrl −, Ctrl 0", "larger, smaller, fill the window"},
		{"F11", "full screen"},
	}},
	{"For the evaluator", [][2]string{
		{"F8", "drop a timed mark"},
		{"F6", "stop for safety"},
		{"F7", "void without fault: a real call came in"},
		{"E, G", "at an unsafe act: end it, go on"},
	}},
}

// showKeys are those of a demonstration.
var showKeys = []keyGroup{
	{"Going on", [][2]string{
		{"Space", "go on, run what was asked, begin"},
		{"Figures, ↑ ↓", "hands that go up for an answer"},
		{"F", "freeze; again: go on"},
		{"+, −", "faster, slower"},
		{".", "a tenth of a second"},
		{"Esc", "leave"},
	}},
	{"Seeing", [][2]string{
		{"1, 2, 3, 4", "which things stand side by side"},
		{"N", "pump curve, suction head, both"},
		{"Left, Right", "read the plots off a second earlier, later"},
		{"P", "the whole panel; Esc comes back"},
		{"Page Down, Page Up", "the rest of a long text below"},
	}},
	{"Another way", [][2]string{
		{"B", "back ten seconds; what is left stays, thin"},
		{"O", "change over to what was left"},
		{"T", "take over; again: let the script go on"},
	}},
	{"Making things go wrong", [][2]string{
		{"X", "the list: faults, nozzles, people, voices"},
		{"Enter, Left, Right", "there: now; how much"},
		{"A, D", "there: arm for later; disarm"},
		{"Ctrl and 1 to 9", "arm the first faults unseen, for what was"},
		{"", "picked last, or in 15 s"},
	}},
}

// inClass reports whether the screen below is one of a demonstration's own.
func (p *keysPage) inClass() bool {
	switch p.back.(type) {
	case *show, *rigging, *arming:
		return true
	}
	return false
}

// groups are the keys that the screen below takes.
func (p *keysPage) groups() []keyGroup {
	if p.inClass() {
		return showKeys
	}
	return allKeys
}

// reach says what hands can do without the other device.
func (p *keysPage) reach() string {
	if p.inClass() {
		return "Everything can be done by keyboard alone; what stands on the screen, by pointer too."
	}
	return "Everything can be done by keyboard alone, and by pointer alone."
}

func (p *keysPage) key() string { return "keys" }

func (p *keysPage) layout(*App) {}

func (p *keysPage) closeBox(a *App) draw.Rect {
	return draw.Around(draw.Pt(a.size.X/2, a.size.Y-44), 200, 42)
}

func (p *keysPage) items(a *App) []Item {
	return []Item{{Key: "close", Box: p.closeBox(a), Label: "Back", Do: func() { p.leave(a) }}}
}

func (p *keysPage) leave(a *App) {
	if s, ok := p.back.(*place); ok {
		a.resume(s)
		return
	}
	a.show(p.back)
}

func (p *keysPage) still(a *App, cv *draw.Canvas) {
	th := a.theme
	w := min(1180, a.size.X-60)
	x := (a.size.X - w) / 2
	top := max(0, (a.size.Y-720)/2)
	cv.Text(draw.Pt(x, top+66), draw.Left, draw.Style{Size: 34, Weight: draw.Bold, Color: th.Text}, "Keys")
	cv.Text(draw.Pt(x+100, top+66), draw.Left, draw.Style{Size: 17, Color: th.Soft}, p.reach())
	half := (w - 24) / 2
	for i, g := range p.groups() {
		r := draw.Rect{X: x + float64(i%2)*(half+24), Y: top + 96 + float64(i/2)*282, W: half, H: 262}
		cv.Fill(draw.Round(r, 10), draw.Solid(th.CardHi))
		cv.Fill(draw.Frame(r, 10, 1), draw.Solid(th.Rule))
		cv.Text(draw.Pt(r.X+20, r.Y+34), draw.Left, draw.Style{Size: 19, Weight: draw.Bold, Color: th.Say}, g.title)
		for k, row := range g.keys {
			y := r.Y + 66 + 30*float64(k)
			cv.Text(draw.Pt(r.X+20, y), draw.Left, draw.Style{Size: 17, Weight: draw.Bold, Color: th.CardText}, row[0])
			cv.Text(draw.Pt(r.X+222, y), draw.Left, draw.Style{Size: 17, Color: th.CardSoft}, row[1])
		}
	}
}

func (p *keysPage) moving(a *App) { a.button(p.closeBox(a), "Back", false) }

func (p *keysPage) onKey(a *App, k Key) bool {
	if k.Down && (k.Name == "Escape" || k.Name == "F2") {
		p.leave(a)
		return true
	}
	return false
}
