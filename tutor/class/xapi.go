package class

import (
	"context"
	"io"
	"net/url"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/record"
)

// An xAPI statement (1.0.3), as far as it is used here.
type statement struct {
	ID        string   `json:"id"`
	Actor     agent    `json:"actor"`
	Verb      verb     `json:"verb"`
	Object    activity `json:"object"`
	Result    *outcome `json:"result,omitempty"`
	Context   within   `json:"context"`
	Timestamp string   `json:"timestamp"`
}

type agent struct {
	ObjectType string  `json:"objectType"`
	Account    account `json:"account"`
}

type account struct {
	HomePage string `json:"homePage"`
	Name     string `json:"name"`
}

type verb struct {
	ID      string            `json:"id"`
	Display map[string]string `json:"display"`
}

type activity struct {
	ObjectType string     `json:"objectType"`
	ID         string     `json:"id"`
	Definition definition `json:"definition"`
}

type definition struct {
	Name map[string]string `json:"name"`
	Type string            `json:"type"`
}

type outcome struct {
	Success    *bool  `json:"success,omitempty"`
	Completion *bool  `json:"completion,omitempty"`
	Response   string `json:"response,omitempty"`
}

type within struct {
	Platform          string                `json:"platform"`
	Extensions        map[string]string     `json:"extensions,omitempty"`
	ContextActivities map[string][]activity `json:"contextActivities,omitempty"`
}

// The verbs and kinds of activities, of public vocabularies.
const (
	verbAttempted = "http://adlnet.gov/expapi/verbs/attempted"
	verbAnswered  = "http://adlnet.gov/expapi/verbs/answered"
	verbCompleted = "http://adlnet.gov/expapi/verbs/completed"
	kindQuestion  = "http://adlnet.gov/expapi/activities/question"
	kindProblem   = "http://adlnet.gov/expapi/activities/performance"
)

// HomePage names the place to which students' ids belong in statements, where the
// teacher names no other.
const HomePage = "https://example.org/standstill"

// WriteStatements writes what the students did on set problems as xAPI statements,
// one on a line: each copy begun, each line checked, with its verdict, each
// problem done. Students go by their id in the account of the class at the home
// page; no names are written. students is how many have a statement.
func (m *Markbook) WriteStatements(ctx context.Context, w io.Writer, homePage string) (students int, err error) {
	h, err := m.holdings()
	if err != nil {
		return 0, err
	}
	s := &stating{home: homePage, code: m.Class.Code, latest: m.Now().Add(ahead), out: w}
	for i, student := range m.Class.Students {
		if err := ctx.Err(); err != nil {
			return students, err
		}
		entries, _, err := m.entriesOf(h, student.ID)
		if err != nil {
			return students, err
		}
		stated := false
		for _, a := range attemptsOf(m.settled(student.ID, entries)) {
			at := m.set(a.Problem)
			if at < 0 {
				continue
			}
			if m.judge(student.ID, a, time.Time{}); a.Page == nil {
				continue
			}
			if err := s.attempt(student, m.Class.Work[at], a); err != nil {
				return students, err
			}
			stated = true
		}
		// Counted only now: a student whose attempts do not count has no statement.
		if stated {
			students++
		}
		if m.Progress != nil {
			m.Progress(i+1, len(m.Class.Students))
		}
	}
	return students, nil
}

type stating struct {
	home, code string
	latest     time.Time // no entry can have been made after it
	out        io.Writer
}

func (s *stating) attempt(student record.Student, set tutor.Set, a *Attempt) error {
	problem := activity{"Activity", s.home + "/problems/" + set.ID, definition{map[string]string{"en": set.Title}, kindProblem}}
	base := statement{
		Actor:  agent{"Agent", account{s.home + "/classes/" + url.PathEscape(s.code), student.ID}},
		Object: problem, Context: within{Platform: "Standstill"},
	}
	first := a.Entries[0]
	begun := base
	begun.state(first.ID, verbAttempted, "attempted", first.Time)
	if err := s.write(begun); err != nil {
		return err
	}
	for _, l := range a.Page.Lines() {
		if l.Kind != tutor.Typed || l.Verdict == checker.Unread {
			continue
		}
		one := base
		one.state(l.ID, verbAnswered, "answered", l.Time)
		right := l.Counts()
		one.Result = &outcome{Success: &right, Response: l.AsTyped}
		one.Object = activity{"Activity", problem.ID + "/" + string(l.TypedIn), definition{map[string]string{"en": set.Title + ": " + tutor.Title(l.TypedIn)}, kindQuestion}}
		one.Context.ContextActivities = map[string][]activity{"parent": {problem}}
		if err := s.write(one); err != nil {
			return err
		}
	}
	if now := a.Page.Progress(); !now.Status.Done() {
		return nil
	}
	end, yes := base, true
	// No entry says that a problem is done, so the statement needs an id of its own.
	end.state(flipped(first.ID), verbCompleted, "completed", doneAt(a.Page))
	end.Result = &outcome{Completion: &yes}
	return s.write(end)
}

// StatementMark is in every statement.
const StatementMark = `"platform":"Standstill"`

// write writes a statement on one line. Its time is as it was recorded; one that
// cannot be is flagged.
func (s *stating) write(one statement) error {
	if at, err := time.Parse(timeForm, one.Timestamp); err == nil && (at.After(s.latest) || at.Year() < firstYear) {
		one.Context.Extensions = map[string]string{s.home + "/extensions/clock": saidClockFlag}
	}
	return classfile.WriteJSON(s.out, one, "")
}

func (s *statement) state(id, verbID, word string, at time.Time) {
	s.ID = uuid(id)
	s.Verb = verb{verbID, map[string]string{"en": word}}
	s.Timestamp = at.UTC().Format(timeForm)
}

// uuid makes a random UUID of an entry's id: the same entry is the same statement,
// however often it is exported.
func uuid(id string) string {
	b := []byte(id)
	// The version and the variant of a random UUID (RFC 9562); the other digits of an id are random already.
	b[12] = '4'
	b[16] = "89ab"[b[16]&3]
	return string(b[:8]) + "-" + string(b[8:12]) + "-" + string(b[12:16]) + "-" + string(b[16:20]) + "-" + string(b[20:32])
}

// flipped is another id that is as random and always the same.
func flipped(id string) string {
	b := []byte(id)
	for i, c := range b {
		b[i] = "fedcba9876543210"[hexValue(c)]
	}
	return string(b)
}

func hexValue(c byte) byte {
	if c >= 'a' {
		return c - 'a' + 10
	}
	return c - '0'
}
