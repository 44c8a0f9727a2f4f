// Package measure knows measured values: what each was taken to be from how it was
// typed, how unsure it is, and how that is carried through a calculation.
//
// Start with Read, which takes "0.500 kg ± 1 %" apart. How it hangs together:
//
//	value.go, scan.go, take.go   a text → an estimate and what makes it unsure
//	law.go                       the law of propagation, effective degrees of freedom
//	trials.go                    the same by random trials
//	line.go                      a straight line through points
//	figures.go                   how many figures a number is quoted with
//	sentences.go                 what is said about a value
//
// Methods follow the Guide to the Expression of Uncertainty in Measurement
// (JCGM 100:2008, "GUM") and its Supplement 1 (JCGM 101:2008). Values are in SI
// and radians; texts are in the units that were typed.
package measure
