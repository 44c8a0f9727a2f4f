package tutor

import (
	"cmp"
	"errors"
	"slices"
	"sync/atomic"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// Desk is where one student works: every attempt that the record tells of.
type Desk struct {
	Student record.Student
	tutor   *Tutor
	history *History
	drafts  map[*Attempt]*atomic.Pointer[string] // see draft.go
}

// Seat reads what a student has done so far. The student should be known to the
// record already.
func (t *Tutor) Seat(s record.Student) (*Desk, error) {
	var entries []record.Entry
	for e, err := range t.Record.Entries(record.Filter{Student: s.ID}) {
		if err != nil {
			return nil, err
		}
		entries = append(entries, e)
	}
	d := &Desk{Student: s, tutor: t, history: HistoryOf(entries), drafts: map[*Attempt]*atomic.Pointer[string]{}}
	return d, d.findDrafts()
}

// pageOf returns the attempt's page; nil with the reason where its problem is not
// to be had any more.
func (d *Desk) pageOf(a *Attempt) (*Page, error) {
	if a.page != nil || a.trouble != nil {
		return a.page, a.trouble
	}
	// The trouble is remembered as well, or the problem would be read anew at every look.
	a.page, a.trouble = d.tutor.Review(a.Entries)
	if draft := *d.kept(a).Load(); a.page != nil && draft != "" {
		a.page.draft = draft
	}
	return a.page, a.trouble
}

// Review makes the page of the entries of one student about one copy of a
// problem, in the order in which they happened. The problem is the one with the
// hash that the entries name, from the bank or from the record.
func (t *Tutor) Review(entries []record.Entry) (*Page, error) {
	if len(entries) == 0 {
		return nil, errors.New("no entries to review")
	}
	p, err := t.copyOf(entries[0])
	if err != nil {
		return nil, err
	}
	page, err := t.Class.NewPage(p)
	if err != nil {
		return nil, err
	}
	for _, e := range entries {
		page.Add(e)
	}
	return page, nil
}

// Open goes on with the student's last attempt at a problem, finished or not; a
// finished one is there to be read. A problem that was not begun is begun.
func (d *Desk) Open(id string) (*Lesson, error) {
	attempts := d.history.Of(id)
	for i := len(attempts) - 1; i >= 0; i-- {
		// The way back to measured numbers is through the bench.
		if attempts[i].Measured() {
			continue
		}
		if page, err := d.pageOf(attempts[i]); err == nil {
			return &Lesson{Page: page, desk: d, attempt: attempts[i]}, nil
		}
	}
	return d.begin(id, 0)
}

// Again begins a fresh copy of a problem, with other numbers where it varies.
func (d *Desk) Again(id string) (*Lesson, error) { return d.begin(id, d.nextCopy(id)) }

func (d *Desk) nextCopy(id string) int {
	next := 0
	for _, a := range d.history.Of(id) {
		next = max(next, a.Copy+1)
	}
	return next
}

func (d *Desk) begin(id string, copy int) (*Lesson, error) {
	inFile, err := d.tutor.Bank.Get(id)
	if err != nil {
		return nil, err
	}
	return d.start(d.drawn(inFile, copy), copy, "")
}

// start begins a copy; run is the bench run that measured its numbers, "" for none.
func (d *Desk) start(p *problems.Problem, copy int, run string) (*Lesson, error) {
	page, err := d.tutor.Class.NewPage(p)
	if err != nil {
		return nil, err
	}
	// Before the first entry, which could not be marked again without its problem.
	if err := d.tutor.Record.SaveProblem(p.Hash, p.ID, string(p.Raw)); err != nil {
		return nil, err
	}
	begun, err := d.tutor.Record.Append(record.Entry{Kind: record.Begun, Student: d.Student.ID,
		Problem: p.ID, Hash: p.Hash, Copy: copy, Givens: p.Copy, Detail: d.tutor.Class.Code, Ref: run})
	if err != nil {
		return nil, err
	}
	a := d.history.Add(begun)
	a.page = page
	return &Lesson{Page: page, desk: d, attempt: a}, nil
}

// Unfinished returns the problem that was worked on last, if it is not finished:
// the place to come back to.
func (d *Desk) Unfinished() (id string, ok bool) {
	own := slices.DeleteFunc(slices.Clone(d.history.Attempts), (*Attempt).Measured)
	if len(own) == 0 {
		return "", false
	}
	a := slices.MaxFunc(own, func(a, b *Attempt) int { return cmp.Compare(a.touched, b.touched) })
	page, err := d.pageOf(a)
	return a.Problem, err == nil && !page.Over()
}

// Tutor is who leads the lessons of this desk.
func (d *Desk) Tutor() *Tutor { return d.tutor }

// Record is where what the student does is saved.
func (d *Desk) Record() *record.Record { return d.tutor.Record }
