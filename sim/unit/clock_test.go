package unit

import (
	"math"
	"testing"
)

func TestClock(t *testing.T) {
	for s, want := range map[float64]string{
		0: "00:00", 0.99: "00:00", 59.999: "00:59", 60: "01:00", 187: "03:07", 3600: "60:00", 6000: "100:00",
		-3: "00:00", math.Inf(1): "16666666:40",
	} {
		if got := Clock(s); got != want {
			t.Errorf("Clock(%g) = %s, want %s", s, got, want)
		}
	}
	if got := Clock(math.NaN()); got != "00:00" {
		t.Errorf("no number: %s", got)
	}
}
