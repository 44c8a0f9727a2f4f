package bench

import (
	"slices"
	"strings"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// Table is the run in hand of the students who share a table, whether it is led in
// lines or on a screen. Tutor is needed; Form is nil until there is an apparatus.
type Table struct {
	Tutor    *tutor.Tutor
	Form     *Form
	Students []record.Student

	run      string // its ID once it is kept
	kept     string // the text that was kept last
	trialled map[string]Trial
}

// Begin puts the empty form of an apparatus in hand; a run that was in hand is
// forgotten, so Keep comes first. The error is the solver's.
func (t *Table) Begin(p *problems.Problem) error {
	f, err := NewForm(p)
	if err == nil {
		t.Form, t.run, t.kept = f, "", ""
	}
	return err
}

// Enrol seats everybody who is named, with commas between, beside those who are
// there. why is a sentence where somebody cannot be; those named before are seated.
func (t *Table) Enrol(line string) (why string) {
	for _, name := range strings.FieldsFunc(line, func(r rune) bool { return r == ',' || r == ';' }) {
		s, ok, err := t.Tutor.Enrol(name)
		switch {
		case err != nil:
			return record.Sentence(err)
		case !ok && strings.TrimSpace(name) != "":
			return saidNotInClass(name)
		case ok && !has(t.Students, s):
			t.Students = append(t.Students, s)
			t.kept = "" // who joins is written to the run
		}
	}
	return ""
}

func has(students []record.Student, s record.Student) bool {
	return slices.ContainsFunc(students, func(known record.Student) bool { return known.ID == s.ID })
}

// Seated says who is at the table and where the run is kept.
func (t *Table) Seated() string { return saidSeated(names(t.Students), t.Tutor.Kept()) }

// Standings says of everybody at the table how far they predicted by hand.
func (t *Table) Standings() []string {
	var lines []string
	for _, s := range t.Students {
		lines = append(lines, t.Standing(s))
	}
	return lines
}

// Standing says how far a student predicted by hand on the numbers in hand: "Ana, by
// hand: worked out".
func (t *Table) Standing(s record.Student) string {
	return s.Name + saidStanding(standing(t.Tutor, s.ID, t.Form))
}

// Called finds who at the table has a name; where one student sits there alone,
// nobody need be named.
func (t *Table) Called(name string) (s record.Student, why string) {
	if name == "" && len(t.Students) == 1 {
		return t.Students[0], ""
	}
	for _, s := range t.Students {
		if strings.EqualFold(s.Name, strings.TrimSpace(name)) {
			return s, ""
		}
	}
	return s, saidNobodyCalled(name, names(t.Students))
}

// Keep writes what was typed to the record, if it is not there yet. Where nobody is
// at the table, nothing is kept. The error is that of the record.
func (t *Table) Keep() error {
	if t.Form == nil || t.Form.Empty() || t.Form.Text() == t.kept || len(t.Students) == 0 {
		return nil
	}
	run, err := Keep(t.Tutor.Record, t.Form, t.Students, t.run)
	if err != nil {
		return err
	}
	t.run, t.kept = run, t.Form.Text()
	return nil
}

// Run is the ID of the run in hand, "" before it is kept.
func (t *Table) Run() string { return t.run }

// Number is the number of the run in hand, 0 before it is kept.
func (t *Table) Number() int {
	runs, _ := Runs(t.Tutor.Record, "")
	for _, run := range runs {
		if run.ID == t.run {
			return run.Number
		}
	}
	return 0
}

// Numbered finds the run of a number that was typed.
func (t *Table) Numbered(number string) (Run, string) {
	runs, err := Runs(t.Tutor.Record, "")
	if err != nil {
		return Run{}, record.Sentence(err)
	}
	return pick(runs, number)
}

// Open puts a run in hand as it was typed, and says so; ok is false, and the sentence
// says why, where it cannot be read any more.
func (t *Table) Open(run Run) (said string, ok bool) {
	f, err := run.Open(t.Tutor.Record, t.Tutor.Bank)
	if err != nil {
		return saidCannotOpen(run.Number), false
	}
	t.Form, t.run, t.kept = f, run.ID, run.Text
	return saidOpened(run.Number), true
}

// Again begins another run of the apparatus: values stay, readings are emptied. The
// error is that of the record; the run in hand is then as it was.
func (t *Table) Again() (said string, err error) {
	if err := t.Keep(); err != nil {
		return "", err
	}
	for i := range t.Form.Fields {
		if t.Form.Fields[i].Kind == Reading {
			t.Form.Type(i, "")
		}
	}
	t.run, t.kept = "", ""
	return saidAgain, nil
}

// Trials are all runs of this apparatus that have a result, the one in hand last.
func (t *Table) Trials() ([]Trial, error) {
	runs, err := Runs(t.Tutor.Record, "")
	if err != nil {
		return nil, err
	}
	own := Trial{Number: len(runs) + 1}
	var trials []Trial
	for _, run := range runs {
		if run.ID == t.run {
			own.Number = run.Number
		}
		if run.ID == t.run || run.Problem != t.Form.problem.ID {
			continue
		}
		if trial, ok := t.trial(run); ok {
			trials = append(trials, trial)
		}
	}
	if r, why := t.Form.Result(); why == nil {
		own.Result = r
		trials = append(trials, own)
	}
	return trials, nil
}

// trial computes a run that is kept; false where it has no result any more.
func (t *Table) trial(run Run) (Trial, bool) {
	key := run.ID + run.Text
	if trial, ok := t.trialled[key]; ok {
		return trial, true
	}
	trial, wrong, err := run.again(t.Tutor)
	if err != nil || wrong != nil {
		return Trial{}, false
	}
	if t.trialled == nil {
		t.trialled = map[string]Trial{}
	}
	t.trialled[key] = trial
	return trial, true
}

// Compare lays the runs of these numbers side by side.
func (t *Table) Compare(numbers string) (blocks []Block, why string) {
	if err := t.Keep(); err != nil {
		return nil, record.Sentence(err)
	}
	var trials []Trial
	for _, number := range strings.FieldsFunc(numbers, func(r rune) bool { return r == ' ' || r == ',' }) {
		run, why := t.Numbered(number)
		if why != "" {
			return nil, why
		}
		trial, ok := t.trial(run)
		if !ok {
			return nil, saidCannotOpen(run.Number)
		}
		trials = append(trials, trial)
	}
	return Compare(trials)
}
