package plain

import (
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor"
)

// check checks a line and tells what came of it.
func (s *session) check(line string) error {
	var result tutor.Result
	err := s.save(func() (err error) { result, err = s.lesson.Check(line); return err })
	switch {
	case err != nil:
		return s.trouble(err)
	case result.Said != "":
		return s.questionAnswered(result)
	case result.Line == nil:
		s.say(saidEmpty)
		return nil
	}
	s.verdict(result.Line)
	if result.Line.Verdict != checker.Right && !result.Line.Code.IsElsewhere() && !s.told {
		// Once in a session; with every wrong line it would be in the way.
		s.told = true
		s.say(saidMayAsk)
	}
	s.onward(result)
	return nil
}

// questionAnswered tells what came of a prediction, or of the answer to the question
// after Solve.
func (s *session) questionAnswered(r tutor.Result) error {
	s.say(saidNote, r.Said)
	if r.Line != nil && r.Line.Kind == tutor.Guessed {
		s.question(false)
	}
	return nil
}

// verdict tells what was made of a text, line by line.
func (s *session) verdict(l *tutor.Line) {
	if l.Doubt != "" {
		s.say(saidDoubt, l.Doubt)
	}
	for _, one := range l.Statements() {
		s.report(one)
	}
	for _, note := range l.Notes {
		s.say(saidNote, note)
	}
	if l.OffersHint {
		s.say(saidHintIsNear)
	}
}

func (s *session) report(r checker.Report) {
	word := wordFor(r.Verdict)
	if r.Verdict == checker.Right {
		s.say("%s: %s", word, orItem(r))
		if r.Message != "" {
			s.say(saidNote, r.Message)
		}
		return
	}
	s.say("%s: %s", word, r.Message)
	if r.Read != "" {
		s.say(saidRead, r.Read)
	}
}

func orItem(r checker.Report) string {
	if r.Item != "" && !strings.Contains(r.Read, "=") && r.Read != "" {
		return expr.Glyph(r.Item) + ": " + r.Read
	}
	return r.Read
}

// onward tells what comes after a line.
func (s *session) onward(r tutor.Result) {
	switch {
	case r.Solved:
		s.solved()
	case r.Moved:
		s.question(true)
	// After a wrong line the question is still the same, and is not said again.
	case r.Line.Counts() || r.Line.Disputed || len(r.Line.Done) > 0:
		s.question(false)
	}
}

// question tells what is asked now: in full at the beginning of a stage, else the
// question alone.
func (s *session) question(full bool) {
	a, ok := s.lesson.Ask()
	if !ok {
		return
	}
	if full {
		s.say(saidStage, s.place(a.Stage), a.Title)
		s.skipped(a.Stage)
	}
	// On a slope the axes of one body are not those of the next.
	if axes := strings.Join(a.Directions, "; "); axes != "" && (full || axes != s.axes) {
		s.say(saidAxes, axes)
		s.axes = axes
	}
	if full && a.Stage == checker.Components && len(a.Open) > 1 {
		s.say(saidTable, strings.Join(glyphs(a.Open), ", "))
	}
	s.say(saidQuestion, a.Question)
	if full {
		s.say(saidSample, a.Sample)
	}
}

func glyphs(names []string) []string {
	all := make([]string, len(names))
	for i, n := range names {
		all[i] = expr.Glyph(n)
	}
	return all
}

// place is the number of a stage, from 1.
func (s *session) place(stage checker.Stage) int {
	for i, st := range checker.Stages {
		if st == stage {
			return i + 1
		}
	}
	return 0
}

// skipped tells which stages before this one ask for nothing in this problem.
func (s *session) skipped(stage checker.Stage) {
	at := s.place(stage) - 1
	for at > 0 && s.lesson.Nothing(checker.Stages[at-1]) {
		at--
		s.say(saidNothing, tutor.Title(checker.Stages[at]), string(checker.Stages[at][0]))
	}
}

// solved tells how the problem was done, the worked solution beside it, and what
// may come next.
func (s *session) solved() {
	progress := s.desk.Progress(s.lesson.Problem.ID)
	if s.guest {
		progress = s.desk.ProgressOf(s.lesson.Problem)
	}
	s.say("%s", progress.Result(s.lesson.Problem.Title))
	if said := s.lesson.SaidPrediction(); said != "" {
		s.say(saidPrediction, said)
	}
	s.worked(s.lesson.Worked())
	// Whoever leads the guest says what comes next.
	if s.guest {
		return
	}
	if advice, ok := s.desk.Next(); ok {
		s.say(saidThen, advice.Title, advice.Why)
	}
	if limit, ok := s.lesson.Limit(); ok {
		s.say(saidQuestion, limit.Question)
	}
}

func (s *session) worked(steps []tutor.Step) {
	s.say(saidWorked)
	for _, step := range steps {
		s.say("%s:", step.Title)
		for _, line := range step.Lines {
			s.say("  %s", line)
		}
	}
}

func (s *session) hint() error {
	var line *tutor.Line
	err := s.save(func() (err error) { line, err = s.lesson.Hint(); return err })
	switch {
	case err != nil:
		return s.trouble(err)
	case line == nil:
		s.say(saidNothingOpen)
		return nil
	}
	s.say(saidHint, line.Level, line.Message)
	return nil
}

func (s *session) dispute() error {
	var result tutor.Result
	err := s.save(func() (err error) { result, err = s.lesson.Dispute(); return err })
	switch {
	case err != nil:
		return s.trouble(err)
	case result.Line == nil:
		s.say(saidNothingToDispute)
		return nil
	}
	s.say(saidDisputed, result.Line.AsTyped)
	s.onward(result)
	return nil
}

func (s *session) solution() error {
	over := s.lesson.Over()
	var steps []tutor.Step
	err := s.save(func() (err error) { steps, err = s.lesson.Solution(); return err })
	if err != nil {
		return s.trouble(err)
	}
	s.worked(steps)
	switch {
	case !over && s.guest:
		s.say(saidShownGuest)
	case !over:
		s.say(saidShown)
	}
	return nil
}

// passOver goes straight to the sums, or tells why not.
func (s *session) passOver() error {
	why, err := s.lesson.PassOver()
	switch {
	case err != nil:
		return s.trouble(err)
	case why != "":
		s.say(saidSums, why)
		return nil
	}
	s.question(true)
	return nil
}
