package class

import (
	"errors"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// What accepting a line can run into. The errors are for the teacher.
var (
	ErrNoEntry     = errors.New("there is no entry that begins so in the class's record")
	ErrManyEntries = errors.New("several entries begin so; type more of the id")
	ErrNotALine    = errors.New("that entry is no line that a student handed in")
	ErrIsRight     = errors.New("that line is right already")
	ErrNotCounted  = errors.New("that line does not count, since its numbers are not the student's own")
	ErrNotAccepted = errors.New("that line was not accepted")
	ErrIsAccepted  = errors.New("that line is accepted already")
	errNotOfClass  = errors.New("that entry is of nobody in this class")
	errShortPrefix = errors.New("type at least four letters of the entry's id")
)

// shortestPrefix is as little of an id as a teacher may type.
const shortestPrefix = 4

// Accept takes a refused line as right from now on, or with undo takes that back.
// The line is named by the beginning of its entry's id, or of the entry that kept
// it. An entry of its own is added beside it; nothing is changed. The line is
// returned as it stands then.
func (m *Markbook) Accept(prefix string, undo bool) (record.Entry, tutor.Line, error) {
	answer, err := m.answer(strings.ToLower(strings.TrimSpace(prefix)))
	if err != nil {
		return answer, tutor.Line{}, err
	}
	student, ok := m.Class.Student(answer.Student)
	if !ok {
		return answer, tutor.Line{}, errNotOfClass
	}
	line, acceptance, err := m.standing(student, answer)
	if err != nil {
		return answer, line, err
	}
	about := record.Entry{Kind: record.Accepted, Student: answer.Student, Problem: answer.Problem, Hash: answer.Hash, Copy: answer.Copy,
		Givens: answer.Givens, Stage: answer.Stage, Item: answer.Item, Ref: answer.ID}
	switch {
	case undo && !line.Accepted:
		return answer, line, ErrNotAccepted
	case undo:
		about.Kind, about.Ref = record.Withdrawn, acceptance
	case line.Accepted:
		return answer, line, ErrIsAccepted
	case line.Verdict == checker.Right:
		return answer, line, ErrIsRight
	}
	if _, err := m.Record.Append(about); err != nil {
		return answer, line, err
	}
	line, _, err = m.standing(student, answer)
	return answer, line, err
}

// answer finds the answer that an id leads to.
func (m *Markbook) answer(prefix string) (record.Entry, error) {
	if len(prefix) < shortestPrefix {
		return record.Entry{}, errShortPrefix
	}
	found, err := m.Record.Find(prefix)
	switch {
	case err != nil:
		return record.Entry{}, err
	case len(found) == 0:
		return record.Entry{}, ErrNoEntry
	case len(found) > 1:
		return record.Entry{}, ErrManyEntries
	}
	e := found[0]
	if e.Kind == record.Kept {
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
	ids, _, err := m.present()
	if err != nil {
		return line, "", err
	}
	entries, err := m.entriesOf(ids[problems.Fold(student.ID)])
	if err != nil {
		return line, "", err
	}
	for _, a := range attemptsOf(entries) {
		if !a.Holds(answer) {
			continue
		}
		if m.judge(student.ID, a); a.Page == nil {
			return line, "", ErrNotCounted
		}
		for _, e := range a.Entries {
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
