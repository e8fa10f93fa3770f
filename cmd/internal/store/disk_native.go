//go:build !js

package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"
)

// Open opens the store in a folder, which is made when the first attempt is kept.
func Open(folder string) (*Store, error) {
	if folder == "" {
		return nil, errors.New("the setting attempts is empty, expected a folder")
	}
	return &Store{disk: folderDisk(folder)}, nil
}

// folderDisk is a folder of folders.
type folderDisk string

func (d folderDisk) path(name string) string {
	return filepath.Join(string(d), filepath.FromSlash(name))
}

func (d folderDisk) ids() ([]string, error) {
	list, err := os.ReadDir(string(d)) // sorted by name, which begins with the time
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	var ids []string
	for _, e := range list {
		if e.IsDir() && shape.MatchString(e.Name()) {
			ids = append(ids, e.Name())
		}
	}
	return ids, err
}

func (d folderDisk) make(id string) error {
	if err := os.MkdirAll(string(d), 0o755); err != nil {
		return err
	}
	return os.Mkdir(d.path(id), 0o755)
}

func (d folderDisk) has(name string) bool {
	_, err := os.Stat(d.path(name))
	return err == nil
}

func (d folderDisk) read(name string) ([]byte, error) { return os.ReadFile(d.path(name)) }

func (d folderDisk) write(name string, data []byte) error {
	to := d.path(name)
	f, err := os.CreateTemp(filepath.Dir(to), ".writing-*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name())
	_, err = f.Write(data)
	if err = errors.Join(err, f.Chmod(0o644), f.Sync(), f.Close()); err != nil {
		return err
	}
	return durable(to, os.Rename(f.Name(), to))
}

func (d folderDisk) rename(from, to string) error {
	return durable(d.path(to), os.Rename(d.path(from), d.path(to)))
}

// durable makes a rename last: the folder itself is synced, where the system can do that.
func durable(path string, err error) error {
	if err != nil {
		return err
	}
	if dir, err := os.Open(filepath.Dir(path)); err == nil {
		dir.Sync()
		dir.Close()
	}
	return nil
}

func (d folderDisk) remove(id string) error {
	if _, err := os.Stat(d.path(id)); err != nil {
		return err
	}
	return os.RemoveAll(d.path(id))
}

func (d folderDisk) journal(name string) (growing, error) {
	f, err := os.OpenFile(d.path(name), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return nil, err
	}
	return &growingFile{f: f}, durable(d.path(name), nil)
}

// aliveS is how often a journal that does not grow is touched, so that another program sees that its
// writer lives.
const aliveS = 1.0

func (d folderDisk) fresh(name string) bool {
	info, err := os.Stat(d.path(name))
	return err == nil && time.Since(info.ModTime()).Seconds() < 3*aliveS
}

type growingFile struct {
	f       *os.File
	touched time.Time
}

func (g *growingFile) add(p []byte) error {
	g.touched = time.Now()
	if _, err := g.f.Write(p); err != nil {
		return err
	}
	return g.f.Sync()
}

func (g *growingFile) beat() {
	if now := time.Now(); now.Sub(g.touched).Seconds() >= aliveS {
		g.touched = now
		os.Chtimes(g.f.Name(), now, now)
	}
}

func (g *growingFile) close() error { return g.f.Close() }
