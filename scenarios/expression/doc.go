// Package expression compiles the conditions and values that files write as text into cond.Programs.
//
// expr-lang/expr parses and type-checks; its virtual machine is never used. Our own small compiler
// turns the checked tree into closures over the flat signal table, with the words of time (since, held,
// count, max, min, first, answered, ever) keeping their memory in the program's slots. It knows names
// only through a Resolve function, and positions only as offsets in the text.
package expression
