package plain

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
)

// help tells what is asked now, in other words, and where all that can be typed is
// listed.
func (s *session) help() {
	if s.lesson == nil {
		s.words()
		return
	}
	lost := s.lesson.Lost()
	s.say(saidNow, lost.Now)
	if lost.Example != "" {
		s.say(saidExample, lost.Example)
		if s.lesson.Refused(tutor.AskHint) == "" {
			s.say(saidAskHint)
		}
	}
	s.say(saidAskWords)
}

// ideas tells how far the student has come with each idea.
func (s *session) ideas() {
	said := s.desk.SaidIdeas()
	if said == nil {
		s.say(saidNoIdeas)
		return
	}
	s.say(saidIdeas)
	for _, one := range said {
		// A full stop makes a voice pause between two lines.
		s.say("%s.", one)
	}
}

// words lists all that can be typed.
func (s *session) words() {
	s.say(saidHelpWords)
	for _, w := range tutor.Words() {
		s.say("%s: %s.", w.Word, w.Does)
	}
	s.say(saidHelpTyping)
	for _, n := range tutor.Notation() {
		s.say("%s: %s", n.What, n.Examples)
	}
	if s.lesson != nil {
		s.say("%s", s.lesson.Letters())
	}
}

// heading names the problem in hand and prints its text.
func (s *session) heading(why string) {
	h := s.lesson.Problem.Heading
	s.say(saidProblem, h.Title, tutor.TopicTitle(h.Topic), problems.LevelWord(h.Level))
	if why != "" {
		s.say(saidWhy, why)
	}
	s.text()
}

func (s *session) text() {
	s.say(saidText, s.lesson.Statement())
	for _, g := range s.lesson.Givens() {
		if g.Meaning == "" {
			s.say(saidGiven, g.Text())
		} else {
			s.say(saidGivenAs, g.Text(), g.Meaning)
		}
	}
	s.setup()
	s.say(saidFind, strings.Join(s.lesson.Wanted(), ", "))
	s.say("%s", s.lesson.Letters())
}

// page prints all that stands on the page.
func (s *session) page() {
	if len(s.lesson.Lines()) == 0 {
		s.say(saidPageEmpty)
		return
	}
	s.say(saidPage)
	var last checker.Stage
	for _, l := range s.lesson.Lines() {
		// A listener hears the stage once and not with every line.
		if l.TypedIn != last {
			last = l.TypedIn
			s.say("%s:", tutor.Title(l.TypedIn))
		}
		s.pageLine(l)
	}
}

func (s *session) pageLine(l tutor.Line) {
	switch l.Kind {
	case tutor.Hinted:
		s.say("  "+saidHint, l.Level, l.Message)
		return
	case tutor.Revealed:
		s.say("  " + saidPageShown)
		return
	case tutor.Guessed:
		s.say("  "+saidPrediction, l.Message)
		return
	case tutor.Limited:
		s.say("  %s: %s", l.AsTyped, l.Message)
		return
	}
	word := wordFor(l.Verdict)
	switch {
	case l.Accepted:
		word = wordAccepted
	case l.Disputed:
		word = wordDisputed
	}
	// On one line, because each line that is printed is read out by itself.
	text := strings.ReplaceAll(l.AsTyped, "\n", "; ")
	// A component may be typed without its letter, and then nothing says whose it is.
	if l.Item != "" && !strings.Contains(text, "=") && l.TypedIn != checker.Solve {
		text = expr.Glyph(l.Item) + ": " + text
	}
	s.say("  %s: %s", word, text)
	if l.Doubt != "" {
		s.say("    %s", l.Doubt)
	}
	// Of a right line the verdict is enough when the page is read again.
	if l.Message != "" && l.Verdict != checker.Right {
		s.say("    %s", l.Message)
	}
	for _, note := range l.Notes {
		s.say("    %s", note)
	}
}

// goBack reads the stage before the one that is shown.
func (s *session) goBack() {
	stage, _, open := s.lesson.InHand()
	at := len(checker.Stages)
	if open {
		// Each “back” goes one stage further, until something is typed.
		at = s.place(stage) - 1
	}
	at -= s.back + 1
	if at < 0 {
		s.say(saidNoStageBefore)
		return
	}
	s.back++
	stage = checker.Stages[at]
	s.say(saidBack, at+1, tutor.Title(stage))
	lines := s.lesson.Of(stage)
	if len(lines) == 0 {
		s.say("  " + saidPageEmpty)
	}
	for _, l := range lines {
		s.pageLine(l)
	}
}

