//go:build !js

package store

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"
	"time"

	"steadyneedle/sim/attempt"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// victim is the environment variable that makes this test's program the one that is killed: the folder
// that it keeps its attempt in.
const victim = "STORE_TEST_VICTIM"

func TestMain(m *testing.M) {
	if dir := os.Getenv(victim); dir != "" {
		if err := work(dir); err != nil {
			fmt.Println("failed:", err)
			os.Exit(1)
		}
		return
	}
	os.Exit(m.Run())
}

func bare() *drill.Drill {
	return &drill.Drill{Name: "bare", Apparatus: "default", Scale: drill.Scale{Full: 100}, Setup: world.Setup{
		Rig: rig.Default(), Seed: 1,
		Ground: world.Ground{
			Hydrant: fireground.HydrantDef{StaticPSI: 65, ResidualPSI: 45, FlowGPM: 1000}, Supply: fireground.HoseDef{SizeIn: 4, LossC: 0.2},
			FireToPlugFt: 575, PlugSetback: 16, Discharge: 1, AirF: 68, WaterF: 60,
			Line: fireground.LineDef{Trunk: fireground.HoseDef{SizeIn: 2.5, LossC: 2}, Nozzle: &fireground.NozzleDef{TipIn: 1.125, RatedPSI: 50, People: 2}},
		},
	}}
}

// work runs an attempt at wall time: it throws the headlights forever, and says each time it has.
func work(dir string) error {
	s, err := Open(dir)
	if err != nil {
		return err
	}
	j, err := s.Begin("bare", time.Now())
	if err != nil {
		return err
	}
	a, err := attempt.New(bare(), attempt.Options{Record: j})
	if err != nil {
		return err
	}
	lights, _ := a.Scene.World.Control("headlights")
	for n := 1; ; n++ {
		if err := a.Do(world.Action{By: world.Candidate, Control: lights, Value: float64(n % 2)}); err != nil {
			return err
		}
		for range 3 { // ticks between two throws
			a.Tick()
			time.Sleep(time.Second / world.TicksPerSecond)
		}
		fmt.Println(n)
	}
}

// A program killed at any moment loses nothing that was done more than a second before; what it leaves
// is offered, and is a recording up to its last whole line.
func TestKilled(t *testing.T) {
	kills := 15
	if v := os.Getenv("STEADYNEEDLE_KILLS"); v != "" {
		fmt.Sscan(v, &kills)
	}
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	var all sync.WaitGroup
	turn := make(chan struct{}, 5)
	for range kills {
		all.Add(1)
		go func() {
			defer all.Done()
			turn <- struct{}{}
			defer func() { <-turn }()
			kill(t, self, t.TempDir())
		}()
	}
	all.Wait()
}

func kill(t *testing.T, self, dir string) {
	cmd := exec.Command(self)
	cmd.Env = append(os.Environ(), victim+"="+dir)
	out, err := cmd.StdoutPipe()
	if err == nil {
		err = cmd.Start()
	}
	if err != nil {
		t.Error(err)
		return
	}
	type said struct {
		n  int
		at time.Time
	}
	heard := make(chan []said, 1)
	go func() {
		var list []said
		for in := bufio.NewScanner(out); in.Scan(); {
			var n int
			if _, err := fmt.Sscan(in.Text(), &n); err != nil {
				t.Error(in.Text())
			}
			list = append(list, said{n, time.Now()})
		}
		heard <- list
	}()
	time.Sleep(1200*time.Millisecond + time.Duration(rand.Int64N(int64(700*time.Millisecond))))
	dead := time.Now()
	cmd.Process.Kill()
	list := <-heard
	cmd.Wait()
	sure := 0
	for _, s := range list {
		if dead.Sub(s.at) > time.Second {
			sure = s.n
		}
	}
	s, err := Open(dir)
	if err != nil {
		t.Error(err)
		return
	}
	ids, _ := s.disk.ids()
	if len(ids) != 1 {
		t.Errorf("%d attempts are there, expected 1", len(ids))
		return
	}
	text, err := s.Tape(ids[0])
	if err != nil {
		t.Error(err)
		return
	}
	if got := strings.Count(string(text), " headlights "); got < sure {
		t.Errorf("%d throws were said a second before the end, %d are on disk", sure, got)
	}
	r, err := tape.NewReader(strings.NewReader(string(text)))
	if err != nil {
		t.Error(err)
		return
	}
	a, err := attempt.Replay(r, bare(), attempt.Options{})
	if a == nil || err == nil || !strings.Contains(err.Error(), tape.ErrTruncated.Error()) {
		t.Errorf("replay: %v", err)
	}
}
