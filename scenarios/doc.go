// Package scenarios is the shelf: the drills, apparatus, shared rules and operators that are shipped,
// as YAML files, and the reader that checks them, compiles their conditions and makes drill.Drill,
// rig.Def and operator.Script of them.
//
// A user's folder lies over the shipped files, by name. Everything that is wrong with a file is told
// at once, as reader.Faults. Nothing here runs a drill, draws a picture or writes a file.
package scenarios
