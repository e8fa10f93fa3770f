package tape

import (
	"bytes"
	"strings"
	"testing"
)

// A note comes back as it was written, on one line; one without its word is refused.
func TestNotes(t *testing.T) {
	var b bytes.Buffer
	w, err := NewWriter(&b, header(), controls)
	if err != nil {
		t.Fatal(err)
	}
	w.Note(5, "hint", "Open\nthe intake.")
	w.Note(6, "help", "")
	if before := b.Len(); before == 0 || strings.Contains(b.String(), "hint") {
		t.Error("notes wait for their second, or for Flush")
	}
	w.Flush()
	if !strings.HasSuffix(b.String(), "n 5 hint Open the intake.\nn 6 help \n") {
		t.Errorf("%q", b.String()[b.Len()-60:])
	}
	if err := w.End(7, 7); err != nil {
		t.Fatal(err)
	}
	_, lines, err := readAll(b.String())
	if err != nil || len(lines) != 3 {
		t.Fatalf("%+v, %v", lines, err)
	}
	if n := lines[0]; n.Kind != Note || n.At != 5 || n.About != "hint" || n.Text != "Open the intake." {
		t.Errorf("%+v", n)
	}
	if n := lines[1]; n.Kind != Note || n.About != "help" || n.Text != "" {
		t.Errorf("%+v", n)
	}
	_, _, err = readAll(strings.Replace(b.String(), "n 5 hint Open the intake.", "n 5", 1))
	if err == nil || !strings.Contains(err.Error(), "a note has a word") {
		t.Errorf("%v", err)
	}
}
