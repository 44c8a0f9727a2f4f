package class

import (
	"cmp"
	"slices"

	"example.org/standstill/checker"
)

type tallyKey struct {
	stage   checker.Stage
	problem string
	code    checker.Code
}

// tallies counts mistakes student by student; next ends a student.
type tallies struct {
	sum  map[tallyKey]*Tally
	seen map[tallyKey]bool // by the student in hand
}

func (t *tallies) addAll(w Work, key func(Mistake) tallyKey) {
	for _, one := range w.Mistakes {
		t.add(key(one), one)
	}
}

func (t *tallies) add(key tallyKey, one Mistake) {
	if t.sum == nil {
		t.sum, t.seen = map[tallyKey]*Tally{}, map[tallyKey]bool{}
	}
	tally := t.sum[key]
	if tally == nil {
		tally = &Tally{Stage: key.stage, Problem: key.problem, Code: key.code, Line: one.Line}
		t.sum[key] = tally
	}
	tally.Count += one.Count
	if lessLine(one.Line, tally.Line) {
		tally.Line = one.Line
	}
	if !t.seen[key] {
		t.seen[key] = true
		tally.Students++
	}
}

func (t *tallies) next() { clear(t.seen) }

// list gives the tallies, most students first.
func (t *tallies) list() []Tally {
	var list []Tally
	for _, tally := range t.sum {
		list = append(list, *tally)
	}
	slices.SortFunc(list, func(a, b Tally) int {
		return cmp.Or(cmp.Compare(b.Students, a.Students), cmp.Compare(b.Count, a.Count),
			cmp.Compare(a.Stage, b.Stage), cmp.Compare(a.Problem, b.Problem), cmp.Compare(a.Code, b.Code))
	})
	return list
}
