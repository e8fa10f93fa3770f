package app

import (
	"flag"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"steadyneedle/render/stage"
)

var regen = flag.Bool("regen", false, "write the golden pictures anew")

// TestGolden compares pictures drawn without a display with those kept in testdata. Rounding may differ
// between processors, so a channel may be off by a little, and a few pixels of edges by more.
// After a wanted change: go test ./render/app -run Golden -regen, and look at the pictures.
func TestGolden(t *testing.T) {
	looks := []struct {
		name  string
		look  Look
		unlit bool
	}{{"day", DayLook, false}, {"night", NightLook, false}, {"dark", NightLook, true}, {"contrast", Contrast, false}}
	for i := range exhibits {
		for _, l := range looks {
			if i != 1 && l.look == NightLook { // the controls show every color of these
				continue
			}
			t.Run(fmt.Sprintf("gallery-%d-%s", i+1, l.name), func(t *testing.T) {
				a := begin(t, false)
				a.look = l.look
				a.Resize(1024, 640)
				a.show(&gallery{at: i, unlit: l.unlit})
				golden(t, a)
			})
		}
	}
}

// golden compares the present frame with the picture kept under the test's name.
func golden(t *testing.T, a *App) {
	t.Helper()
	got := stage.Compose(a.Frame(), a.w, a.h)
	file := filepath.Join("testdata", filepath.Base(t.Name())+".png")
	if *regen {
		write(t, file, got)
		return
	}
	compare(t, file, got)
}

func write(t *testing.T, name string, img image.Image) {
	t.Helper()
	f, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(f, img); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
}

func compare(t *testing.T, name string, got *image.RGBA) {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	want, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	if want.Bounds() != got.Bounds() {
		t.Fatalf("%v large, the golden picture %v", got.Bounds(), want.Bounds())
	}
	const slight, few = 6 << 8, 200 // of 65535; pixels
	off := 0
	for y := range got.Bounds().Dy() {
		for x := range got.Bounds().Dx() {
			r, g, b, _ := got.At(x, y).RGBA()
			R, G, B, _ := want.At(x, y).RGBA()
			if apart(r, R) > slight || apart(g, G) > slight || apart(b, B) > slight {
				off++
			}
		}
	}
	if off > few {
		t.Errorf("%d pixels differ from %s", off, name)
	}
}

func apart(a, b uint32) uint32 { return max(a, b) - min(a, b) }
