// Package recorded opens recordings: the drill from the files that a recording carries, and attempts
// that are kept, by their key frames at once or by a replay in slices.
package recorded
