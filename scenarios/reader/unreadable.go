package reader

import (
	"errors"
	"fmt"
	"io/fs"
)

// Unreadable is the fault of a file that is there and cannot be read: it is a folder, or err says why.
func Unreadable(name string, folder bool, err error) Faults {
	what := "is a folder, expected a file"
	if !folder {
		if p := (*fs.PathError)(nil); errors.As(err, &p) {
			err = p.Err // without the path, which the fault has already
		}
		what = fmt.Sprintf("cannot be read, expected a file (%v)", err)
	}
	return Faults{{File: name, Line: 1, Col: 1, Msg: what}}
}

// TooLong is the fault of a file of more than most bytes.
func TooLong(name string, most int) Faults {
	return Faults{{File: name, Line: 1, Col: 1, Msg: fmt.Sprintf("file is too long, expected at most %d bytes", most)}}
}
