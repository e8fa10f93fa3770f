package scenarios

import (
	"embed"
	"io/fs"
)

//go:embed apparatus demonstrations drills operators rules
var shipped embed.FS

// Files are the shipped files.
func Files() fs.FS { return shipped }
