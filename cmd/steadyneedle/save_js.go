package main

import (
	"bytes"
	"errors"
	"io"
	"syscall/js"

	"steadyneedle/render/report"
)

// createCopy fails: a page writes no files.
func createCopy(string) (io.WriteCloser, error) { return nil, errors.New("a browser writes no files") }

// save offers a sheet as a download.
func (f *front) save(s *report.Sheet) (string, error) {
	var b bytes.Buffer
	if err := report.HTML(&b, s); err != nil {
		return "", err
	}
	const name = "sheet.html"
	parts := js.Global().Get("Array").New(b.String())
	kind := map[string]any{"type": "text/html"}
	blob := js.Global().Get("Blob").New(parts, js.ValueOf(kind))
	url := js.Global().Get("URL").Call("createObjectURL", blob)
	link := js.Global().Get("document").Call("createElement", "a")
	link.Set("href", url)
	link.Set("download", name)
	link.Call("click")
	return name, nil
}
