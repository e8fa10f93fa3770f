// Package view is what the window knows of an attempt: what can be seen from where the candidate
// stands, what was heard, and one way to act. It keeps names and numbers of controls and signals together.
package view
