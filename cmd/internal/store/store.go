package store

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"regexp"
	"slices"
	"time"

	"steadyneedle/render/report"
	"steadyneedle/sim/tape"
)

// Files of an attempt.
const (
	journalFile = "journal.tape"
	tapeFile    = "attempt.tape"
	sheetFile   = "sheet.json"
	framesFile  = "frames.gz"
	ownFile     = "own.json"
)

// ErrUnknown is what an ID that is not kept wraps.
var ErrUnknown = errors.New("is not kept")

// disk is where files lie: name is ID/FILE. A file that is not there gives fs.ErrNotExist.
type disk interface {
	// ids lists the attempts, oldest first.
	ids() ([]string, error)
	// make makes the folder of a new attempt; fs.ErrExist if there is one.
	make(id string) error
	has(name string) bool
	read(name string) ([]byte, error)
	// write puts a whole file there, or leaves what was there before.
	write(name string, data []byte) error
	rename(from, to string) error
	// journal begins a file that grows.
	journal(name string) (growing, error)
	// fresh reports whether a journal is being written by somebody.
	fresh(name string) bool
	remove(id string) error
}

// growing is a file that grows; what add was given is durable when it returns.
type growing interface {
	add([]byte) error
	// beat says that the writer lives.
	beat()
	close() error
}

// Store is where attempts are kept. Its methods are not for concurrent use.
type Store struct {
	disk disk
	// quick leaves out what can be made again, where room is scarce
	quick bool
}

// shape of an ID: when it was begun, the drill, and a number if there are several.
var shape = regexp.MustCompile(`^\d{8}-\d{6}-[a-z0-9-]+$`)

// Begin makes room for a new attempt and begins its journal.
func (s *Store) Begin(drill string, now time.Time) (*Journal, error) {
	base := now.Format("20060102-150405-") + drill
	for n := 1; ; n++ {
		id := base
		if n > 1 {
			id = fmt.Sprintf("%s-%d", base, n)
		}
		err := s.disk.make(id)
		if errors.Is(err, fs.ErrExist) && n < 100 {
			continue
		}
		if err != nil {
			return nil, fmt.Errorf("the attempt cannot be kept: %w", err)
		}
		g, err := s.disk.journal(id + "/" + journalFile)
		if err != nil {
			return nil, fmt.Errorf("the attempt cannot be kept: %w", err)
		}
		return newJournal(id, g), nil
	}
}

// Finish keeps an attempt that is over: its journal becomes its recording. frames may be nil.
func (s *Store) Finish(j *Journal, sheet *report.Sheet, frames func(io.Writer, []byte) error) error {
	if err := j.Close(); err != nil {
		return err
	}
	return s.keep(j.ID, sheet, frames)
}

// Settle keeps an attempt whose journal was left behind.
func (s *Store) Settle(id string, sheet *report.Sheet) error { return s.keep(id, sheet, nil) }

func (s *Store) keep(id string, sheet *report.Sheet, frames func(io.Writer, []byte) error) error {
	if err := s.writeJSON(id, sheetFile, sheet); err != nil {
		return err
	}
	if frames != nil && !s.quick {
		recording, err := s.disk.read(id + "/" + journalFile)
		if err != nil {
			return s.told(id, err)
		}
		var b bytes.Buffer
		z, _ := gzip.NewWriterLevel(&b, gzip.BestSpeed) // the level is a good one
		if err := errors.Join(frames(z, recording), z.Close()); err != nil {
			return err
		}
		if err := s.disk.write(id+"/"+framesFile, b.Bytes()); err != nil {
			return s.told(id, err)
		}
	}
	if err := s.disk.rename(id+"/"+journalFile, id+"/"+tapeFile); err != nil {
		return s.told(id, err)
	}
	return nil
}

func (s *Store) writeJSON(id, file string, v any) error {
	text, err := json.MarshalIndent(v, "", " ")
	if err != nil {
		return err
	}
	return s.told(id, s.disk.write(id+"/"+file, append(text, '\n')))
}

