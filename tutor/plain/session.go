package plain

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"strings"
	"time"
	"unicode/utf8"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// session is one student after the other at one input.
type session struct {
	Options
	ctx     context.Context
	lines   <-chan string
	out     *bufio.Writer
	desk    *tutor.Desk
	lesson  *tutor.Lesson
	back    int // how many stages back the student is reading
	told    bool
	axes    string // what was last said of the axes
	guest   bool   // somebody else leads, and has one lesson led
	stop    func() // of a guest
	unsaved error  // why what was done last is not in the record
}

// errEnd ends the session: nothing more is to come, or the student quits.
var errEnd = errors.New("end")

func (s *session) run() error {
	s.say(saidHello)
	err := s.offer()
	if err == nil {
		err = s.begin(false)
	}
	for err == nil {
		err = s.step()
	}
	switch {
	case !errors.Is(err, errEnd):
		return err
	// What is promised at the end must be true of the answers and of the file in which they were.
	case s.SavedIn == "":
		s.say(saidEndNotSaved)
	case record.IsGone(s.Tutor.Record.Holds()):
		s.say(saidEndGone, record.Sentence(s.Tutor.Record.Holds()))
	case s.unsaved != nil:
		s.say(saidEndFault, record.Sentence(s.unsaved))
	default:
		s.say(saidEnd)
	}
	return nil
}

// offer tells what is the matter with the record and asks whether to go on
// without it.
func (s *session) offer() error {
	if s.Notice == "" {
		return nil
	}
	s.say(saidNotice, s.Notice)
	for {
		s.say(saidGoOn)
		line, err := s.ask()
		if err != nil {
			return err
		}
		switch strings.ToLower(strings.TrimSpace(line)) {
		case "yes", "y", "":
			// Enter alone means yes, because the question is whether to go on.
			s.say(saidWithout, tutor.SaidNotSaved)
			return nil
		case "no", "n", string(tutor.Quit):
			return errEnd
		}
	}
}

func (s *session) say(format string, parts ...any) {
	for line := range strings.SplitSeq(fmt.Sprintf(format, parts...), "\n") {
		s.out.WriteString(Broken(line, s.Cols) + "\n")
	}
}

// Broken is a line in several, broken between words so that none is longer than a width;
// a word that is longer stays whole.
func Broken(line string, cols int) string {
	if cols <= 0 || utf8.RuneCountInString(line) <= cols {
		return line
	}
	var b strings.Builder
	taken := 0
	for i, word := range strings.Split(line, " ") {
		size := utf8.RuneCountInString(word)
		switch {
		case i == 0:
		case taken+1+size > cols:
			b.WriteByte('\n')
			taken = 0
		default:
			b.WriteByte(' ')
			taken++
		}
		b.WriteString(word)
		taken += size
	}
	return b.String()
}

// ask prints the prompt and waits for a line.
func (s *session) ask() (string, error) {
	s.out.WriteString(prompt)
	if err := s.out.Flush(); err != nil {
		return "", err
	}
	select {
	case line, ok := <-s.lines:
		if !ok {
			s.out.WriteString("\n")
			return "", errEnd
		}
		if s.Echo {
			s.say("%s", line)
		}
		return line, nil
	case <-s.ctx.Done():
		s.out.WriteString("\n")
		return "", errEnd
	}
}

// begin finds out who is practising and opens a problem. The student of the last
// time is taken without a question, unless another is wanted.
func (s *session) begin(another bool) error {
	student, known, err := s.Tutor.LastStudent()
	if err != nil {
		return s.trouble(err)
	}
	switch {
	case !known || another:
		if student, err = s.name(); err != nil {
			return err
		}
		s.say(saidRecord, tutor.SaidWhoSees(s.SavedIn))
	case s.Tutor.IsVisit():
		s.say(saidVisitor, student.Name, tutor.SaidWhoSees(s.SavedIn))
	case s.Tutor.IsShared():
		if student, err = s.who(student); err != nil {
			return err
		}
	default:
		s.say(saidAgain, student.Name)
	}
	if s.desk, err = s.Tutor.Seat(student); err != nil {
		return s.trouble(err)
	}
	if id, ok := s.desk.Unfinished(); ok {
		return s.open(id, false, saidResume)
	}
	return s.next()
}

// who asks whether the student of the last time is here again, where several use the
// machine.
func (s *session) who(last record.Student) (record.Student, error) {
	for {
		s.say(saidWhoIsIt, last.Name)
		line, err := s.ask()
		if err != nil {
			return last, err
		}
		word, isWord := tutor.WordOf(line)
		switch {
		case word == tutor.Quit:
			return last, errEnd
		case word == tutor.AskStudent:
			return s.name()
		case isWord:
			continue
		case strings.TrimSpace(line) == "":
			return last, nil
		}
		student, ok, err := s.Tutor.Enrol(line)
		if err != nil {
			return student, s.trouble(err)
		}
		if ok {
			return student, nil
		}
		if s.Tutor.Class.Students != nil {
			s.say(saidNotOnList)
		}
	}
}

