package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
)

const usage = `steadyneedle: practice at a live pump panel (a training aid only)

  steadyneedle                     opens on the list of drills
  steadyneedle DRILL               opens straight into a drill
      --rated                      no help, no pause
      --rehearse                   the opposite, and the default
      --show                       for a class: DRILL is a demonstration, or a drill
      --seed N                     hydrant, variant and planted faults; 1 unless given
      --apparatus NAME             another apparatus than the drill's own
      --record FILE                keeps the recording (of an attempt, not with --show)
      --pace N                     N times as fast as wall time (not with --rated)
      --on-unsafe WORD             what an unsafe act does in a rated attempt: go-on, stop, ask (the evaluator),
                                   or drill (as the drill says); chosen again before it begins
      --trace FILE                 one JSON line a frame, for tests (not with --rated)
  steadyneedle --replay FILE --at TICK  takes over from a moment of a recording
  steadyneedle [DRILL] --picture FILE   draws one frame and exits
      --place P                    menu, cab, panel, wheels, rear-step, hydrant, tank-top, round, speech, street-PLACE, messages, pause, keys, caution,
                                   sums, unsafe, decide, own-marks, debrief, waive, sign, calculation, order, positions, all-attempts, moment, records, gallery
      --replay FILE --at TICK      the moment of a recording; its beginning unless given
      --show --place P --at TICK   a demonstration, run to a moment: plots, gauges, both, three, panel, faults, arming
      --width N --height N         1280 by 720 unless given

  Of the window, over what the settings say:
      --fullscreen                 over the whole screen; key F11
      --scale fit|100…200          the interface fills the window, or has this size in percent at most
      --theme auto|day|night|contrast   colors: as it is on the street, or always these; key F3
      --sound off|PERCENTS         how loud, such as "all 30, engine 50, horn 0"; key F4 mutes
      --units us|si                psi, gpm, ft, or kPa, L/min, m: shown and typed everywhere
      --pad MAP                    what axes and buttons of a game-pad work, such as
                                   "axis 2 throttle dead=0.05; button 0 idle_button; button 1 key=Tab"

Exit codes: 0 done, 1 failed, 2 wrong use, 3 broken file, 4 a fault of ours.
`

type options struct {
	drill                           string
	rated, rehearse, show, help     bool
	seed                            uint64
	apparatus, record, trace        string
	pace                            int
	picture, place, replay          string
	at                              int64
	width, height                   int
	scale, pad, units, theme, sound string
	onUnsafe                        string
	fullscreen                      bool
}

// parse reads the command line; the drill's name may stand before, between or after the flags.
func parse(args []string) (options, error) {
	var o options
	f := flag.NewFlagSet("steadyneedle", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.BoolVar(&o.rated, "rated", false, "")
	f.BoolVar(&o.rehearse, "rehearse", false, "")
	f.BoolVar(&o.show, "show", false, "")
	f.Uint64Var(&o.seed, "seed", 1, "")
	f.StringVar(&o.apparatus, "apparatus", "", "")
	f.StringVar(&o.record, "record", "", "")
	f.StringVar(&o.trace, "trace", "", "")
	f.IntVar(&o.pace, "pace", 1, "")
	f.StringVar(&o.picture, "picture", "", "")
	f.StringVar(&o.place, "place", "", "")
	f.StringVar(&o.replay, "replay", "", "")
	f.Int64Var(&o.at, "at", 0, "")
	f.IntVar(&o.width, "width", 1280, "")
	f.StringVar(&o.scale, "scale", "", "")
	f.StringVar(&o.units, "units", "", "")
	f.StringVar(&o.pad, "pad", "", "")
	f.StringVar(&o.theme, "theme", "", "")
	f.StringVar(&o.sound, "sound", "", "")
	f.StringVar(&o.onUnsafe, "on-unsafe", "", "")
	f.BoolVar(&o.fullscreen, "fullscreen", false, "")
	f.IntVar(&o.height, "height", 720, "")
	for len(args) > 0 {
		if err := f.Parse(args); err != nil {
			if errors.Is(err, flag.ErrHelp) {
				o.help = true
				return o, nil
			}
			return o, fmt.Errorf("%w (steadyneedle --help)", err)
		}
		args = f.Args()
		if len(args) == 0 {
			break
		}
		if o.drill != "" {
			return o, fmt.Errorf("two drills named: %s and %s", o.drill, args[0])
		}
		o.drill, args = args[0], args[1:]
	}
	return o, o.check()
}

func (o *options) check() error {
	switch {
	case o.show && (o.rated || o.drill == ""):
		return errors.New("--show needs the name of a demonstration or a drill, and is not for rated attempts")
	case o.show && o.record != "":
		return errors.New("--record is not for --show: a demonstration goes back and on again at will and is not rated, so no recording is made of it; needle show NAME proves what it claims")
	case o.picture != "" && o.record != "":
		return errors.New("--record and --picture exclude each other: nobody works in a picture")
	case o.rated && o.rehearse:
		return errors.New("--rated and --rehearse exclude each other")
	case o.rated && (o.pace != 1 || o.trace != ""):
		return errors.New("--pace and --trace are not for rated attempts")
	case o.pace < 1 || o.pace > 64:
		return errors.New("--pace goes from 1 to 64")
	case o.width < 1024 || o.height < 640 || o.width > 7680 || o.height > 4320:
		return errors.New("the picture goes from 1024 by 640 to 7680 by 4320")
	case o.replay != "" && o.rated && o.picture == "":
		return errors.New("a rated attempt is not taken over from a recording")
	case o.at < 0:
		return errors.New("--at is a tick, from 0")
	}
	return nil
}
