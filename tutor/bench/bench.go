// Package bench knows how measured values, each with its uncertainty, compare
// with what a problem's own equations predict.
//
// How unsure a value is, and how that is carried through a calculation, is in package
// measure. Start with NewForm, the sheet of one run: Form.Type takes what was measured
// as it is typed, Form.Result puts it into the equations. How it hangs together:
//
//	apparatus.go, copy.go        a problem as the model of what stands on the table
//	form.go, fields.go           what was typed, field by field
//	sums.go                      the problem's equations, solved again and again
//	check.go                     whether the law of propagation and random trials agree
//	result.go, compare.go, leftover.go, warn.go   what comes of a run
//	resultforms.go               which parts of a result each reader gets: a table, a screen, a report
//	resultblocks.go, resulttables.go, blocks.go, json.go   these parts in sentences, as tables, as JSON
//	runs.go, computed.go, csv.go runs in the record, and as a table
//	series.go, line.go, seriestell.go, sidebyside.go, plot.go   several runs together
//	table.go, tablefiles.go      the run in hand of a group
//	script.go, question.go, command.go   what a group is asked, and what it can ask for
//	guide.go, guidechoose.go     the script in lines of text
//	html.go                      the sheet and the report
//	sentences.go                 what is said about a field, a result, a run
//
// Values are in SI and radians, like those of package statics; texts are in the units
// that were typed or that the problem asks in.
package bench
