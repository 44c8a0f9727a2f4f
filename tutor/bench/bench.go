// Package bench knows how measured values, each with its uncertainty, compare
// with what a problem's own equations predict.
//
// How unsure a value is, and how that is carried through a calculation, is in
// package measure. Start with NewForm, the sheet of one run: Form.Type takes what was measured as
// it is typed, Form.Result puts it into the sums. How it hangs together:
//
//	apparatus.go, copy.go        a problem as the model of what stands on the table
//	form.go                      what was typed, field by field
//	sums.go, eliminate.go        the problem's sums, solved again and again
//	check.go                     whether the law of propagation and random trials agree
//	result.go, compare.go, leftover.go, warn.go   what comes of a run
//	tell.go, page.go, json.go    a run in sentences, as text and as JSON
//	runs.go, trial.go, sidebyside.go, plot.go     runs in the record, and several of them
//	table.go, tablepaper.go      the run in hand of the students at a table
//	paper.go                     the sheet and the report
//	guide.go, guide….go          the form as questions, one line after another
//	sentences.go                 what is said about a field, a result, a run
//
// Values are in SI
// and radians, like those of package statics; texts are in the units that were
// typed or that the problem asks in.
package bench
