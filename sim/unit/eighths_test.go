package unit

import "testing"

func TestEighths(t *testing.T) {
	for v, want := range map[float64]string{0.75: "¾", 1.75: "1¾", 2.5: "2½", 4: "4", 1.125: "1⅛", 0.9375: "1", 1.9375: "2"} {
		if got := Eighths(v); got != want {
			t.Errorf("%v in is written %s, want %s", v, got, want)
		}
	}
}
