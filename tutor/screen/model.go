package screen

import (
	"cmp"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
	atbench "example.org/standstill/tutor/screen/bench"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// model is the state of one instance.
type model struct {
	tutor    *tutor.Tutor
	renderer *lipgloss.Renderer
	look     *frame.Look
	light    bool
	notice   string // of the record, to be agreed to
	actions  views.Actions[*model]
	on       *frame.Keys // shared by all instances: only read

	cols, rows int
	bench      *atbench.Bench // nil where no apparatus is on the table
	desk       *tutor.Desk
	lesson     *tutor.Lesson
	now        views.Lesson  // what the lesson comes to
	reading    views.Reading // how the line is read
	version    int           // of everything that is drawn
	colours    map[string]int
	pen        *views.Pen
	work       *work
	sheet      sheet
	line       frame.Line
	memos      views.Memos
	said       string     // one sentence under the line, until the next key
	told       views.Told // about the line that was checked last, until the next one is
	toldOf     string     // that line

	shown    string // the screen as it is
	quitting bool
	lent     bool // the line belongs to the sheet, not to the lesson
	bye      Goodbye
	fault    error

	unsaved    error // why what was done last is not in the record
	draftFault error // the same of the half-typed line
}

// sheet is what lies on the page's place.
type sheet interface {
	// question says what the line is for.
	question(*model) string
	// view is what is to be seen of it.
	view(*model) views.Sheet
	// Saw is told how much of it was seen.
	Saw(frame.Seen)
	// keys lists the keys that work here, beside those of the line.
	keys(*model) []frame.Binding
	// press takes a key that types nothing; false leaves it to the model.
	press(m *model, k tea.KeyMsg) bool
	// typed is told that the text in the line has changed.
	typed(*model)
	// enter takes the line when Enter is pressed. It is no word.
	enter(m *model, text string)
}

// background is the setting that holds the remembered choice.
const background = "background"

// chooseBackground takes the flags, else what is remembered. A choice that cannot
// be remembered is taken all the same.
func (m *model) chooseBackground(o Options) {
	switch {
	case o.Light || o.Dark:
		m.light = o.Light
		_ = m.tutor.SetSetting(background, backgroundWord(m.light))
	default:
		// Colours are not worth a message; without an answer they are those for a dark background.
		kept, _ := m.tutor.Setting(background)
		m.light = kept == backgroundWord(true)
	}
}

func backgroundWord(light bool) string {
	if light {
		return "light"
	}
	return "dark"
}

// begin finds out who is practising, and goes to where they left.
func (m *model) begin() {
	if m.bench != nil {
		m.bench.Begin(&m.line, m.look, m.notice)
		return
	}
	if m.notice != "" {
		m.sheet = &agree{}
		return
	}
	student, known, err := m.tutor.LastStudent()
	switch {
	case err != nil:
		m.sheet = &welcome{}
		m.say(record.Sentence(err))
	case !known && m.tutor.Class.Students != nil:
		m.sheet = &welcome{}
		m.showStudents()
	case !known:
		m.sheet = &welcome{}
	// In a computer room the last student is likely to have been another one.
	case m.tutor.IsShared():
		m.sheet = &isIt{last: student}
	default:
		m.seat(student)
	}
}

// seat gives the place to a student.
func (m *model) seat(s record.Student) {
	desk, err := m.tutor.Seat(s)
	if err != nil {
		m.sheet = &welcome{}
		m.say(record.Sentence(err))
		return
	}
	m.desk, m.lesson, m.work, m.lent = desk, nil, nil, false
	// What the student before typed is not for the next one's eyes.
	m.line.Set("")
	if id, ok := desk.Unfinished(); ok {
		m.open(id, false)
		if m.lesson != nil {
			m.say(saidResume(s.Name, !m.tutor.IsVisit()))
			return
		}
	}
	m.sheet = newList(m)
}

// open goes on with a problem, or begins it anew.
func (m *model) open(id string, again bool) {
	open := m.desk.Open
	if again {
		open = m.desk.Again
	}
	// Before another lesson takes the line.
	m.saveDraft()
	lesson, err := open(id)
	if err != nil {
		m.say(views.SaidTrouble(id, err))
		return
	}
	m.lesson, m.lent, m.told = lesson, false, views.Told{}
	m.beginLine(lesson)
	m.work = newWork(m)
	m.refresh()
	m.sheet = m.work
}

// beginLine puts what was half typed in a lesson into the line, and its earlier lines behind.
func (m *model) beginLine(lesson *tutor.Lesson) {
	var past []string
	for _, old := range lesson.Lines() {
		if old.Kind == tutor.Typed {
			past = append(past, old.AsTyped)
		}
	}
	m.line.Begin(past, lesson.Draft())
}

// saveDraft saves the half-typed line of the lesson in hand, and says where that fails.
func (m *model) saveDraft() {
	// A lent line holds a name or a search, and no answer.
	if m.lesson == nil || m.lent {
		return
	}
	if m.draftFault = m.lesson.SaveDraft(m.line.Draft()); m.draftFault != nil {
		m.say(saidDraftNotSaved(m.draftFault))
	}
}

// lend gives the line to a sheet that asks for something else than the lesson.
func (m *model) lend() {
	m.saveDraft()
	m.lent = m.lesson != nil
	m.line.Set("")
	m.read()
}

// home is the sheet that others go back to.
func (m *model) home() {
	if m.lent {
		m.lent = false
		m.line.Set(m.lesson.Draft())
		m.read()
	}
	switch {
	case m.work != nil:
		m.sheet = m.work
	case m.desk != nil:
		m.sheet = newList(m)
	}
}

// close saves everything that was typed and is not saved yet.
func (m *model) close() {
	m.saveDraft()
	if m.bench != nil {
		m.bench.Close()
		m.bye.Form = m.bench.Unsaved()
	}
}

// say puts one sentence under the line.
func (m *model) say(sentence string) {
	if m.isAtBench() {
		m.bench.Say(sentence)
		return
	}
	m.said = sentence
}

// do runs what can go wrong with the record.
func (m *model) do(f func() error) bool {
	err := f()
	if m.unsaved = err; err != nil {
		m.say(saidNotSaved(err))
	}
	m.refresh()
	return err == nil
}

func (m *model) hasLesson() bool { return m.lesson != nil }

func (m *model) hasDesk() bool { return m.desk != nil }

func (m *model) isSeated() bool { return m.desk != nil || m.bench != nil }

func (m *model) isOpen() bool { return m.lesson != nil && m.now.Open }

func (m *model) canDispute() bool { return m.lesson != nil && m.now.CanDispute }

func (m *model) canTurn() bool { return m.lesson != nil && m.lesson.Over() }

func (m *model) isAtHome() bool { return m.work != nil && m.sheet == sheet(m.work) }

func (m *model) isTooSmall() bool { return m.cols < views.LeastCols || m.rows < views.LeastRows }

// isAtBench reports whether the bench is on the screen, and not the lesson of one who
// predicts by hand.
func (m *model) isAtBench() bool { return m.bench != nil && m.lesson == nil }

func (m *model) textChanged() {
	m.read()
	m.sheet.typed(m)
}

// toBench leads back from a prediction by hand, to whoever is next.
func (m *model) toBench() {
	m.saveDraft()
	student := m.desk.Student
	m.desk, m.lesson, m.work = nil, nil, nil
	m.line.Forget()
	m.refresh()
	m.bench.Back(student)
}

func (m *model) quit() { m.quitting = true }

func (m *model) goodbye() Goodbye {
	switch fault := m.recordFault(); {
	case m.tutor.SavedIn() == "" && m.bench == nil:
		m.bye.Said = views.SaidNothingSaved
	case fault != nil:
		m.bye.Said = saidGoodbyeFault(fault)
	case m.bench != nil:
		m.bye.Said = m.bench.Goodbye()
	case m.draftFault != nil:
		m.bye.Said = saidGoodbyeDraft(m.draftFault)
	default:
		m.bye.Said = saidGoodbye
	}
	// The terminal would break it inside a word.
	m.bye.Said = strings.Join(m.look.Wrap(m.bye.Said, cmp.Or(m.cols, views.LeastCols)), "\n")
	if m.bye.Plain {
		// The lines of text that follow say for themselves what is saved.
		m.bye.Said = ""
	}
	return m.bye
}

// otherBackground changes the colours for the other kind of background, and
// remembers it.
func (m *model) otherBackground() {
	m.light = !m.light
	m.renderer.SetHasDarkBackground(!m.light)
	m.look = frame.NewLook(m.renderer, m.light, m.look.Ascii)
	m.refresh()
	if m.bench != nil {
		m.bench.Repaint(m.look)
	}
	m.say(saidBackground(backgroundWord(m.light)))
	_ = m.tutor.SetSetting(background, backgroundWord(m.light))
}

// recordFault is what is the matter with the record at the end, nil for nothing.
func (m *model) recordFault() error {
	if err := m.tutor.Record.Holds(); err != nil && record.IsGone(err) {
		return err
	}
	if m.bench != nil && m.bench.Fault() != nil {
		return m.bench.Fault()
	}
	return m.unsaved
}
