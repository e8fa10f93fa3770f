package drive

import (
	"testing"

	"github.com/jezek/xgb"
	"github.com/jezek/xgb/xproto"
	"github.com/jezek/xgb/xtest"
)

// xserver presses keys and moves the pointer of a display, as hands would.
type xserver struct {
	t    *testing.T
	conn *xgb.Conn
	root xproto.Window
	keys map[xproto.Keysym]xproto.Keycode
}

// Keysyms of keys that are no letters, by the names that the interface knows them under.
var keysyms = map[string]xproto.Keysym{
	"Tab": 0xff09, "Enter": 0xff0d, "Escape": 0xff1b, "Backspace": 0xff08, "Home": 0xff50, "Left": 0xff51, "Up": 0xff52,
	"Right": 0xff53, "Down": 0xff54, "PageUp": 0xff55, "PageDown": 0xff56, "End": 0xff57, "Shift": 0xffe1, "Ctrl": 0xffe3, "Space": 0x20,
}

func openX(t *testing.T, display string) *xserver {
	t.Helper()
	conn, err := xgb.NewConnDisplay(display)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(conn.Close)
	if err := xtest.Init(conn); err != nil {
		t.Fatal(err)
	}
	setup := xproto.Setup(conn)
	x := &xserver{t: t, conn: conn, root: setup.DefaultScreen(conn).Root, keys: map[xproto.Keysym]xproto.Keycode{}}
	count := byte(setup.MaxKeycode - setup.MinKeycode + 1)
	m, err := xproto.GetKeyboardMapping(conn, setup.MinKeycode, count).Reply()
	if err != nil {
		t.Fatal(err)
	}
	for i := range int(count) {
		sym := m.Keysyms[i*int(m.KeysymsPerKeycode)] // without Shift
		if _, there := x.keys[sym]; !there && sym != 0 {
			x.keys[sym] = setup.MinKeycode + xproto.Keycode(i)
		}
	}
	return x
}

func (x *xserver) fake(kind, detail byte, px, py int) {
	x.t.Helper()
	if err := xtest.FakeInputChecked(x.conn, kind, detail, 0, x.root, int16(px), int16(py), 0).Check(); err != nil {
		x.t.Fatal(err)
	}
}

// key presses or releases a key: a name, or a character that needs no Shift.
func (x *xserver) key(name string, down bool) {
	x.t.Helper()
	sym, ok := keysyms[name]
	if !ok && len(name) == 1 {
		sym = xproto.Keysym(name[0])
	}
	code, ok := x.keys[sym]
	if !ok {
		x.t.Fatalf("this keyboard has no key %q", name)
	}
	kind := byte(xproto.KeyRelease)
	if down {
		kind = xproto.KeyPress
	}
	x.fake(kind, byte(code), 0, 0)
}

// button presses or releases a button of the mouse; 4 and 5 are the wheel, up and down.
func (x *xserver) button(n byte, down bool) {
	x.t.Helper()
	kind := byte(xproto.ButtonRelease)
	if down {
		kind = xproto.ButtonPress
	}
	x.fake(kind, n, 0, 0)
}

// move brings the pointer to a place on the screen.
func (x *xserver) move(px, py int) { x.t.Helper(); x.fake(xproto.MotionNotify, 0, px, py) }

// find is the upper left corner of the window that has a title.
func (x *xserver) find(title string) (left, top int, ok bool) {
	tree, err := xproto.QueryTree(x.conn, x.root).Reply()
	if err != nil {
		x.t.Fatal(err)
	}
	for _, w := range tree.Children {
		p, err := xproto.GetProperty(x.conn, false, w, xproto.AtomWmName, xproto.GetPropertyTypeAny, 0, 64).Reply()
		if err != nil || string(p.Value) != title {
			continue
		}
		at, err := xproto.TranslateCoordinates(x.conn, w, x.root, 0, 0).Reply()
		if err == nil {
			return int(at.DstX), int(at.DstY), true
		}
	}
	return 0, 0, false
}
