// Package attempt is the one loop that window, command line and tests share: a scene under a judge,
// recorded tick by tick, worked by a person, by a script, or by a recording.
//
// It keeps what the debrief needs: the series of needles, the moment each step was done, and key
// frames to go back to any moment. How time passes is the caller's business.
package attempt
