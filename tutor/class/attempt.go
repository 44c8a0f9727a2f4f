package class

import (
	"fmt"
	"time"

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
	NotMarked // for want of time, or beyond the attempts that are marked
	Faulty    // a fault of ours
)

// Attempt is one copy of a problem that a student worked on. Page is nil where the
// numbers are not the student's own, or the problem cannot be had.
type Attempt struct {
	*tutor.Attempt
	Numbers Numbers
	Whose   string // the id of the student whose numbers they are, for Others
	Page    *tutor.Page
	Fault   string
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
// student's own, or the teacher said that it is the student's. Past until it marks
// nothing more, and the attempt is NotMarked; a fault of ours makes it Faulty.
func (m *Markbook) judge(student string, a *Attempt, until time.Time) {
	if a.Measured() {
		a.Numbers = Measured
		return
	}
	// After the cheap question about the bench, before anything that could go wrong with a strange file.
	defer a.fence()
	if !until.IsZero() && time.Now().After(until) {
		a.Numbers = NotMarked
		return
	}
	p, err := m.problem(a.Entries[0], false)
	if err != nil {
		a.Numbers = OtherVersion
		return
	}
	a.Numbers, a.Whose = m.whose(p, student, a)
	// The teacher's word outweighs the numbers.
	if _, given := m.ownerOf(a.Entries[0]); given && a.Numbers != Own {
		a.Numbers, a.Whose = Own, ""
	}
	if a.Numbers == Own {
		m.mark(p, a, until)
	}
}

// fence, deferred, keeps a fault of ours within one attempt.
func (a *Attempt) fence() {
	if fault := recover(); fault != nil {
		a.Numbers, a.Page, a.Fault = Faulty, nil, fmt.Sprint(fault)
	}
}

// mark makes the page of an attempt from its entries.
func (m *Markbook) mark(p *problems.Problem, a *Attempt, until time.Time) {
	defer a.fence()
	own, err := p.WithGivens(a.Givens)
	if err == nil {
		a.Page, err = m.Class.NewPage(own)
	}
	if err != nil {
		a.Numbers, a.Page = Unusable, nil
		return
	}
	for i, e := range a.Entries {
		if i%marksAtOnce == 0 && !until.IsZero() && time.Now().After(until) {
			a.Numbers, a.Page = NotMarked, nil
			return
		}
		if m.marking != nil {
			m.marking(e)
		}
		if !tutor.OfTeacher(e) || m.mine[e.Record] {
			a.Page.Add(e)
		}
	}
}

// marksAtOnce is how many entries are marked between two looks at the clock.
const marksAtOnce = 8

// whose compares an attempt's numbers with those that are drawn for the student,
// then with what somebody has without a class, then with the other students'.
func (m *Markbook) whose(p *problems.Problem, student string, a *Attempt) (Numbers, string) {
	c := m.Class
	is := func(own *problems.Problem, err error) bool { return err == nil && own.Copy == a.Givens }
	// The class may have set its g only after the student had
	// begun, so numbers with the usual one are the student's, too.
	if m.copyOf(p, student, a.Copy) == a.Givens || c.Gravity != "" && is(p.Draw(problems.Seed{Class: c.Code, Student: student, Repeat: a.Copy})) {
		return Own, ""
	}
	if is(p.Draw(problems.Seed{Student: a.Entries[0].Student, Repeat: a.Copy})) {
		return Alone, ""
	}
	// Every copy of every student has to be drawn for this, and a record can name any copy.
	if a.Copy > mostCompared {
		return Nobodys, ""
	}
	for _, s := range c.Students[:min(len(c.Students), mostStudentsCompared)] {
		if problems.Fold(s.ID) != problems.Fold(student) && m.copyOf(p, s.ID, a.Copy) == a.Givens {
			return Others, s.ID
		}
	}
	return Nobodys, ""
}

// Bounds on finding out whose some numbers are: up to which copy of a problem, and
// of how many students.
const (
	mostCompared         = 2
	mostStudentsCompared = 300
)
