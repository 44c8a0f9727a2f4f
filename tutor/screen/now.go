package screen

import (
	"cmp"
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/views"
)

// refresh finds out what the lesson comes to.
func (m *model) refresh() {
	// Whatever is remembered of the old state is out of date by this.
	m.version++
	if m.lesson == nil {
		m.now, m.colours = views.Lesson{}, nil
		m.pen = views.NewPen(m.look, m.colours, nil)
		return
	}
	m.now = lessonOf(m.lesson)
	m.now.Version = m.version
	m.colours = picture.Colours(m.lesson.Ref)
	m.pen = views.NewPen(m.look, m.colours, lettersOf(m.lesson.Page))
	if m.choosing() {
		// A colour in the text would tell which of the offered forces act.
		m.pen = m.pen.Grey()
	}
	m.read()
	m.work.refresh(m)
}

// lessonOf finds out all that is shown of a lesson.
func lessonOf(l *tutor.Lesson) views.Lesson {
	n := views.Lesson{
		Over: l.Over(), CanDispute: l.CanDispute(), Progress: l.Progress(),
		Ref: l.Ref, Problem: l.Problem.Hash + "/" + l.Problem.Copy,
		Statement: l.Statement(), Givens: l.Givens(), Wanted: l.Wanted(), Lines: l.Lines(),
		Components: l.Items(checker.Components), Unknowns: l.Items(checker.Solve),
	}
	if l.ShowsScene() {
		// Made when it is drawn, and then remembered: to work it out takes longer than a key may.
		n.Setup = func() *picture.Setup { return picture.NewSetup(l.Ref, l.Problem.Figure) }
	}
	n.Ask, n.Open = l.Ask()
	if !n.Open || n.Over {
		n.Done = saidDone(l)
	}
	for i, stage := range checker.Stages {
		n.Stages[i] = views.StageState{Nothing: l.Nothing(stage), Done: l.StageDone(stage), Disputed: isDisputed(l, stage)}
	}
	return n
}

func isDisputed(l *tutor.Lesson, stage checker.Stage) bool {
	return slices.ContainsFunc(l.Items(stage), func(i tutor.Item) bool { return i.Disputed })
}

// read finds out how the line is read.
func (m *model) read() {
	m.reading = views.Reading{}
	if m.lesson == nil {
		return
	}
	m.reading.Echo = m.lesson.Echo(m.line.Text())
	// A list of forces is no formula to be stacked.
	if m.stage() != checker.Diagram && m.reading.Echo != "" {
		m.reading.Formula = m.pen.Formulas(m.reading.Echo)
	}
}

func (m *model) stage() checker.Stage { return m.now.Stage() }

// choosing reports whether the student is at the force diagram.
func (m *model) choosing() bool { return m.lesson != nil && m.now.Choosing() }

// lettersOf is the vocabulary in which read-backs are written: the problem's own
// names.
func lettersOf(g *tutor.Page) *expr.Letters {
	l := &expr.Letters{}
	for _, v := range g.Ref.Variables() {
		l.Add(v.Name, expr.Plain)
	}
	for _, e := range g.Problem.System.Equal {
		l.Add(e.Letter, expr.Plain)
	}
	for _, b := range g.Ref.Bodies {
		for _, f := range b.Forces {
			l.Add(f.Name, expr.Plain)
		}
	}
	for _, item := range g.Ref.Items(checker.Components) {
		l.Add(item, expr.Plain)
		// On the page of one body its components are written without its name.
		if _, part, dotted := strings.Cut(item, "."); dotted {
			l.Add(part, expr.Plain)
		}
	}
	return l
}

// draw shows what the state has come to, and notes how much of the sheet was seen.
func (m *model) draw() string {
	switch {
	case m.cols == 0 || m.rows == 0:
		return ""
	case m.isTooSmall():
		return m.look.Sheet(views.TooSmall(m.look, m.what(), m.cols, m.rows))
	}
	rows, seen := m.screen().Draw()
	if m.isAtBench() {
		m.bench.Saw(seen)
	} else {
		m.sheet.Saw(seen)
	}
	return m.look.Sheet(rows)
}

