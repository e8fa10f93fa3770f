package files

import (
	"errors"
	"fmt"
	"io"
	"os"

	"steadyneedle/scenarios/reader"
)

// MaxTape is the most that is read of a recording, bytes: an attempt of hours with hands that never rest.
const MaxTape = 256 << 20

// Read reads a file, and no more of it than most bytes. What is wrong is reader.Faults.
func Read(name string, most int64) ([]byte, error) {
	fault := func(format string, args ...any) error {
		return reader.Faults{{File: name, Line: 1, Col: 1, Msg: fmt.Sprintf(format, args...)}}
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, fault("cannot be read, expected a file (%v)", cause(err))
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, fault("is a folder, expected a file")
	}
	text, err := io.ReadAll(io.LimitReader(f, most))
	if err != nil {
		return nil, fault("cannot be read (%v)", cause(err))
	}
	return text, nil
}

// cause is an error of the file system without the paths, which the message has already.
func cause(err error) error {
	var p *os.PathError
	var l *os.LinkError
	switch {
	case errors.As(err, &p):
		return p.Err
	case errors.As(err, &l):
		return l.Err
	}
	return err
}
