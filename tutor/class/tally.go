package class

import (
	"cmp"
	"slices"

	"example.org/standstill/checker"
	"example.org/standstill/tutor/class/summary"
)

type tallyKey struct {
	stage   checker.Stage
	problem string
	code    checker.Code
}

// tallies counts mistakes; students go by their place on the list.
type tallies struct {
	sum map[tallyKey]*summary.Tally
	who map[tallyKey][]int
}

func (t *tallies) addAll(student int, w Work, key func(Mistake) tallyKey) {
	for _, one := range w.Mistakes {
		t.add(student, key(one), one)
	}
}

func (t *tallies) add(student int, key tallyKey, one Mistake) {
	if t.sum == nil {
		t.sum, t.who = map[tallyKey]*summary.Tally{}, map[tallyKey][]int{}
	}
	tally := t.sum[key]
	if tally == nil {
		tally = &summary.Tally{Stage: key.stage, Problem: key.problem, Code: key.code, Line: one.Line}
		t.sum[key] = tally
	}
	tally.Count += one.Count
	if lessLine(one.Line, tally.Line) {
		tally.Line = one.Line
	}
	// Students are what matters in a class; one who makes a mistake ten times is still one.
	if !slices.Contains(t.who[key], student) {
		t.who[key] = append(t.who[key], student)
	}
}

// list gives the tallies, most students first, with who made each mistake in the
// order of the list.
func (t *tallies) list(rows []summary.Row) []summary.Tally {
	var list []summary.Tally
	for key, tally := range t.sum {
		one := *tally
		slices.Sort(t.who[key])
		for _, at := range t.who[key] {
			one.Who = append(one.Who, rows[at].ID)
		}
		one.Students = len(one.Who)
		list = append(list, one)
	}
	slices.SortFunc(list, func(a, b summary.Tally) int {
		return cmp.Or(cmp.Compare(b.Students, a.Students), cmp.Compare(b.Count, a.Count),
			cmp.Compare(a.Stage, b.Stage), cmp.Compare(a.Problem, b.Problem), cmp.Compare(a.Code, b.Code))
	})
	return list
}