// told names the attempt in an error.
func (s *Store) told(id string, err error) error {
	switch {
	case err == nil:
		return nil
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("attempt %s %w", id, ErrUnknown)
	}
	return fmt.Errorf("attempt %s: %w", id, err)
}

// Sheet reads an attempt's sheet, with the candidate's own marks.
func (s *Store) Sheet(id string) (*report.Sheet, error) {
	text, err := s.read(id, sheetFile)
	if errors.Is(err, ErrUnknown) && shape.MatchString(id) && s.disk.has(id+"/"+journalFile) {
		return nil, fmt.Errorf("attempt %s was cut off and has no sheet yet, expected one that was ended (in the window it can be opened and kept)", id)
	}
	if err != nil {
		return nil, err
	}
	sheet, err := report.Parse(text)
	if err != nil {
		return nil, fmt.Errorf("attempt %s, %s: %w", id, sheetFile, err)
	}
	own, err := s.read(id, ownFile)
	switch {
	case errors.Is(err, ErrUnknown):
		return sheet, nil
	case err != nil:
		return nil, err
	}
	sheet.Own = new(report.Own)
	if err := json.Unmarshal(own, sheet.Own); err != nil {
		return nil, fmt.Errorf("attempt %s, %s: %w", id, ownFile, err)
	}
	return sheet, nil
}

// SetOwn keeps how the candidates marked themselves.
func (s *Store) SetOwn(id string, own *report.Own) error { return s.writeJSON(id, ownFile, own) }

// Rule keeps the evaluator's ruling: its lines after the recording's end, which stays as it is, and on
// the sheet. lines writes them. What was ruled before is replaced.
func (s *Store) Rule(id string, ruling *report.Ruling, lines func(io.Writer) error) error {
	text, err := s.read(id, tapeFile)
	if err != nil {
		return err
	}
	whole, ok := tape.Ended(text)
	if !ok {
		return fmt.Errorf("attempt %s: its recording breaks off, and takes no ruling", id)
	}
	sheet, err := s.Sheet(id)
	if err != nil {
		return err
	}
	b := bytes.NewBuffer(slices.Clone(whole))
	if err := lines(b); err != nil {
		return err
	}
	if err := s.disk.write(id+"/"+tapeFile, b.Bytes()); err != nil {
		return s.told(id, err)
	}
	sheet.Ruling = ruling
	return s.writeJSON(id, sheetFile, sheet)
}

// Tape reads an attempt's recording, or the journal that was left of it up to its last whole line.
func (s *Store) Tape(id string) ([]byte, error) {
	text, err := s.read(id, tapeFile)
	if !errors.Is(err, ErrUnknown) {
		return text, err
	}
	if text, err = s.read(id, journalFile); err != nil {
		return nil, err
	}
	return text[:bytes.LastIndexByte(text, '\n')+1], nil
}

// Frames reads an attempt's key frames; nil where there are none that can be read.
func (s *Store) Frames(id string) []byte {
	packed, err := s.read(id, framesFile)
	if err != nil {
		return nil
	}
	z, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil
	}
	data, err := io.ReadAll(io.LimitReader(z, 1<<30))
	if err != nil {
		return nil
	}
	return data
}

// Remove throws an attempt away.
func (s *Store) Remove(id string) error {
	if !shape.MatchString(id) {
		return fmt.Errorf("attempt %s %w", id, ErrUnknown)
	}
	return s.told(id, s.disk.remove(id))
}

func (s *Store) read(id, file string) ([]byte, error) {
	if !shape.MatchString(id) {
		return nil, fmt.Errorf("attempt %s %w", id, ErrUnknown)
	}
	data, err := s.disk.read(id + "/" + file)
	if p := (*fs.PathError)(nil); errors.As(err, &p) && !errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("attempt %s, %s: cannot be read (%w)", id, file, p.Err)
	}
	return data, s.told(id, err)
}
