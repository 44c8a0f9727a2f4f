package class

import (
	"slices"
	"strings"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

// Sheet is what one student's entries come to. It depends on nothing but the
// entries, the class and the checker, so that it may be remembered.
type Sheet struct {
	Works   []Work                  `json:"works,omitempty"`   // the set problems that were begun
	Beside  int                     `json:"beside,omitempty"`  // entries about problems that are not set
	Entries int                     `json:"entries,omitempty"` // all of them
	Remarks []summary.Remark        `json:"remarks,omitempty"`
	Recent  []Mistake               `json:"recent,omitempty"` // the last few, newest first
	Ideas   []summary.Understanding `json:"ideas,omitempty"`
}

// Work is what a student did about one set problem. The counts are of the best
// attempt, the time of all together. Stage and Item are those in hand where an
// attempt is not over.
type Work struct {
	Problem    string                 `json:"problem"`
	Status     tutor.Status           `json:"standing"`
	Attempts   int                    `json:"attempts"`
	Items      int                    `json:"items"`   // answered
	RightFirst int                    `json:"firstGo"` // of these, right first time
	Lines      int                    `json:"lines"`
	Refused    int                    `json:"refused"`
	Hints      int                    `json:"hints"`
	Shown      int                    `json:"shown"` // hints that showed a step
	Spent      time.Duration          `json:"spent"`
	Begun      time.Time              `json:"begun,omitzero"`
	Last       time.Time              `json:"last,omitzero"`
	Done       time.Time              `json:"done,omitzero"` // when the best attempt was done
	Stage      checker.Stage          `json:"stage,omitempty"`
	Item       string                 `json:"item,omitempty"`
	Stuck      *summary.Stuck         `json:"stuck,omitempty"`
	Mistakes   []Mistake              `json:"mistakes,omitempty"`
	Disputed   []summary.DisputedLine `json:"kept,omitempty"`
}

// Mistake is one kind of mistake in one stage of one problem, how often it was
// made, and one line with it, as typed.
type Mistake struct {
	Problem string        `json:"problem,omitempty"`
	Stage   checker.Stage `json:"stage"`
	Code    checker.Code  `json:"code"`
	Count   int           `json:"count"`
	Line    string        `json:"line"`
	Time    time.Time     `json:"time,omitzero"`
}

// longestPause is how much of a pause between two entries counts as work: who
// comes back after a longer one was away.
const longestPause = 10 * time.Minute

// mostRecent is how many of the last mistakes a sheet holds.
const mostRecent = 5

// sheet computes a student's sheet from the entries, which it puts in order.
func (m *Markbook) sheet(student string, entries, lost []record.Entry, whose map[string]string) Sheet {
	s := &sheeting{markbook: m, student: student, work: map[string]*Work{}, tried: map[string]int{}}
	for _, e := range lost {
		notice := summary.EntryCopied
		if whose[e.ID] == "" {
			notice = summary.EntryTied
		}
		s.remark(notice, e.Problem, whose[e.ID], "", 1)
	}
	s.given(entries)
	entries = s.settle(entries)
	// Before they are put in order of time: that a clock was put back shows only in the order of the numbers.
	s.clock(entries)
	entries = tutor.InOrder(entries)
	spent := timeSpent(entries)
	until := time.Now().Add(patienceOfSheet)
	for _, a := range attemptsOf(entries) {
		s.attempt(a, spent, until)
	}
	s.notes(entries)
	return s.close()
}

// fencedSheet is sheet where a fault of ours spoils no more than this student's row.
func (m *Markbook) fencedSheet(student string, entries, lost []record.Entry, whose map[string]string) (sheet Sheet) {
	if fault := tutor.Fenced(func() { sheet = m.sheet(student, entries, lost, whose) }); fault != nil {
		sheet = Sheet{Entries: len(entries)}
		sheet.Remarks = []summary.Remark{{Notice: summary.Fault, Student: student, Detail: fault.Error(), Count: len(entries)}}
	}
	return sheet
}

// faulty reports whether a fault of ours left something out, so that it is to be
// computed again the next time.
func (s *Sheet) faulty() bool {
	return slices.ContainsFunc(s.Remarks, func(r summary.Remark) bool { return r.Notice == summary.Fault })
}

// given counts what the student did, which notes about it and a teacher's word are
// not, and tells of what came under another name and was given to the student.
func (s *sheeting) given(entries []record.Entry) {
	for _, e := range entries {
		if e.Kind == record.Noted || tutor.OfTeacher(e) {
			continue
		}
		s.Entries++
		if _, given := s.markbook.ownerOf(e); given {
			s.remark(summary.Given, "", "", e.Student, 1)
		}
	}
}

// sheeting is a sheet while it is computed.
type sheeting struct {
	Sheet
	remarks
	markbook *Markbook
	student  string
	work     map[string]*Work
	tried    map[string]int // attempts by problem
	past     tutor.Past     // the attempts that count
}

func (s *sheeting) remark(n summary.Notice, problem, whose, detail string, count int) {
	s.add(summary.Remark{Notice: n, Student: s.student, Problem: problem, Whose: whose, Detail: detail, Count: count})
}

func (s *sheeting) attempt(a *Attempt, spent map[string]time.Duration, until time.Time) {
	if s.markbook.set(a.Problem) < 0 {
		s.Beside += len(a.Entries)
		return
	}
	s.tried[a.Problem]++
	if s.tried[a.Problem] > mostAttempts {
		s.remark(summary.TooMuch, a.Problem, "", "", len(a.Entries))
		return
	}
	s.markbook.judge(s.student, a, until)
	if a.Numbers == Measured {
		s.Beside += len(a.Entries)
		return
	}
	if a.Page == nil {
		detail := a.Givens
		if a.Numbers == Faulty {
			detail = a.Fault
		}
		s.remark(noticeOf[a.Numbers], a.Problem, a.Whose, detail, len(a.Entries))
		return
	}
	w := s.work[a.Problem]
	if w == nil {
		w = &Work{Problem: a.Problem, Begun: a.Entries[0].Time}
		s.work[a.Problem] = w
	}
	w.Attempts++
	for _, e := range a.Entries {
		w.Spent += spent[e.ID]
		if !tutor.OfTeacher(e) && e.Time.After(w.Last) {
			w.Last = e.Time
		}
	}
	for _, l := range a.Page.Lines() {
		if l.Fault != nil {
			s.remark(summary.Fault, a.Problem, "", l.AsTyped, 1)
		}
	}
	w.take(a.Page)
	s.mistakes(w, a.Page)
	s.understand(a)
}

// noticeOf says what there is to look at where an attempt does not count.
var noticeOf = map[Numbers]summary.Notice{Alone: summary.NumbersAlone, Others: summary.NumbersOthers, Nobodys: summary.NumbersNobodys, Unusable: summary.NumbersNobodys,
	OtherVersion: summary.ProblemOther, NotMarked: summary.TooMuch, Faulty: summary.Fault}

// take adds what stands on the page of one attempt.
func (w *Work) take(g *tutor.Page) {
	// The best attempt counts; of equals, the later one.
	if now := g.Progress(); now.Status >= w.Status {
		w.Status, w.Lines, w.Refused, w.Hints, w.Shown = now.Status, now.Lines, now.Refused, now.Hints, now.StepsShown
		w.Items, w.RightFirst = now.Items, now.RightFirst
		w.Done = time.Time{}
		if g.Solved() {
			w.Done = doneAt(g)
		}
	}
	w.Stage, w.Item, w.Stuck = "", "", nil
	if !g.Over() {
		w.Stage, w.Item, _ = g.InHand()
		w.Stuck = stuckAt(g, w.Stage, w.Item)
	}
	for _, l := range g.Lines() {
		if l.Kind == tutor.Typed && (l.Disputed || l.Accepted) && l.Verdict != checker.Right {
			w.Disputed = append(w.Disputed, summary.DisputedLine{Entry: l.ID, Problem: w.Problem, Stage: l.TypedIn, Item: l.Item, Line: l.AsTyped, Code: l.Code, Accepted: l.Accepted})
		}
	}
}

// doneAt is the time of the line that did the last open item.
func doneAt(g *tutor.Page) (at time.Time) {
	for _, l := range g.Lines() {
		if l.Kind == tutor.Typed && (len(l.Done) > 0 || l.Disputed || l.Accepted) && l.Time.After(at) {
			at = l.Time
		}
	}
	return at
}

// stuckAt counts what happened at the stage in hand since a line last counted
// there; nil for nothing.
func stuckAt(g *tutor.Page, stage checker.Stage, item string) *summary.Stuck {
	var s summary.Stuck
	for _, l := range g.Lines() {
		switch {
		case l.TypedIn != stage:
		case l.Kind == tutor.Hinted:
			s.Hints++
			s.AllHints = s.AllHints || l.ShowsStep()
		case l.Kind != tutor.Typed || l.Verdict == checker.Unread:
		case l.Counts() || l.Disputed || len(l.Done) > 0:
			s = summary.Stuck{}
		default:
			s.Refused++
			s.Line, s.Code = l.AsTyped, l.Code
		}
	}
	if s == (summary.Stuck{}) {
		return nil
	}
	return &s
}

// mistakes counts the mistakes of a page, line by line of every text.
func (s *sheeting) mistakes(w *Work, g *tutor.Page) {
	for _, l := range g.Lines() {
		if l.Kind != tutor.Typed || l.Accepted {
			continue
		}
		for _, said := range l.Statements() {
			if said.Verdict != checker.Wrong && said.Verdict != checker.Almost || said.Code.IsElsewhere() {
				continue // a true line helps on, whatever was asked
			}
			one := Mistake{Problem: w.Problem, Stage: said.Stage, Code: said.Code, Count: 1, Line: said.Text, Time: l.Time}
			// With its time and problem, which the count over all pages leaves out.
			s.recent(one)
			one.Problem, one.Time = "", time.Time{}
			w.Mistakes = addMistake(w.Mistakes, one)
		}
	}
}

// addMistake counts one mistake more. The line that stays is the shortest of those
// that are whole equations: it shows the mistake with least beside it.
func addMistake(list []Mistake, one Mistake) []Mistake {
	for i := range list {
		if l := &list[i]; l.Problem == one.Problem && l.Stage == one.Stage && l.Code == one.Code {
			l.Count += one.Count
			if lessLine(one.Line, l.Line) {
				l.Line = one.Line
			}
			return list
		}
	}
	return append(list, one)
}

func lessLine(a, b string) bool {
	if x, y := isWhole(a), isWhole(b); x != y {
		return x
	}
	if len(a) != len(b) {
		return len(a) < len(b)
	}
	return a < b
}

// isWhole reports whether a line is one equation with something on both sides, or
// names directions: a line that was broken off or mistyped is a poor sample.
func isWhole(line string) bool {
	left, right, found := strings.Cut(line, "=")
	if !found {
		return len(strings.Fields(line)) > 1
	}
	return strings.TrimSpace(left) != "" && strings.TrimSpace(right) != "" && !strings.Contains(right, "=")
}

// recent keeps the last few mistakes, newest first.
func (s *sheeting) recent(one Mistake) {
	at := len(s.Recent)
	for at > 0 && !one.Time.Before(s.Recent[at-1].Time) {
		at--
	}
	if at >= mostRecent {
		return
	}
	s.Recent = append(s.Recent, Mistake{})
	copy(s.Recent[at+1:], s.Recent[at:])
	s.Recent[at] = one
	s.Recent = s.Recent[:min(len(s.Recent), mostRecent)]
}

func (s *sheeting) close() Sheet {
	for _, set := range s.markbook.Class.Work {
		if w := s.work[set.ID]; w != nil {
			s.Works = append(s.Works, *w)
		}
	}
	s.Sheet.Remarks = s.remarks.list
	s.Ideas = s.understandings()
	return s.Sheet
}
