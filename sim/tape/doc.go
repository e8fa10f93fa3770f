// Package tape is the recording of an attempt: what was used, every action with its tick, and the
// scene's hash once a second, so that a replay proves itself. It reads and writes text over io.Reader
// and io.Writer, and knows nothing of files or of how an attempt is run.
//
// The first line is the header, in JSON. Then, one to a line:
//
//	a TICK SOURCE PLACE CONTROL VALUE   an action that came from outside
//	d TICK SOURCE PLACE CONTROL VALUE   one that the scene's own people did: compared, not applied
//	h TICK HASH                         the scene before this tick, each whole second
//	m TICK TEXT                         a mark of the evaluator's
//	n TICK WORD TEXT                    what was told to the candidate, or written down by them; not part of the world
//	end TICK HASH                       the last line
package tape
