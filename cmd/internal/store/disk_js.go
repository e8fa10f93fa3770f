package store

import (
	"bytes"
	"compress/flate"
	"encoding/base64"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"
	"syscall/js"
)

// Open opens the store in the browser's storage for this page. It fails where the browser gives none.
// folder is not used.
func Open(string) (*Store, error) {
	local, err := guarded(func() js.Value { return js.Global().Get("localStorage") })
	if err != nil || local.IsUndefined() || local.IsNull() {
		return nil, errors.New("this browser keeps nothing for this page")
	}
	return &Store{disk: pageDisk{local}, quick: true}, nil
}

// prefix of our keys. An attempt's own key marks its folder; files lie under ID/FILE, a journal's pieces
// under ID/FILE#NUMBER.
const prefix = "steadyneedle/attempts/"

// pageDisk is the browser's storage: keys and texts, a few megabytes in all, so that files are packed.
type pageDisk struct{ local js.Value }

// guarded turns what JavaScript throws into an error.
func guarded(f func() js.Value) (v js.Value, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("the browser's storage: %v", r)
		}
	}()
	return f(), nil
}

func (d pageDisk) get(key string) (string, bool) {
	v, err := guarded(func() js.Value { return d.local.Call("getItem", prefix+key) })
	if err != nil || v.IsNull() || v.IsUndefined() {
		return "", false
	}
	return v.String(), true
}

func (d pageDisk) set(key, text string) error {
	_, err := guarded(func() js.Value { return d.local.Call("setItem", prefix+key, text) })
	if err != nil {
		return errors.New("the browser has no room for more; throw away attempts that are no longer wanted")
	}
	return nil
}

func (d pageDisk) drop(key string) {
	guarded(func() js.Value { return d.local.Call("removeItem", prefix+key) })
}

// keys lists our keys, without the prefix, in order.
func (d pageDisk) keys() []string {
	var list []string
	for i := range d.local.Get("length").Int() {
		if key, ours := strings.CutPrefix(d.local.Call("key", i).String(), prefix); ours {
			list = append(list, key)
		}
	}
	slices.Sort(list)
	return list
}

func (d pageDisk) ids() ([]string, error) {
	var ids []string
	for _, key := range d.keys() {
		if shape.MatchString(key) {
			ids = append(ids, key)
		}
	}
	return ids, nil
}

func (d pageDisk) make(id string) error {
	if _, there := d.get(id); there {
		return fs.ErrExist
	}
	return d.set(id, "attempt")
}

func (d pageDisk) has(name string) bool {
	if _, there := d.get(name); there {
		return true
	}
	_, there := d.get(piece(name, 0))
	return there
}

func piece(name string, n int) string { return fmt.Sprintf("%s#%06d", name, n) }

func (d pageDisk) read(name string) ([]byte, error) {
	if text, there := d.get(name); there {
		return unpack(text)
	}
	var all []byte
	for n := 0; ; n++ {
		text, there := d.get(piece(name, n))
		if !there && n == 0 {
			return nil, fs.ErrNotExist
		}
		if !there {
			return all, nil
		}
		part, err := unpack(text)
		if err != nil {
			return nil, err
		}
		all = append(all, part...)
	}
}

func pack(data []byte) string {
	var b bytes.Buffer
	z, _ := flate.NewWriter(&b, flate.DefaultCompression) // the level is a good one
	z.Write(data)
	z.Close()
	return base64.StdEncoding.EncodeToString(b.Bytes())
}

func unpack(text string) ([]byte, error) {
	packed, err := base64.StdEncoding.DecodeString(text)
	if err != nil {
		return nil, err
	}
	return io.ReadAll(flate.NewReader(bytes.NewReader(packed)))
}

func (d pageDisk) write(name string, data []byte) error { return d.set(name, pack(data)) }

func (d pageDisk) rename(from, to string) error {
	data, err := d.read(from)
	if err != nil {
		return err
	}
	if err := d.write(to, data); err != nil {
		return err
	}
	d.dropAll(from)
	return nil
}

// dropAll removes a file and its pieces, the last piece first: what is left is a whole beginning.
func (d pageDisk) dropAll(name string) {
	keys := d.keys()
	slices.Reverse(keys)
	for _, key := range keys {
		if key == name || strings.HasPrefix(key, name+"#") {
			d.drop(key)
		}
	}
}

func (d pageDisk) remove(id string) error {
	if _, there := d.get(id); !there {
		return fs.ErrNotExist
	}
	for _, key := range d.keys() {
		if key == id || strings.HasPrefix(key, id+"/") {
			d.drop(key)
		}
	}
	return nil
}

func (d pageDisk) journal(name string) (growing, error) { return &pieces{disk: d, name: name}, nil }

// fresh is not known between two pages of one browser.
func (d pageDisk) fresh(string) bool { return false }

// pieces is a journal: a key for each piece, for a text cannot be added to.
type pieces struct {
	disk pageDisk
	name string
	n    int
}

func (p *pieces) add(data []byte) error {
	err := p.disk.set(piece(p.name, p.n), pack(data))
	p.n++
	return err
}

func (p *pieces) beat()        {}
func (p *pieces) close() error { return nil }
