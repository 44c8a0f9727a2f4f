package checker

import (
	"cmp"

	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/wording"
)

// sameness is what two wrong lines share that were refused for the same mistake. A code alone may
// cover several: a rope that pushes and a weight that points up are both a wrong side.
type sameness struct {
	code Code
	said string       // the mistake in words, unfilled: one row, and one way of making it
	kind statics.Kind // of the force concerned, where each kind has a rule of its own
}

// IsSameMistake reports whether two lines were refused for the same mistake.
func (a *Report) IsSameMistake(other *Report) bool {
	return a.Verdict == Wrong && other.Verdict == Wrong && a.is == other.is
}

func (j sentence) sameness(f mistake.Finding, asWritten string) sameness {
	is := sameness{code: f.Code, said: asWritten}
	if f.Code.IsOfKind() {
		if force, ok := j.m.solved.Force(f.About); ok {
			is.kind = force.Kind
		}
	}
	if is.said != "" {
		return is
	}
	var rows []*mistake.Row
	if f.Row != nil {
		rows = append(rows, f.Row)
	}
	for _, row := range append(rows, j.m.ref.mistakes.Rows(f.Code)...) {
		if row.Said == (wording.Said{}) {
			continue
		}
		is.said = cmp.Or(row.Said.Component, row.Said.Line, row.Said.Lines, row.Said.Value, row.Said.List)
		if j.m.stage == Diagram && f.Code.IsOtherInList() {
			is.said = row.Said.List
		}
		return is
	}
	return is
}
