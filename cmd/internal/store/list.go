package store

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"steadyneedle/render/report"
)

// Item is one attempt that is kept.
type Item struct {
	ID         string
	Sheet      *report.Sheet // nil: unfinished
	Unfinished bool          // a journal was left behind
}

// List lists what is kept, oldest first. What cannot be read is left out and told of in the error. An
// attempt that is being worked now is left out.
func (s *Store) List() ([]Item, error) {
	ids, err := s.disk.ids()
	if err != nil {
		return nil, err
	}
	var list []Item
	var bad []error
	for _, id := range ids {
		it, err := s.item(id)
		switch {
		case err != nil:
			bad = append(bad, err)
		case it.Sheet != nil || it.Unfinished:
			list = append(list, it)
		}
	}
	return list, errors.Join(bad...)
}

func (s *Store) item(id string) (Item, error) {
	it := Item{ID: id}
	if s.disk.has(id + "/" + journalFile) {
		if s.disk.fresh(id + "/" + journalFile) {
			return it, nil
		}
		if !s.disk.has(id + "/" + sheetFile) {
			it.Unfinished = true
			return it, nil
		}
		// Everything was written but the last rename.
		if err := s.disk.rename(id+"/"+journalFile, id+"/"+tapeFile); err != nil {
			return it, s.told(id, err)
		}
	}
	if !s.disk.has(id+"/"+tapeFile) || !s.disk.has(id+"/"+sheetFile) {
		return it, nil // a folder of nobody's
	}
	var err error
	it.Sheet, err = s.Sheet(id)
	return it, err
}

// Find completes an ID from its beginning, or from "last".
func (s *Store) Find(word string) (string, error) {
	ids, err := s.disk.ids()
	if err != nil {
		return "", err
	}
	if word == "last" && len(ids) > 0 {
		return ids[len(ids)-1], nil
	}
	if slices.Contains(ids, word) {
		return word, nil
	}
	var found []string
	for _, id := range ids {
		if word != "" && strings.HasPrefix(id, word) {
			found = append(found, id)
		}
	}
	switch len(found) {
	case 1:
		return found[0], nil
	case 0:
		return "", fmt.Errorf("attempt %s %w (needle records list names those that are)", word, ErrUnknown)
	}
	return "", fmt.Errorf("%s is the beginning of %d attempts, expected one", word, len(found))
}