// what is in the window.
func (m *model) what() string {
	if m.isAtBench() {
		return whatBench
	}
	return whatLesson
}

// screen is all that is seen now.
func (m *model) screen() *views.Screen {
	if m.isAtBench() {
		return m.bench.Screen(m.cols, m.rows)
	}
	s := &views.Screen{
		Pen: m.pen, Memos: &m.memos, Cols: m.cols, Rows: m.rows,
		Question: m.sheet.question(m), Line: m.line.Shown(), Command: m.command(),
		Told: m.told, Note: views.NoteOf(m.said), Figure: m.figure(), Wide: m.isAtHome(),
		Sheet: m.sheet.view(m), Keys: m.sheet.keys(m), Stay: m.stayKeys(), Scroll: m.on.ScrollHere,
	}
	// Over another sheet the message would be about a line that nobody sees.
	s.Told.Shown = m.told.Text != "" && m.isAtHome()
	m.head(s)
	return s
}

// head is the title and the rope.
func (m *model) head(s *views.Screen) {
	s.Title = views.SaidProgram
	dash := " " + m.look.Signs.Dash + " "
	if m.lesson != nil {
		h := m.lesson.Problem.Heading
		s.Title, s.Right = h.Title, cmp.Or(m.work.topic, h.Topic)+dash+problems.LevelWord(h.Level)
		s.Rope = views.RopeOf(m.look, &m.now)
	}
	if m.desk != nil {
		s.Right = strings.TrimPrefix(s.Right+dash+m.desk.Student.Name, dash)
	}
}

// command says what the command does that stands in the line; nil for none.
func (m *model) command() *string {
	word, ok := m.wordOf(m.line.Text())
	if !ok {
		return nil
	}
	does := meaning(word)
	return &does
}

// stayKeys are those of the hint, and of the problem's text where that is not in sight.
func (m *model) stayKeys() []string {
	stay := []string{m.on.Check.Help().Key}
	switch {
	case m.lesson == nil:
		return stay
	case m.choosing():
		// In Forces the text is always in sight.
		return append(stay, "ctrl+g")
	}
	return append(stay, "ctrl+g", "ctrl+r")
}

// figure is the drawing of what is in hand; nil for none.
func (m *model) figure() *views.Figure {
	if m.lesson == nil {
		return nil
	}
	key := views.FigureKey{Version: m.version, At: -1}
	if m.choosing() {
		c := &m.work.chooser
		key.Listed = c.text()
		if c.active {
			key.At = c.at
		}
	}
	return &views.Figure{Key: key, Scene: m.picture}
}

// picture is what the student is working on.
func (m *model) picture() picture.Scene {
	v := picture.View{Stage: m.stage(), Solved: !m.now.Open}
	if m.now.Open {
		// What is in hand is drawn thicker.
		v.Item = m.now.Ask.Item
	}
	if m.choosing() {
		v.Body, v.Listed = m.now.Ask.Item, m.work.chooser.listed()
	}
	return picture.OfProblem(m.lesson.Ref, v)
}

// inWords says what can be seen: in Forces the scene.
func (m *model) inWords() []string {
	s := m.picture()
	if m.choosing() && m.lesson.ShowsScene() {
		s.Setup = picture.NewSetup(m.lesson.Ref, m.lesson.Problem.Figure)
	}
	return picture.Sentences(s)
}

// goToBench is the word that leads to the bench: a visitor from the problems, and everybody
// from a prediction by hand.
const goToBench tutor.Word = "bench"

// wordOf finds the word that a whole line is.
func (m *model) wordOf(text string) (tutor.Word, bool) {
	switch {
	case strings.EqualFold(strings.TrimSpace(text), string(goToBench)) && (m.bench != nil || m.tutor.IsVisit()):
		return goToBench, true
	// The lesson knows which of its letters look like a word.
	case m.bench == nil && m.lesson != nil && !m.lent:
		return m.lesson.WordOf(text)
	}
	return tutor.WordOf(text)
}

func meaning(w tutor.Word) string {
	for _, h := range tutor.Words() {
		if h.Word == w {
			return saidMeaning(h.Does)
		}
	}
	return ""
}
