package drive

import (
	"strings"

	"steadyneedle/render/app"
	"steadyneedle/render/draw"
)

// What fingers do in the real window: keys and pointer, each waited for until it is felt.

// press presses a key, with Shift or Ctrl where the name begins so.
func (d *driver) press(name string) {
	d.t.Helper()
	plain := name
	for _, with := range []string{"Shift", "Ctrl"} {
		rest, ok := strings.CutPrefix(plain, with+"+")
		if !ok {
			continue
		}
		plain = rest
		d.felt(with, func() { d.x.key(with, true) })
		defer d.felt(with+" up", func() { d.x.key(with, false) })
	}
	d.felt(name, func() { d.x.key(plain, true) })
	d.felt(name+" up", func() { d.x.key(plain, false) })
}

// typeIn types characters that need no Shift.
func (d *driver) typeIn(text string) {
	d.t.Helper()
	for _, r := range text {
		name := string(r)
		if r == ' ' {
			name = "Space"
		}
		d.press(name)
	}
}

// point brings the pointer to a place in the window.
func (d *driver) point(x, y float64) {
	d.t.Helper()
	px, py := d.left+int(x+0.5), d.top+int(y+0.5)
	if px == d.px && py == d.py {
		return
	}
	d.px, d.py = px, py
	d.felt("the pointer", func() { d.x.move(px, py) })
}

func (d *driver) hold()    { d.t.Helper(); d.felt("the button", func() { d.x.button(1, true) }) }
func (d *driver) release() { d.t.Helper(); d.felt("the button up", func() { d.x.button(1, false) }) }

// notch turns the wheel under the pointer by one notch.
func (d *driver) notch(up bool) {
	d.t.Helper()
	n := byte(5)
	if up {
		n = 4
	}
	d.felt("the wheel", func() { d.x.button(n, true); d.x.button(n, false) })
}

func (d *driver) click(key string) {
	d.t.Helper()
	it := d.item(key)
	d.clickAt(it.X+it.W/2, it.Y+it.H/2)
}

func (d *driver) clickAt(x, y float64) {
	d.t.Helper()
	d.point(x, y)
	d.hold()
	d.release()
}

// focus goes to an item by Tab, Shift-Tab and Ctrl with arrows, the shortest way.
func (d *driver) focus(key string) {
	d.t.Helper()
	for range 60 {
		d.look()
		if d.now.Focus == key {
			return
		}
		d.press(d.way(key))
	}
	d.t.Fatalf("the keyboard never reached %s on screen %s; focus %s", key, d.now.Screen, d.now.Focus)
}

var arrows = map[string]draw.Point{"Left": {X: -1}, "Right": {X: 1}, "Up": {Y: -1}, "Down": {Y: 1}}

// way is the first key of the shortest way from the focus to an item.
func (d *driver) way(key string) string {
	d.t.Helper()
	items := d.now.Items
	boxes := make([]draw.Rect, len(items))
	from, to := -1, -1
	for i, it := range items {
		boxes[i] = draw.Rect{X: it.X, Y: it.Y, W: it.W, H: it.H}
		if it.Key == d.now.Focus {
			from = i
		}
		if it.Key == key {
			to = i
		}
	}
	if to < 0 {
		d.t.Fatalf("nothing is called %q on screen %s", key, d.now.Screen)
	}
	n := len(items)
	if from < 0 {
		if to > n/2 {
			return "Shift+Tab"
		}
		return "Tab"
	}
	first := make([]string, n)
	queue := []int{from}
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		try := func(next int, name string) {
			if next < 0 || next == from || first[next] != "" {
				return
			}
			if first[next] = first[at]; at == from {
				first[next] = name
			}
			queue = append(queue, next)
		}
		try((at+1)%n, "Tab")
		try((at+n-1)%n, "Shift+Tab")
		for _, name := range []string{"Left", "Right", "Up", "Down"} {
			try(app.Toward(boxes, at, arrows[name]), "Ctrl+"+name)
		}
		if first[to] != "" {
			return first[to]
		}
	}
	d.t.Fatalf("no way leads from %s to %s", d.now.Focus, key)
	return ""
}
