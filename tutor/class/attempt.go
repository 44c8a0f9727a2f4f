package class

import (
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// Numbers says whose the numbers are that an attempt was made with.
type Numbers uint8

// Only what was done with Own numbers counts. Alone are those of somebody who
// practises without a class; OtherVersion is a problem file that this class does
// not know, whose numbers say nothing; Measured numbers come from a bench run.
const (
	Own Numbers = iota
	Alone
	Others
	Nobodys
	OtherVersion
	Unusable
	Measured
)

// Attempt is one copy of a problem that a student worked on. Page is nil where the
// numbers are not the student's own, or the problem cannot be had.
type Attempt struct {
	*tutor.Attempt
	Numbers Numbers
	Whose   string // the id of the student whose numbers they are, for Others
	Page    *tutor.Page
}

// attemptsOf sorts a student's entries into attempts, as they were begun.
func attemptsOf(entries []record.Entry) []*Attempt {
	var all []*Attempt
	for _, a := range tutor.HistoryOf(entries).Attempts {
		all = append(all, &Attempt{Attempt: a})
	}
	return all
}

// judge finds out whose numbers an attempt has, and marks it if they are the
// student's own.
func (m *Markbook) judge(student string, a *Attempt) {
	if a.Measured() {
		a.Numbers = Measured
		return
	}
	p, err := m.problem(a.Entries[0], false)
	if err != nil {
		a.Numbers = OtherVersion
		return
	}
	a.Numbers, a.Whose = m.whose(p, student, a)
	if a.Numbers == Own {
		m.mark(p, a)
	}
}

// mark makes the page of an attempt from its entries.
func (m *Markbook) mark(p *problems.Problem, a *Attempt) {
	own, err := p.WithGivens(a.Givens)
	if err == nil {
		a.Page, err = m.Class.NewPage(own)
	}
	if err != nil {
		a.Numbers, a.Page = Unusable, nil
		return
	}
	for _, e := range a.Entries {
		if !tutor.OfTeacher(e) || m.mine[e.Record] {
			a.Page.Add(e)
		}
	}
}

// whose compares an attempt's numbers with those that are drawn for the student,
// then with what somebody has without a class, then with the other students'.
func (m *Markbook) whose(p *problems.Problem, student string, a *Attempt) (Numbers, string) {
	c := m.Class
	is := func(own *problems.Problem, err error) bool { return err == nil && own.Copy == a.Givens }
	if is(m.Class.Copy(p, student, a.Copy)) || c.Gravity != "" && is(p.Draw(problems.Seed{Class: c.Code, Student: student, Repeat: a.Copy})) {
		return Own, ""
	}
	if is(p.Draw(problems.Seed{Student: student, Repeat: a.Copy})) {
		return Alone, ""
	}
	for _, s := range c.Students[:min(len(c.Students), mostCompared)] {
		if problems.Fold(s.ID) != problems.Fold(student) && is(m.Class.Copy(p, s.ID, a.Copy)) {
			return Others, s.ID
		}
	}
	return Nobodys, ""
}

// mostCompared bounds how many students' numbers are drawn to find out whose some
// are.
const mostCompared = 300
