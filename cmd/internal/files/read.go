package files

import (
	"io"
	"os"

	"steadyneedle/scenarios/reader"
)

// MaxTape is the most that a recording may have, bytes: an attempt of hours with hands that never rest.
const MaxTape = 256 << 20

// Read reads a file of at most so many bytes. What is wrong is reader.Faults.
func Read(name string, most int) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, reader.Unreadable(name, false, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, reader.Unreadable(name, true, nil)
	}
	text, err := io.ReadAll(io.LimitReader(f, int64(most)+1))
	if err != nil {
		return nil, reader.Unreadable(name, false, err)
	}
	if len(text) > most {
		return nil, reader.TooLong(name, most)
	}
	return text, nil
}