// choose lists the topics, then the problems of one, and opens the one that is
// chosen. Anything else goes back to the lesson.
func (s *session) choose() error {
	sections := s.desk.Sections()
	s.say(saidTopics)
	for i, section := range sections {
		done := 0
		for _, p := range section.Problems {
			if p.Status.Done() {
				done++
			}
		}
		s.say("%d. %s: %s", i+1, section.Title, saidCount(len(section.Problems), done))
	}
	s.say(saidChooseTopic)
	line, err := s.ask()
	if err != nil {
		return err
	}
	// Numbers are the shortest to type for somebody who hears a list.
	if i, ok := numbered(line, len(sections)); ok {
		return s.chooseFrom(sections[i])
	}
	for _, section := range sections {
		if strings.EqualFold(strings.TrimSpace(line), section.Title) || strings.TrimSpace(line) == section.ID {
			return s.chooseFrom(section)
		}
	}
	// A problem may be typed at once, without its topic.
	var all []tutor.Listed
	for _, section := range sections {
		all = append(all, section.Problems...)
	}
	return s.chosen(line, all)
}

func (s *session) chooseFrom(section tutor.Section) error {
	s.say(saidSection, section.Title)
	for i, p := range section.Problems {
		s.say("%d. %s: %s, %s, %s", i+1, p.Title, p.Progress, problems.LevelWord(p.Level), p.ID)
	}
	s.say(saidChooseProblem)
	line, err := s.ask()
	if err != nil {
		return err
	}
	if i, ok := numbered(line, len(section.Problems)); ok {
		return s.open(section.Problems[i].ID, false, "")
	}
	return s.chosen(line, section.Problems)
}

// chosen opens a problem by its id or title.
func (s *session) chosen(line string, list []tutor.Listed) error {
	line = strings.TrimSpace(line)
	// “menu” or “quit” must not be looked for among the titles.
	if word, ok := tutor.WordOf(line); ok {
		return s.word(word)
	}
	if i := titled(list, line); i >= 0 {
		return s.open(list[i].ID, false, "")
	}
	if line != "" {
		s.say(saidNoSuchProblem, line)
	}
	if s.lesson != nil {
		s.say(saidBackToLesson, s.lesson.Problem.Title)
		s.question(false)
	}
	return nil
}

// titled finds a problem by its id or title, or by a piece of one title alone; −1 for
// none.
func titled(list []tutor.Listed, line string) int {
	if i := slices.IndexFunc(list, func(l tutor.Listed) bool { return l.ID == line || strings.EqualFold(l.Title, line) }); i >= 0 {
		return i
	}
	found := -1
	for i, l := range list {
		if line == "" || !strings.Contains(strings.ToLower(l.Title), strings.ToLower(line)) {
			continue
		}
		if found >= 0 {
			// A piece of two titles means neither.
			return -1
		}
		found = i
	}
	return found
}

// numbered reads a number from 1 to n as a place in a list.
func numbered(line string, n int) (int, bool) {
	i, err := strconv.Atoi(strings.TrimSuffix(strings.TrimSpace(line), "."))
	return i - 1, err == nil && i >= 1 && i <= n
}

func saidCount(all, done int) string {
	noun := "problems"
	if all == 1 {
		noun = "problem"
	}
	return fmt.Sprintf("%d %s, %d done", all, noun, done)
}

// setup tells what the problem is about, in words.
func (s *session) setup() {
	if setup := picture.NewSetup(s.lesson.Ref, s.lesson.Problem.Figure); setup != nil && s.lesson.ShowsScene() {
		for _, sentence := range picture.Sentences(picture.Scene{Setup: setup}) {
			s.say(saidScene, sentence)
		}
	}
}

// drawing tells what the drawing of the stage shows; while the forces are still asked,
// that is the scene alone.
func (s *session) drawing() {
	stage, item, open := s.lesson.InHand()
	if open && stage == checker.Diagram {
		s.setup()
		s.say(saidDrawing, saidNoDrawing)
		return
	}
	view := picture.View{Stage: stage, Item: item, Solved: s.lesson.Over()}
	for _, sentence := range picture.Sentences(picture.OfProblem(s.lesson.Ref, view)) {
		s.say(saidDrawing, sentence)
	}
}
