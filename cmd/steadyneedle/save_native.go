//go:build !js

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"time"

	"steadyneedle/render/report"
)

// saver writes a sheet into the folder where the program was started.
func saver() func(*report.Sheet) (string, error) {
	return func(s *report.Sheet) (string, error) {
		name := fmt.Sprintf("sheet-%s.html", time.Now().Format("2006-01-02-150405"))
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
		if err != nil {
			return "", err
		}
		if err := report.HTML(f, s); err != nil {
			f.Close()
			return "", err
		}
		if full, err := filepath.Abs(name); err == nil {
			name = full
		}
		return name, f.Close()
	}
}
