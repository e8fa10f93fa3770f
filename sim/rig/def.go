package rig

// Def describes an apparatus. The physics package defines the parts.
type Def struct {
	Name string `file:"name" need:"yes"`
}
