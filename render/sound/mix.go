package sound

import (
	"fmt"
	"strconv"
	"strings"
)

// Source is one thing that sounds.
type Source uint8

const (
	Engine Source = iota
	Pump
	Bypass
	Gravel
	Air
	Splash
	Primer
	Valves
	Brake
	Gears
	Horn
	Radio
	Sources // how many there are
)

var sourceNames = [Sources]string{"engine", "pump", "bypass", "gravel", "air", "splash", "primer", "valves", "brake", "gears", "horn", "radio"}

func (s Source) String() string { return sourceNames[s] }

// Mix turns sources down: a source plays at 1 − its number. The zero Mix plays all as they are.
type Mix [Sources]float64

// level is how loud a source is to be, 0 to 1.
func (m *Mix) level(s Source) float64 { return 1 - m[s] }

// Quiet is the level that sound begins at, as a share of full.
const Quiet = 0.3

// ParseMix reads how loud sound is: "off", or a list of names and percents such as
// "all 30, engine 50, horn 0". all is the level of everything together, 30 unless given; the sources are
// engine, pump, bypass, gravel, air, splash, primer, valves, brake, gears, horn and radio, each 100
// unless given.
func ParseMix(text string) (level float64, m Mix, err error) {
	level = Quiet
	switch strings.TrimSpace(text) {
	case "":
		return level, m, nil
	case "off":
		return 0, m, nil
	}
	for _, entry := range strings.Split(text, ",") {
		name, number, _ := strings.Cut(strings.TrimSpace(entry), " ")
		n, err := strconv.Atoi(strings.TrimSpace(number))
		if err != nil || n < 0 || n > 100 {
			return 0, Mix{}, fmt.Errorf("%q: expected a name and a percent from 0 to 100, such as engine 50", strings.TrimSpace(entry))
		}
		share := float64(n) / 100
		if name == "all" {
			level = share
			continue
		}
		s, ok := sourceNamed(name)
		if !ok {
			return 0, Mix{}, fmt.Errorf("%q: expected all, %s", name, strings.Join(sourceNames[:], ", "))
		}
		m[s] = 1 - share
	}
	return level, m, nil
}

func sourceNamed(name string) (Source, bool) {
	for i, n := range sourceNames {
		if n == name {
			return Source(i), true
		}
	}
	return 0, false
}
