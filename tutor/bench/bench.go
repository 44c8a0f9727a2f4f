// Package bench knows how measured values, each with its uncertainty, compare
// with what a problem's own equations predict.
//
// Start with NewForm, the sheet of one run: Form.Type takes what was measured as
// it is typed, Form.Result puts it into the sums. How it hangs together:
//
//	value.go, scan.go     "0.500 kg ± 1 %" → an estimate and what makes it unsure
//	apparatus.go          a problem as the model of what stands on the table
//	form.go               what was typed, field by field
//	sums.go, eliminate.go the problem's sums, solved again and again
//	law.go                the law of propagation, effective degrees of freedom
//	draws.go              the same by drawing lots
//	result.go, compare.go, leftover.go, warn.go   what comes of a run
//	figures.go            how many figures a number is quoted with
//	page.go, json.go, sheet.go, report.go   a run as text, JSON and paper
//	guide.go              the form as questions, one line after another
//	runs.go, plot.go      runs kept in the record, side by side and in a plot
//	sentences.go          every sentence said to a student
//
// Methods follow the Guide to the Expression of Uncertainty in Measurement
// (JCGM 100:2008, "GUM") and its Supplement 1 (JCGM 101:2008). Values are in SI
// and radians, like those of package statics; texts are in the units that were
// typed or that the problem asks in.
package bench
