// Package assets is what the programs carry with them besides code: the typeface of plates, dials and
// text (B612, drawn for instruments, SIL Open Font License; see fonts/B612-OFL.txt).
package assets

import (
	"embed"
	"io/fs"
)

//go:embed fonts
var files embed.FS

// FS holds the files under their paths from this folder.
var FS fs.FS = files
