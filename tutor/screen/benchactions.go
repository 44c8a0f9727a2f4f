package screen

import (
	"slices"
	"strings"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench"

	"example.org/standstill/tutor/record"
)

// Words that are obeyed at the bench alone; others are those of the lesson.
const (
	askResult   tutor.Word = "result"
	askBudget   tutor.Word = "budget"
	askValues   tutor.Word = "values"
	askPlot     tutor.Word = "plot"
	askRuns     tutor.Word = "runs"
	openRun     tutor.Word = "open"
	compareRuns tutor.Word = "compare"
	askPredict  tutor.Word = "predict"
	askTable    tutor.Word = "students"
	askReport   tutor.Word = "report"
	askSheet    tutor.Word = "sheet"
	askLook     tutor.Word = "look"
	askWarnings tutor.Word = "warnings"
	askCautions tutor.Word = "cautions"
	goToBench   tutor.Word = "bench"
)

// benchActions is the table of everything that can be done at the bench. A key does
// what comes nearest to what it does in a lesson.
func benchActions() []action {
	page := func(page int) func(*model) { return func(m *model) { m.showOutcome(page) } }
	return []action{
		{"", bind("ctrl+y", "value before", "ctrl+y"), menuRestore, (*model).canRestore, (*model).restore},
		{askResult, bind("ctrl+o", "result", "ctrl+o"), menuResult, (*model).isMeasuring, page(pageResult)},
		{askBudget, binding{}, menuBudget, (*model).isMeasuring, page(pageBudget)},
		{askPlot, binding{}, menuPlot, (*model).isMeasuring, (*model).showPlot},
		{askValues, binding{}, menuValues, (*model).isMeasuring, page(pageValues)},
		{askPredict, binding{}, menuPredict, (*model).isMeasuring, (*model).askPredict},
		{tutor.GoAgain, binding{}, menuRunAgain, (*model).isMeasuring, (*model).runAgain},
		{askRuns, bind("ctrl+l", "all runs", "ctrl+l"), menuRuns, (*model).isMeasuring, (*model).showRuns},
		{openRun, binding{}, "", (*model).isMeasuring, (*model).openNumbered},
		{compareRuns, binding{}, "", (*model).isMeasuring, (*model).compareNumbered},
		{askTable, binding{}, menuTable, (*model).isMeasuring, (*model).showTable},
		{askReport, binding{}, menuReport, (*model).isMeasuring, (*model).saveReport},
		{askSheet, binding{}, menuSheet, (*model).isMeasuring, (*model).saveSheet},
		{tutor.AskText, bind("ctrl+r", "problem", "ctrl+r"), menuText, (*model).isMeasuring, (*model).showApparatus},
		{tutor.AskDrawing, binding{}, menuDrawing, (*model).isMeasuring, (*model).showWords},
		{askWarnings, binding{}, menuWarnings, (*model).hasWarnings, (*model).showWarnings},
		{askLook, binding{}, menuLook, (*model).isMeasuring, (*model).showLook},
		{askCautions, binding{}, menuCautions, (*model).isMeasuring, (*model).showCautions},
		{tutor.AskHelp, bind("ctrl+g", "how to write", "ctrl+g"), menuNotation, (*model).isMeasuring, (*model).showNotation},
		{"", binding{}, menuBackground, always, (*model).otherBackground},
		{tutor.Leave, bind("ctrl+c", "leave", "ctrl+c"), menuLeave, always, (*model).leave},
	}
}

// byHandActions are those of a lesson whose numbers were measured: no other problem and no
// other student, but the way back.
func byHandActions() []action {
	elsewhere := []tutor.Word{tutor.GoNext, tutor.GoAgain, tutor.AskStudent}
	all := slices.DeleteFunc(actions(), func(a action) bool { return slices.Contains(elsewhere, a.word) })
	for i := range all {
		if all[i].word == tutor.AskProblems {
			all[i] = action{goToBench, bind("ctrl+l", "to the bench", "ctrl+l"), menuBench, always, (*model).toBench}
		}
	}
	return all
}

