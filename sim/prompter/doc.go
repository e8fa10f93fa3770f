// Package prompter helps a candidate who rehearses, as little as it can: guidance that is always there
// is leant on, and what was learnt with it is not kept (guidance hypothesis: Schmidt 1991; Winstein,
// Pohl and Lewthwaite 1994; Schmidt and Wulf 1997).
//
// On the first attempt at a drill every next step is told; later only a step that was missed before, and
// only after hesitation; later only what is asked for; at last nothing. Unsafe acts are explained at
// once, other findings at the end of their phase, and both give way to the sheet as the candidate learns.
//
// It knows steps, findings and earlier attempts, and nothing of windows or files. What it says is the
// caller's to show and to keep.
package prompter
