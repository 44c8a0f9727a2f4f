package screen

import (
	"strings"
	"unicode"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/views"
)

// check has a line checked. What is refused stays in the line.
func (m *model) check(text string) {
	// “T1x” alone takes up that component: it is no answer.
	if m.lesson.ChooseNamed(text) {
		m.line.Set("")
		m.refresh()
		m.say(saidNamed(m.stage(), m.now.Ask.Item))
		return
	}
	var result tutor.Result
	if !m.do(func() (err error) { result, err = m.lesson.Check(text); return err }) {
		return
	}
	if result.Said != "" {
		m.questionAnswered(result)
		return
	}
	if result.Line == nil {
		m.say(saidEmpty)
		return
	}
	// A refused line too: it is the one that is wanted back.
	m.line.Remember(result.Line.AsTyped)
	m.sheet = m.work
	m.told = views.TellOf(m.look, result.Line)
	if result.Line.Counts() || result.Line.Code.IsElsewhere() {
		m.line.Set("")
	} else {
		// It stays, to be mended and not typed again.
		m.line.Set(result.Line.AsTyped)
		m.line.Refuse(faultIn(m.line.Text(), result.Line.Report))
		m.toldOf = m.line.Text()
	}
	m.refresh()
	m.onward(result)
}

// onward says what comes after a line that counts.
func (m *model) onward(r tutor.Result) {
	if r.Moved {
		m.say(saidMoved(m.now.Ask.Title, m.skipped()))
	}
}

// skipped lists the stages just before the one in hand that ask for nothing.
func (m *model) skipped() []string {
	var titles []string
	for _, stage := range checker.Stages {
		if stage == m.now.Ask.Stage {
			break
		}
		if m.lesson.Nothing(stage) {
			titles = append(titles, tutor.Title(stage))
		}
	}
	return titles
}

// questionAnswered says what came of a prediction, or of the answer to the question after
// Solve.
func (m *model) questionAnswered(r tutor.Result) {
	if r.Line != nil {
		m.line.Remember(r.Line.AsTyped)
		m.line.Set("")
	}
	m.sheet = m.work
	m.refresh()
	m.say(r.Said)
}

// passOver goes straight to the sums, or says why not.
func (m *model) passOver() {
	var why string
	if !m.do(func() (err error) { why, err = m.lesson.PassOver(); return err }) {
		return
	}
	m.sheet = m.work
	m.say(why)
}

// faultIn is how far the text was right: to where it could not be read, else behind the term
// that the message is about, else behind the line of the text that was refused.
func faultIn(typed string, r checker.Report) int {
	text := []rune(typed)
	from, to := r.From, min(r.To, len(text))
	// Places are counted in characters as the student typed them.
	if r.Verdict == checker.Unread && r.End > 0 && r.Pos <= len(text) {
		return r.Pos
	}
	// The cursor goes behind the term that the message is about, where the correction begins.
	if at := findName(text[from:to], r.About); at >= 0 && r.Verdict == checker.Wrong {
		return endOfTerm(text[:to], from+at)
	}
	return to
}

// findName finds a force's letter that stands alone in a text, −1 for none: in
// "T1x = T1 sin α" the second.
func findName(text []rune, name string) int {
	wanted := []rune(name)
	for i := 0; len(wanted) > 0 && i+len(wanted) <= len(text); i++ {
		end := i + len(wanted)
		if string(text[i:end]) == name && (end == len(text) || !unicode.IsLetter(text[end]) && !unicode.IsDigit(text[end])) {
			return i
		}
	}
	return -1
}

// endOfTerm finds where the term ends that begins at a place.
func endOfTerm(text []rune, at int) int {
	for i := at; i < len(text); i++ {
		if strings.ContainsRune("+-−–=≈;", text[i]) {
			for i > at && text[i-1] == ' ' {
				i--
			}
			return i
		}
	}
	return len(text)
}
