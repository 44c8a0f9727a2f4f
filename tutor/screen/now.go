package screen

import (
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
)

// now is what the lesson in hand comes to, found out once after each change and
// not once for each screen.
type now struct {
	version  int // of everything that is drawn from the lesson
	ask      tutor.Ask
	open     bool // something is asked
	over     bool
	canKeep  bool
	stages   [5]stageState
	progress tutor.Progress
	done     string // what is said once nothing is asked
	colours  map[string]int
	tints    map[string]frame.Shade
	letters  *expr.Letters
	echo     string // how the line is read
	formula  []frame.Block
}

// stageState is how far a stage has come.
type stageState struct {
	nothing bool // is asked in this problem
	done    bool
	kept    bool // an item of it stands on a line that was refused and kept
}

func isKept(l *tutor.Lesson, stage checker.Stage) bool {
	return slices.ContainsFunc(l.Items(stage), func(i tutor.Item) bool { return i.Kept })
}

// refresh finds out what the lesson comes to.
func (m *model) refresh() {
	l := m.lesson
	if l == nil {
		m.now = now{version: m.now.version + 1}
		m.colourBench()
		return
	}
	n := now{version: m.now.version + 1, colours: picture.Colours(l.Ref), over: l.Over(), canKeep: l.CanKeep()}
	n.ask, n.open = l.Ask()
	n.progress = l.Progress()
	if !n.open || n.over {
		n.done = saidDone(l)
	}
	for i, stage := range checker.Stages {
		n.stages[i] = stageState{nothing: l.Nothing(stage), done: l.StageDone(stage), kept: isKept(l, stage)}
	}
	n.tints = tintsOf(n.colours)
	n.letters = lettersOf(l.Page)
	m.now = n
	m.read()
	m.work.refresh(m)
}

// read finds out how the line is read.
func (m *model) read() {
	m.now.echo, m.now.formula = "", nil
	if m.lesson == nil {
		return
	}
	m.now.echo = m.lesson.Echo(m.line.text())
	if m.stage() != checker.Diagram && m.now.echo != "" {
		m.now.formula = m.look.Formulas(m.now.letters, m.now.echo)
	}
}

// stage is the one in hand; the last once nothing is open.
func (m *model) stage() checker.Stage {
	if m.now.open {
		return m.now.ask.Stage
	}
	return checker.Solve
}

// tintsOf gives each spelling of a force and its parts the force's shade.
func tintsOf(colours map[string]int) map[string]frame.Shade {
	tints := map[string]frame.Shade{}
	for name, colour := range colours {
		for _, spelling := range []string{name, expr.Glyph(name), expr.Set(name)} {
			for _, part := range []string{"", "x", "y", "ₓ"} {
				tints[spelling+part] = frame.ForceShade(colour)
			}
		}
	}
	return tints
}

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
		if _, part, dotted := strings.Cut(item, "."); dotted {
			l.Add(part, expr.Plain)
		}
	}
	return l
}

// tint paints the forces' letters in a text, each in its own colour. In prose a
// lone A or I is a word.
func (m *model) tint(base frame.Shade, text string, prose bool) frame.Row {
	text = m.look.Letters(text)
	var r frame.Row
	from := 0
	for at := 0; at < len(text); {
		size := frame.NameLength(text[at:])
		if size == 0 {
			at += frame.RuneLength(text[at:])
			continue
		}
		name := text[at : at+size]
		if s, ok := m.tintOf(name); ok && !(prose && (name == "A" || name == "I")) && !afterNumber(text[:at], name) {
			r = m.append(r, base, text[from:at])
			r = m.append(r, s, name)
			from = at + size
		}
		at += size
	}
	return m.append(r, base, text[from:])
}

func (m *model) tintOf(name string) (frame.Shade, bool) {
	if m.lesson != nil && m.choosing() {
		return frame.Plain, false // colours would tell which forces act
	}
	s, ok := m.now.tints[name]
	return s, ok
}

func (m *model) append(r frame.Row, s frame.Shade, text string) frame.Row {
	if text == "" {
		return r
	}
	return append(r, m.look.Text(s, text))
}

// afterNumber reports whether an N is the newton of a number in front of it.
func afterNumber(before, name string) bool {
	before = strings.TrimRight(before, " ")
	return name == "N" && before != "" && strings.ContainsRune("0123456789.)", rune(before[len(before)-1]))
}
