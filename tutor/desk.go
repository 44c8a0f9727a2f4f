package tutor

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"time"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// Desk is where one student works: every attempt that the record tells of.
type Desk struct {
	Student  record.Student
	tutor    *Tutor
	attempts map[string][]*attempt // by problem, oldest first
	order    []*attempt            // as they were begun
	touches  int
}

// attempt is one copy of a problem that the student has begun. Its page is made
// when it is first looked at.
type attempt struct {
	key
	touched int // when it was worked on last, counted in entries
	entries []record.Entry
	page    *Page
	trouble error
}

// key tells attempts apart.
type key struct {
	problem, hash, givens string
	copy                  int
}

func keyOf(e record.Entry) key { return key{e.Problem, e.Hash, e.Givens, e.Copy} }

// Seat reads what a student has done so far. The student should be known to the
// record already.
func (t *Tutor) Seat(s record.Student) (*Desk, error) {
	d := &Desk{Student: s, tutor: t, attempts: map[string][]*attempt{}}
	entries, err := t.entries(s.ID)
	if err != nil {
		return nil, err
	}
	for _, e := range entries {
		if e.Problem != "" && e.Kind != record.Bench {
			d.file(e)
		}
	}
	return d, nil
}

// entries returns what a student did, in order. Records from several machines
// stand one after the other in one file: time tells what came first, but within a
// record its running number does, because clocks are put back.
func (t *Tutor) entries(student string) ([]record.Entry, error) {
	var entries []record.Entry
	var latest time.Time
	for e, err := range t.Record.Entries(record.Filter{Student: student}) {
		if err != nil {
			return nil, err
		}
		if n := len(entries); n == 0 || entries[n-1].Record != e.Record || e.Time.After(latest) {
			latest = e.Time
		}
		e.Time = latest
		entries = append(entries, e)
	}
	slices.SortStableFunc(entries, func(a, b record.Entry) int { return a.Time.Compare(b.Time) })
	return entries, nil
}

// attemptOf finds the attempt of an entry, or makes it.
func (d *Desk) attemptOf(e record.Entry) *attempt {
	for _, a := range d.attempts[e.Problem] {
		if a.key == keyOf(e) {
			return a
		}
	}
	a := &attempt{key: keyOf(e)}
	d.attempts[e.Problem] = append(d.attempts[e.Problem], a)
	d.order = append(d.order, a)
	return a
}

// file puts an entry to its attempt. To write it on the page, if that is made
// already, is the lesson's part.
func (d *Desk) file(e record.Entry) *attempt {
	a := d.attemptOf(e)
	d.touches++
	a.touched = d.touches
	a.entries = append(a.entries, e)
	return a
}

// pageOf returns the attempt's page; nil with the reason where its problem is not
// to be had any more.
func (d *Desk) pageOf(a *attempt) (*Page, error) {
	if a.page != nil || a.trouble != nil {
		return a.page, a.trouble
	}
	a.page, a.trouble = d.tutor.Review(a.entries)
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

// copyOf finds the problem of an entry with the numbers that it was asked with.
func (t *Tutor) copyOf(e record.Entry) (*problems.Problem, error) {
	p, err := t.Bank.Get(e.Problem)
	if err != nil || p.Hash != e.Hash {
		if p, err = t.keptProblem(e.Hash); err != nil {
			return nil, err
		}
	}
	return p.WithGivens(e.Givens)
}

func (t *Tutor) keptProblem(hash string) (*problems.Problem, error) {
	kept, err := t.Record.Problem(hash)
	if err != nil {
		return nil, err
	}
	p, found := problems.Read(kept.ID, []byte(kept.Text))
	if err := found.Err(); err != nil {
		return nil, err
	}
	if p.Hash != hash {
		return nil, fmt.Errorf("the text of %s kept in the record is not the one that was worked on", kept.ID)
	}
	return p, nil
}

// Open goes on with the student's last attempt at a problem, finished or not; a
// finished one is there to be read. A problem that was not begun is begun.
func (d *Desk) Open(id string) (*Lesson, error) {
	attempts := d.attempts[id]
	for i := len(attempts) - 1; i >= 0; i-- {
		if attempts[i].measured() {
			continue
		}
		if page, err := d.pageOf(attempts[i]); err == nil {
			return &Lesson{page, d, attempts[i]}, nil
		}
	}
	return d.begin(id, 0)
}

// Again begins a fresh copy of a problem, with other numbers where it varies.
func (d *Desk) Again(id string) (*Lesson, error) { return d.begin(id, d.nextCopy(id)) }

func (d *Desk) nextCopy(id string) int {
	next := 0
	for _, a := range d.attempts[id] {
		next = max(next, a.copy+1)
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
	if err := d.tutor.Record.KeepProblem(p.Hash, p.ID, string(p.Raw)); err != nil {
		return nil, err
	}
	begun, err := d.tutor.Record.Append(record.Entry{Kind: record.Begun, Student: d.Student.ID,
		Problem: p.ID, Hash: p.Hash, Copy: copy, Givens: p.Copy, Detail: d.tutor.Class.Code, Ref: run})
	if err != nil {
		return nil, err
	}
	a := d.file(begun)
	a.page = page
	return &Lesson{page, d, a}, nil
}

// Unfinished returns the problem that was worked on last, if it is not finished:
// the place to come back to.
func (d *Desk) Unfinished() (id string, ok bool) {
	own := slices.DeleteFunc(slices.Clone(d.order), (*attempt).measured)
	if len(own) == 0 {
		return "", false
	}
	a := slices.MaxFunc(own, func(a, b *attempt) int { return cmp.Compare(a.touched, b.touched) })
	page, err := d.pageOf(a)
	return a.problem, err == nil && !page.Over()
}

// Record is where what the student does is kept.
func (d *Desk) Record() *record.Record { return d.tutor.Record }
