package class

import (
	"fmt"
	"io"
	"strings"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

// Show writes all that a student did about one problem, as typed, each line with
// what was said about it, hints and disputed lines in their places. Attempts that do
// not count are shown too, and why they do not, and so are entries that count for
// somebody else under whose name they came as well.
func (m *Markbook) Show(w io.Writer, student record.Student, problem string) error {
	h, err := m.holdings()
	if err != nil {
		return err
	}
	entries, lost, err := m.entriesOf(h, student.ID)
	if err != nil {
		return err
	}
	t := &summary.Text{}
	for _, a := range attemptsOf(m.settled(student.ID, entries)) {
		if a.Problem == problem {
			m.judge(student.ID, a, time.Time{})
			m.showAttempt(t, student, a)
		}
	}
	m.showLost(t, lost, problem, h.lost[problems.Fold(student.ID)])
	if t.Len() == 0 {
		t.Line(saidNothingDone, classfile.Shown(student.Name), classfile.Shown(problem))
	}
	_, err = io.WriteString(w, t.String())
	return err
}

// showLost writes the entries about a problem that a dispute took from the student,
// with whom they count for.
func (m *Markbook) showLost(t *summary.Text, lost []record.Entry, problem string, whose map[string]string) {
	said := ""
	for _, e := range lost {
		if e.Problem != problem || e.Kind == record.Noted {
			continue
		}
		why := saidShowTied
		if winner := whose[e.ID]; winner != "" {
			why = fmt.Sprintf(saidShowLost, m.Class.Called(winner))
		}
		if why != said {
			apart(t)
			t.Line("%s", why)
			said = why
		}
		t.Line("  %s  %s  %s %s", summary.ShortID(e.ID), e.Time.Local().Format("15:04"), classfile.Shown(e.Kind), AsTyped(e.Text))
	}
}

// apart sets what follows off from what is there.
func apart(t *summary.Text) {
	if t.Len() > 0 {
		t.Line("")
	}
}

func (m *Markbook) showAttempt(t *summary.Text, student record.Student, a *Attempt) {
	apart(t)
	t.Line("%s, %s (%s)", classfile.Shown(student.Name), classfile.Shown(a.Problem), summary.Day(a.Entries[0].Time, true))
	if a.Page == nil {
		if why := m.notCounted(a); why != "" {
			t.Line("%s", why)
		}
		p, err := m.problem(a.Entries[0], true)
		if err == nil {
			// Marked all the same, so that the teacher can read what was done.
			m.mark(p, a, time.Time{})
		}
	}
	if a.Page == nil {
		for _, e := range a.Entries {
			t.Line("  %s  %s %s", summary.ShortID(e.ID), classfile.Shown(e.Kind), classfile.Shown(e.Text))
		}
		return
	}
	t.Line("%s", a.Page.Statement())
	t.Line(saidStands, a.Page.Progress())
	var stage checker.Stage
	for _, l := range a.Page.Lines() {
		if l.TypedIn != stage {
			stage = l.TypedIn
			t.Line("%s", tutor.Title(stage))
		}
		pageLine(t, l)
	}
	if draft := a.Page.Draft(); draft != "" {
		t.Line(saidHalfTyped, summary.Quoted(draft))
	}
}

func (m *Markbook) notCounted(a *Attempt) string {
	whose := ""
	if a.Whose != "" {
		whose = m.Class.Called(a.Whose)
	}
	return map[Numbers]string{
		Alone:        saidShowAlone,
		Others:       fmt.Sprintf(saidShowOthers, whose),
		Nobodys:      saidShowNobodys,
		OtherVersion: saidShowVersion,
		Unusable:     saidShowNobodys,
		Measured:     saidShowMeasured,
		NotMarked:    saidShowNotMarked,
		Faulty:       saidShowFaulty,
	}[a.Numbers]
}

// pageLine writes one line of a page with what was said about it.
func pageLine(t *summary.Text, l tutor.Line) {
	at := l.Time.Local().Format("15:04")
	switch l.Kind {
	case tutor.Hinted:
		t.Line("  %s  %s  hint %d of 3: %s", summary.ShortID(l.ID), at, l.Level, l.Message)
		return
	case tutor.Revealed:
		t.Line("  %s  %s  %s", summary.ShortID(l.ID), at, saidRevealed)
		return
	case tutor.Guessed, tutor.Limited: // neither is marked right or wrong
		t.Line("  %s  %s  %s (%s)", summary.ShortID(l.ID), at, AsTyped(l.AsTyped), classfile.Shown(l.Message))
		return
	}
	word := string(l.Verdict)
	if l.Code != "" {
		word += ": " + l.Code.Meaning()
	}
	switch {
	case l.Accepted:
		word += ", accepted"
	case l.Disputed:
		word += ", disputed"
	}
	t.Line("  %s  %s  %s  (%s)", summary.ShortID(l.ID), at, AsTyped(l.AsTyped), word)
	if l.Message != "" && l.Verdict != checker.Right {
		t.Line("      %s", classfile.Shown(l.Message))
	}
}

// AsTyped is a typed text on one line, harmless on a terminal.
func AsTyped(text string) string { return classfile.Shown(strings.ReplaceAll(text, "\n", "; ")) }
