package settings

// First is always so in a browser: nothing of ours is kept there.
func First() bool { return true }
