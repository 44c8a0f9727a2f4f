package class

import (
	"errors"
	"slices"
	"strings"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// What accepting a line can run into. The errors are for the teacher.
var (
	ErrNoEntry      = errors.New("no entry in the class record has an id that begins with these characters")
	ErrManyEntries  = errors.New("several entries have an id that begins with these characters; type more of the id")
	ErrManyStudents = errors.New("several students have that entry; choose one with --student, or collect the file again with --as")
	errUnsettled    = errors.New("that entry arrived in different versions; choose the right one with --text")
	ErrNotALine     = errors.New("that entry is not a line that a student checked")
	ErrIsRight      = errors.New("that line is already right")
	ErrNotCounted   = errors.New("that line does not count, because its numbers are not the student's own")
	ErrNotAccepted  = errors.New("that line has not been accepted")
	ErrIsAccepted   = errors.New("that line has already been accepted")
	errNotOfClass   = errors.New("that entry does not belong to any student in this class")
	errShortPrefix  = errors.New("type at least the first four characters of the entry's id")
)

// shortestPrefix is as little of an id as a teacher may type.
const shortestPrefix = 4

// Accepting says which line a teacher takes as right: the beginning of the id of
// its entry, or of the entry that disputes it; the Student, where the entry stands under
// several names, and the Text, where it came with several contents. Undo takes an
// acceptance back.
type Accepting struct {
	Entry   string
	Student string
	Text    string
	Undo    bool
}

// Accept takes a refused line as right from now on, or takes that back. An entry of
// its own is added beside it; nothing is changed. The line is returned as it stands
// then.
func (m *Markbook) Accept(o Accepting) (record.Entry, tutor.Line, error) {
	answer, err := m.answer(strings.ToLower(strings.TrimSpace(o.Entry)), o.Student)
	if err != nil {
		return answer, tutor.Line{}, err
	}
	owner, _ := m.ownerOf(answer)
	student, ok := m.Class.Student(owner)
	if !ok {
		return answer, tutor.Line{}, errNotOfClass
	}
	about := record.Entry{Kind: record.Accepted, Student: answer.Student, Problem: answer.Problem, Hash: answer.Hash, Copy: answer.Copy,
		Givens: answer.Givens, Stage: answer.Stage, Item: answer.Item, Ref: answer.ID, Text: o.Text}
	line, acceptance, err := m.standing(student, answer)
	switch {
	// This acceptance chooses the text, and so settles the entry.
	case err == errUnsettled && o.Text != "" && !o.Undo:
	case err != nil:
		return answer, line, err
	case o.Undo && !line.Accepted:
		return answer, line, ErrNotAccepted
	case o.Undo:
		about.Kind, about.Ref, about.Text = record.Withdrawn, acceptance, ""
	case line.Accepted:
		return answer, line, ErrIsAccepted
	case line.Verdict == checker.Right:
		return answer, line, ErrIsRight
	}
	if about.Detail, err = m.Record.Operator(); err != nil {
		return answer, line, err
	}
	if _, err := m.Record.Append(about); err != nil {
		return answer, line, err
	}
	line, _, err = m.standing(student, answer)
	return answer, line, err
}

// answer finds the answer that an id leads to.
func (m *Markbook) answer(prefix, student string) (record.Entry, error) {
	if len(prefix) < shortestPrefix {
		return record.Entry{}, errShortPrefix
	}
	found, err := m.Record.Find(prefix)
	if err != nil {
		return record.Entry{}, err
	}
	if s, ok := m.Class.Student(student); ok && student != "" {
		found = slices.DeleteFunc(found, func(e record.Entry) bool {
			owner, _ := m.ownerOf(e)
			return owner != problems.Fold(s.ID)
		})
	}
	switch {
	case len(found) == 0:
		return record.Entry{}, ErrNoEntry
	// One id twice is one entry under two names, not an id that is too short.
	case len(found) > 1 && found[0].ID == found[1].ID:
		return record.Entry{}, ErrManyStudents
	case len(found) > 1:
		return record.Entry{}, ErrManyEntries
	}
	e := found[0]
	// The teacher may have read the id of the dispute instead of that of the line.
	if e.Kind == record.Disputed {
		if e, err = m.Record.Entry(e.Ref, e.Student); err != nil {
			return e, ErrNotALine
		}
	}
	if e.Kind != record.Answer {
		return e, ErrNotALine
	}
	return e, nil
}

// standing finds an answer's line as it stands on its page, and the acceptance that
// counts for it.
func (m *Markbook) standing(student record.Student, answer record.Entry) (line tutor.Line, acceptance string, err error) {
	h, err := m.holdings()
	if err != nil {
		return line, "", err
	}
	entries, _, err := m.entriesOf(h, student.ID)
	if err != nil {
		return line, "", err
	}
	settled := m.settled(student.ID, entries)
	if !slices.ContainsFunc(settled, func(e record.Entry) bool { return e.ID == answer.ID }) {
		return line, "", errUnsettled
	}
	for _, a := range attemptsOf(settled) {
		if !a.Holds(answer) {
			continue
		}
		if m.judge(student.ID, a, time.Time{}); a.Page == nil {
			return line, "", ErrNotCounted
		}
		for _, e := range a.Entries {
			// Anybody can write an acceptance into a record of their own.
			if e.Kind == record.Accepted && e.Ref == answer.ID && m.mine[e.Record] {
				acceptance = e.ID
			}
		}
		for _, l := range a.Page.Lines() {
			if l.ID == answer.ID {
				return l, acceptance, nil
			}
		}
	}
	return line, "", ErrNotALine
}
