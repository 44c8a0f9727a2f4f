package tutor

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// Class is what a teacher sets for a class. The zero value is no class: everybody
// may sit down, and the numbers are those of the files.
type Class struct {
	Name     string
	Code     string           // the number key: own numbers are drawn with it
	Students []record.Student // who may sit down, in this order; nil for anybody
	Work     []Set            // the set problems, in order
	Settings

	Judge Judge // nil for the checker's own judgement
}

// Judge judges an answer as [checker.Reference.Mark] does.
type Judge func(ref *checker.Reference, a checker.Answer, before []checker.Answer) checker.Report

// Set is a problem that is set. A zero Due is no date.
type Set struct {
	problems.Heading
	Due    time.Time
	Weight float64 // in the share of the work that is done, for the teacher's eyes; 0 for 1
}

// Settings are a class's choices; the zero value leaves everything to the program.
type Settings struct {
	Gravity    string  // "9.81 m/s^2" where a problem takes the usual g, "" for that one
	Tolerance  float64 // a share, 0.02 for 2 %; 0 for the checker's own
	NoHints    bool
	NoSolution bool // not before a problem is solved
	NoScenes   bool // no picture of what the text describes

	SignsRequired bool // a component that points against its axis is not taken as a size
	Working       bool // a value needs a line of working
	Figures       int  // that a value needs; 0 for the checker's own two, 1 for any

	Predictions Questions // before the sums
	Limits      Questions // after Solve
}

// Questions says whether a question is asked that belongs to no stage.
type Questions uint8

// A question is asked and may be passed over, is not asked, or has to be answered.
const (
	QuestionsAsked Questions = iota
	QuestionsOff
	QuestionsRequired
)

// Copy returns the student's own copy of a problem: the class's g in the place of
// the usual one, then numbers drawn with the class code.
func (c *Class) Copy(p *problems.Problem, student string, repeat int) (*problems.Problem, error) {
	p, err := c.WithGravity(p)
	if err != nil {
		return nil, err
	}
	return p.Draw(problems.Seed{Class: c.Code, Student: student, Repeat: repeat})
}

// WithGravity returns the problem with the class's g in the place of the usual one.
func (c *Class) WithGravity(p *problems.Problem) (*problems.Problem, error) {
	g, ok := p.System.Given("g")
	// A file that gives another g means it: the problem may be on the Moon.
	if !ok || c.Gravity == "" || !p.AssumedG && g.Number.Text+" "+g.Unit.Symbol != problems.StandardGravity {
		return p, nil
	}
	return p.WithValues(map[string]string{"g": c.Gravity})
}

// NewPage makes an empty page that is judged by the class's settings.
func (c *Class) NewPage(p *problems.Problem) (*Page, error) {
	g, err := NewPage(p)
	if err != nil {
		return nil, err
	}
	g.Ref = g.Ref.Under(checker.Rules{Share: c.Tolerance, Signs: c.SignsRequired, Figures: c.Figures})
	g.judgeWith = c.Judge
	g.class = c.Settings
	return g, nil
}

// Student finds who of the class is meant by an id, a name that only one has, or a
// place on the list.
func (c *Class) Student(who string) (s record.Student, ok bool) {
	for _, by := range []func(record.Student) string{
		func(s record.Student) string { return s.ID },
		func(s record.Student) string { return s.Name },
	} {
		var found []record.Student
		for _, s := range c.Students {
			if foldName(by(s)) == foldName(who) {
				found = append(found, s)
			}
		}
		if len(found) == 1 {
			return found[0], true
		}
	}
	// The place on the list comes last, because an id may be a number, too.
	if n, err := strconv.Atoi(strings.TrimSpace(who)); err == nil && n >= 1 && n <= len(c.Students) {
		return c.Students[n-1], true
	}
	return s, false
}

// enrolOf gives a place to somebody of the class.
func (t *Tutor) enrolOf(who string) (s record.Student, ok bool, err error) {
	if s, ok = t.Class.Student(who); !ok {
		return s, false, nil
	}
	if err := t.Record.AddStudent(s.ID, s.Name); err != nil {
		return s, true, err
	}
	return s, true, t.Record.SetLastStudent(s.ID)
}

// drawn is the student's own copy of a problem.
func (d *Desk) drawn(p *problems.Problem, repeat int) *problems.Problem {
	own, err := d.tutor.Class.Copy(p, d.Student.ID, repeat)
	if err != nil {
		return p // a problem whose draws are all thrown back is still worth working
	}
	return own
}

// setWork is the section of what is set, in the order in which it is set; ok is
// false where nothing is.
func (d *Desk) setWork() (section Section, ok bool) {
	section.Topic = problems.Topic{ID: setTopic, Title: saidSetWork}
	for _, s := range d.tutor.Class.Work {
		if h, ok := d.heading(s.ID); ok {
			section.Problems = append(section.Problems, Listed{h, d.Progress(s.ID), s.Due})
		}
	}
	return section, len(section.Problems) > 0
}

// setTopic is the id of that section; no topic of the bank has a capital.
const setTopic = "Set"

// dateRank compares dates; none is later than any.
func dateRank(a, b time.Time) int {
	switch {
	case a.IsZero() && b.IsZero():
		return 0
	case a.IsZero():
		return 1
	case b.IsZero():
		return -1
	}
	return a.Compare(b)
}

func saidSet(due time.Time) string {
	if due.IsZero() {
		return "This problem is set for your class."
	}
	return fmt.Sprintf("This problem is set for your class and is due on %s.", due.Local().Format("2 Jan 2006"))
}

// SaidVisitor says why a visitor cannot give the place to somebody else.
func SaidVisitor(name string) string {
	return "You are connected as " + name + ". If another student wants to practise, they have to connect from another window with their own name and pass phrase."
}

// Refused says why a word is not obeyed in this class, "" where it is.
func (l *Lesson) Refused(w Word) string {
	class := &l.desk.tutor.Class
	switch {
	case w == AskStudent && l.desk.tutor.IsVisit():
		return SaidVisitor(l.desk.Student.Name)
	case w == AskHint && class.NoHints:
		return saidNoHints
	case w == AskSolution && class.NoSolution && !l.Solved():
		return saidNoSolution
	}
	return ""
}
