// Package proof holds a judge against attempts whose mistakes are known.
//
// A Case is one attempt: an operator who makes one mistake, two of them, or a legal variation of the
// clean run. Trying it tells what the judge missed, what it found without cause, and how far off the
// time was; a Matrix adds cases up to recall and precision. Where cases come from, and how many are
// tried at once, is the caller's affair.
package proof