// isMeasuring reports whether an apparatus is on the table and the form is in hand.
func (m *model) isMeasuring() bool { return m.bench.passed[stepNames] && m.bench.table.Form != nil }

// withMore are the words that take something behind them.
var withMore = [...]tutor.Word{askPlot, openRun, compareRuns, askPredict, askTable, askReport, askSheet}

// wordOf finds the word that a line begins with, and what stands behind it.
func (b *atBench) wordOf(m *model, text string) (word tutor.Word, rest string, ok bool) {
	switch {
	case !m.isAtBench() && strings.EqualFold(strings.TrimSpace(text), string(goToBench)):
		return goToBench, "", true
	case !m.isAtBench():
		word, ok = tutor.WordOf(text)
		return word, "", ok
	case b.hasLine(m):
		text = b.form.meant(m, text)
	default:
		text = b.anew(m, text, b.refused)
	}
	return b.wordIn(m, text)
}

// wordIn finds a word among those that can be obeyed now: anything else may be a name or
// a value.
func (b *atBench) wordIn(m *model, text string) (word tutor.Word, rest string, ok bool) {
	first, rest, _ := strings.Cut(strings.TrimSpace(text), " ")
	rest = strings.TrimSpace(rest)
	for _, a := range m.actions {
		if a.word != "" && strings.EqualFold(string(a.word), first) && a.can(m) {
			return a.word, rest, rest == "" || slices.Contains(withMore[:], a.word)
		}
	}
	return "", "", false
}

// obeyTyped obeys a word with what stands behind it. In the form, the field in hand keeps
// what it had.
func (b *atBench) obeyTyped(m *model, word tutor.Word, text string) {
	_, b.rest, _ = b.wordOf(m, text)
	if b.hasLine(m) {
		b.form.load(m)
	} else {
		m.line.set("")
	}
	m.obeyWord(word)
	b.rest = ""
}

// whatItDoes says what a word does, as the menu has it.
func (m *model) whatItDoes(w tutor.Word) string {
	if !m.isAtBench() {
		return meaning(w)
	}
	for _, a := range m.actions {
		if a.word == w && a.menu != "" {
			return a.menu + "."
		}
	}
	return saidWithNumbers
}

// lay puts a sheet to be read over the form, which has the line.
func (m *model) lay(title string, make func(m *model, cols int) []row) {
	m.home()
	m.sheet = &reader{title: title, make: make}
}

func (m *model) showApparatus() {
	m.lay(wordText, func(m *model, cols int) []row { return m.paragraphs([]string{m.bench.table.Form.Statement()}, cols) })
}

func (m *model) showLook() {
	m.lay(wordLook, func(m *model, cols int) []row { return m.paragraphs(bench.Systematic(), cols) })
}

func (m *model) showCautions() { m.lay(wordCautions, cautionRows) }

func (m *model) showNotation() {
	m.lay(bench.Notation().Title, func(m *model, cols int) []row {
		var rows []row
		for _, entry := range bench.Notation().Rows {
			rows = append(rows, m.entryRows(entry[0], entry[1], notationWidth, cols)...)
		}
		rows = append(rows, nil)
		return append(rows, m.look.rows(quiet, saidAnyField, cols)...)
	})
}

// notationWidth is how wide the samples are in the list of what can be typed.
const notationWidth = 31

// saveReport writes the page for the lab book.
func (m *model) saveReport() {
	said, err := m.bench.table.Report(m.bench.Save, m.bench.rest, m.bench.zone)
	m.bench.tell(m, strings.Join(said, " "), err)
}

func (m *model) saveSheet() {
	said, err := m.bench.table.Sheet(m.bench.Save, m.bench.rest)
	m.bench.tell(m, said, err)
}

// runAgain begins another run of the apparatus.
func (m *model) runAgain() {
	if !m.bench.lend(m) {
		return
	}
	said, err := m.bench.table.Again()
	if err == nil {
		m.bench.begun(m)
		m.bench.to(m, m.bench.form)
	}
	m.bench.tell(m, said, err)
}

func (b *atBench) tell(m *model, said string, err error) {
	if err != nil {
		said = record.Sentence(err)
	}
	m.say(said)
}