// name asks until there is a name.
func (s *session) name() (record.Student, error) {
	for i, one := range s.Tutor.Class.Students {
		s.say(saidOnList, i+1, one.Name)
	}
	for {
		s.say(saidName)
		line, err := s.ask()
		if err != nil {
			return record.Student{}, err
		}
		if word, ok := tutor.WordOf(line); ok {
			if word == tutor.Quit {
				return record.Student{}, errEnd
			}
			s.say(saidNotAName, word)
			continue
		}
		student, ok, err := s.Tutor.Enrol(line)
		if err != nil {
			return student, s.trouble(err)
		}
		if ok {
			return student, nil
		}
		if s.Tutor.Class.Students != nil {
			s.say(saidNotOnList)
		}
	}
}

// next takes up the problem that comes next.
func (s *session) next() error {
	advice, ok := s.desk.Next()
	if !ok {
		s.say(saidNoProblems)
		return nil
	}
	if s.lesson != nil {
		if left := s.lesson.SaidLeft(); left != "" {
			s.say(saidNote, left)
		}
	}
	return s.open(advice.ID, advice.Again, advice.Why)
}

// open goes on with a problem, or begins it anew.
// why is said below the title, "" for nothing.
func (s *session) open(id string, again bool, why string) error {
	open := s.desk.Open
	if again {
		open = s.desk.Again
	}
	var lesson *tutor.Lesson
	err := s.save(func() (err error) { lesson, err = open(id); return err })
	var fault *record.Error
	// A fault of the record concerns everything; any other error, this problem alone.
	if errors.As(err, &fault) {
		return s.trouble(err)
	}
	if err != nil {
		s.say(saidProblemBroken, id)
		return nil
	}
	s.lesson, s.back = lesson, 0
	s.heading(why)
	if lesson.Over() {
		s.say(saidOver, s.desk.Progress(id))
		return nil
	}
	if n := len(lesson.Lines()); n > 0 {
		s.say("%s", saidPageHolds(n))
	}
	s.question(true)
	if draft := lesson.Draft(); draft != "" {
		s.say(saidDraft, draft)
	}
	return nil
}

// moment is how long nothing is said while the record is waited for.
const moment = 700 * time.Millisecond

// save does something with the record, and says so where it has to wait.
func (s *session) save(do func() error) error {
	// The remark about waiting goes past the buffer, so what is in it must be out first.
	if err := s.out.Flush(); err != nil {
		return err
	}
	done, quiet := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(quiet)
		select {
		case <-done:
		case <-time.After(moment):
			fmt.Fprintln(s.Out, saidWaiting)
		}
	}()
	err := do()
	close(done)
	// Waited for, so that two goroutines never write at the same time.
	<-quiet
	s.unsaved = nil
	if fault := (*record.Error)(nil); errors.As(err, &fault) {
		s.unsaved = err
	}
	return err
}

// trouble tells what is the matter with the record. What is written on the screen
// as marked is kept; so the student can try the same again, and the session goes
// on.
func (s *session) trouble(err error) error {
	s.say(saidNotSaved, record.Sentence(err))
	// Nobody has sat down yet, so there is nothing to go on with.
	if s.desk == nil {
		return err
	}
	return nil
}

// step takes one line: a word, or work for what is in hand.
func (s *session) step() error {
	line, err := s.ask()
	if err != nil {
		return err
	}
	return s.take(line)
}

// wordOf finds the word that a line is, in the problem in hand.
func (s *session) wordOf(line string) (tutor.Word, bool) {
	if s.lesson == nil {
		return tutor.WordOf(line)
	}
	return s.lesson.WordOf(line)
}

// take obeys a word, or checks a line.
func (s *session) take(line string) error {
	word, isWord := s.wordOf(line)
	if word != tutor.GoBack {
		// Reading back begins at the present stage again after anything else.
		s.back = 0
	}
	if isWord {
		return s.word(word)
	}
	if s.lesson == nil {
		s.say(saidNoLesson)
		return nil
	}
	if s.lesson.ChooseNamed(line) {
		s.question(false)
		return nil
	}
	return s.check(line)
}

func (s *session) word(w tutor.Word) error {
	switch w {
	case tutor.Quit:
		return errEnd
	case tutor.AskHelp:
		s.help()
		return nil
	// In lines of text there is no menu; the list of words is the nearest to it.
	case tutor.AskTyping, tutor.AskMenu:
		s.words()
		return nil
	case tutor.AskIdeas:
		s.ideas()
		return nil
	case tutor.AskStudent:
		if s.Tutor.IsVisit() {
			s.say(saidRefused, tutor.SaidVisitor(s.desk.Student.Name))
			return nil
		}
		return s.begin(true)
	case tutor.AskProblems:
		return s.choose()
	case tutor.GoNext:
		return s.next()
	}
	if s.lesson == nil {
		s.say(saidNoLesson)
		return nil
	}
	if why := s.lesson.Refused(w); why != "" {
		s.say(saidRefused, why)
		return nil
	}
	switch w {
	case tutor.PassOver:
		return s.passOver()
	case tutor.AskText:
		s.text()
		s.question(true)
	case tutor.AskPage:
		s.page()
	case tutor.AskDrawing:
		s.drawing()
	case tutor.GoBack:
		s.goBack()
	case tutor.AskHint:
		return s.hint()
	case tutor.DisputeLine:
		return s.dispute()
	case tutor.AskSolution:
		return s.solution()
	case tutor.GoAgain:
		return s.open(s.lesson.Problem.ID, true, "")
	case tutor.AskAngles:
		return s.angles()
	}
	return nil
}
