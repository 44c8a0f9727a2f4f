package bench

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// Table is the run in hand of the group that shares a table, whether it is led in lines
// or on a screen. Tutor is needed; Form is nil until there is an apparatus; Steps are those
// of Script where they are nil. Save writes the files; nil where none can be written. Zone
// is that of the times that are shown, local if nil. Names are those that are expected at the table.
type Table struct {
	Tutor    *tutor.Tutor
	Form     *Form
	Steps    []Step
	Students []record.Student
	Names    []string
	Save     Saver
	Zone     *time.Location

	run     string          // its ID once it is saved
	asSaved string          // the text that was saved last
	passed  map[string]bool // steps that are done and leave nothing in the form
	asked   map[string]bool // doubts about a value that were asked
	axes    string          // of the last straight line
	known   map[string]Computed
}

func (t *Table) zone() *time.Location {
	if t.Zone == nil {
		return time.Local
	}
	return t.Zone
}

// Pass notes that a step is done that leaves nothing in the form, or that it is not.
func (t *Table) Pass(step string, done bool) { t.passed[step] = done }

// Begin puts the empty form of an apparatus in hand; a run that was in hand is
// forgotten, so SaveRun comes first. The error is the solver's.
func (t *Table) Begin(p *problems.Problem) error {
	f, err := NewForm(p)
	if err != nil {
		return err
	}
	// The zero Table is ready for use.
	if t.passed == nil {
		t.passed, t.asked, t.known = map[string]bool{}, map[string]bool{}, map[string]Computed{}
	}
	t.take(f, "", "")
	return nil
}

// take puts a form in hand, of a run that is saved or of a new one.
func (t *Table) take(f *Form, run, kept string) {
	t.Form, t.run, t.asSaved = f, run, kept
	t.Pass(StepByHand, false)
	t.Pass(StepResult, false)
}

// Enrol seats everybody who is named, with commas between, beside those who are
// there. why is a sentence where somebody cannot be; those named before are seated.
func (t *Table) Enrol(line string) (why string) {
	for _, name := range strings.FieldsFunc(line, func(r rune) bool { return r == ',' || r == ';' }) {
		s, ok, err := t.Tutor.Enrol(name)
		switch {
		case err != nil:
			return record.Sentence(err)
		// A comma at the end names nobody.
		case !ok && strings.TrimSpace(name) != "":
			return saidNotInClass(name)
		case ok && !has(t.Students, s):
			t.Students = append(t.Students, s)
			t.asSaved = "" // who joins is written to the run
		}
	}
	return ""
}

func has(students []record.Student, s record.Student) bool {
	return slices.ContainsFunc(students, func(known record.Student) bool { return known.ID == s.ID })
}

// NamesOf are the names of students.
func NamesOf(students []record.Student) []string {
	var names []string
	for _, s := range students {
		names = append(names, s.Name)
	}
	return names
}

// Seated says who is at the table and where the run is saved.
func (t *Table) Seated() string { return saidSeated(NamesOf(t.Students), t.Tutor.SavedIn()) }

// Statuses says of everybody at the table how far they predicted by hand.
func (t *Table) Statuses() []string {
	var lines []string
	for _, s := range t.Students {
		lines = append(lines, t.Status(s))
	}
	return lines
}

// Status says how far a student predicted by hand on the numbers in hand: "Ana, by
// hand: worked out".
func (t *Table) Status(s record.Student) string {
	return s.Name + saidStatus(statusOf(t.Tutor, s.ID, t.Form))
}

// Lesson seats a student at the lesson on the measured numbers.
func (t *Table) Lesson(s record.Student) (*tutor.Desk, *tutor.Lesson, error) {
	p, why := t.Form.Copy()
	if why != "" {
		return nil, nil, errors.New(why)
	}
	desk, err := t.Tutor.Seat(s)
	if err != nil {
		return nil, nil, err
	}
	lesson, err := desk.OpenCopy(p, t.run)
	return desk, lesson, err
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
	return s, saidNobodyCalled(name, NamesOf(t.Students))
}

// SaveRun writes what was typed to the record, if it is not there yet. Where nobody is
// at the table, nothing is saved. The error is that of the record.
func (t *Table) SaveRun() error {
	// A run belongs to somebody, and an unchanged one would only make the record longer.
	if t.Form == nil || t.Form.Empty() || t.Form.Text() == t.asSaved || len(t.Students) == 0 {
		return nil
	}
	run, err := SaveRun(t.Tutor.Record, t.Form, t.Students, t.run)
	if err != nil {
		return err
	}
	t.run, t.asSaved = run, t.Form.Text()
	return nil
}

// Run is the ID of the run in hand, "" before it is saved.
func (t *Table) Run() string { return t.run }

// Number is the number of the run in hand, 0 before it is saved.
func (t *Table) Number() int {
	run, _ := t.inHand()
	return run.Number
}

// inHand is the run in hand as it is saved, empty before, and how many are saved.
func (t *Table) inHand() (Run, int) {
	runs, _ := Runs(t.Tutor.Record, "")
	if i := slices.IndexFunc(runs, func(run Run) bool { return run.ID == t.run }); i >= 0 {
		return runs[i], len(runs)
	}
	return Run{}, len(runs)
}

// numbered finds the run of a number that was typed.
func (t *Table) numbered(number string) (Run, string) {
	runs, err := Runs(t.Tutor.Record, "")
	if err != nil {
		return Run{}, record.Sentence(err)
	}
	// Others' runs may be opened too, by their number; not on a visit.
	return pick(t.ofUs(runs, true), number)
}

// open puts the run of a number in hand as it was typed. A run belongs to those who made
// it: what others change in it is a new run of theirs.
func (t *Table) open(number string) Answer {
	if err := t.SaveRun(); err != nil {
		return refuses(record.Sentence(err))
	}
	run, why := t.numbered(number)
	if why != "" {
		return refuses(why)
	}
	f, err := run.Open(t.Tutor.Record, t.Tutor.Bank)
	if err != nil {
		return refuses(saidCannotOpen(run.Number))
	}
	said := saidOpened(run.Number)
	if t.isOurs(run) {
		t.take(f, run.ID, run.Text)
	} else {
		// Nothing is written until something is changed: looking at a run makes no copy of it.
		t.take(f, "", f.Text())
		names, _ := Names(t.Tutor.Record)
		said = saidOpenedOthers(run.Number, run.named(names))
	}
	return Answer{Said: []string{said}, Opened: true}
}

// isOurs reports whether somebody at the table made a run.
func (t *Table) isOurs(run Run) bool {
	return slices.ContainsFunc(t.Students, func(s record.Student) bool { return slices.Contains(run.Students, s.ID) })
}

// again begins another run of the apparatus: values stay, readings and what was noted
// are emptied. Where the run in hand cannot be saved, it stays as it was.
func (t *Table) again() Answer {
	if err := t.SaveRun(); err != nil {
		return refuses(record.Sentence(err))
	}
	for i := range t.Form.Fields {
		if e := &t.Form.Fields[i]; e.Kind == Reading && e.Value.Measured {
			// A rating belongs to the apparatus, and the warnings need it before the first reading.
			t.Form.Type(i, e.ratingAlone())
		}
	}
	t.Form.Notes, t.Form.Conclusion = nil, ""
	t.take(t.Form, "", "")
	return Answer{Said: []string{saidAgain}, Opened: true}
}

// Runs are those of this apparatus: of this group, or of all.
func (t *Table) Runs(all bool) ([]Run, error) {
	runs, err := Runs(t.Tutor.Record, t.Form.problem.ID)
	return t.ofUs(runs, all), err
}

// ofUs leaves out the runs of other groups unless all are asked for; a visitor sees none
// of these.
func (t *Table) ofUs(runs []Run, all bool) []Run {
	if all && !t.Tutor.IsVisit() {
		return runs
	}
	return slices.DeleteFunc(slices.Clone(runs), func(run Run) bool { return !t.isOurs(run) })
}

// computed is the result in hand, with the number that its run has or will get.
func (t *Table) computed(r *Result) Computed {
	run, kept := t.inHand()
	c := Computed{Number: kept + 1, Result: r, About: About{Students: t.Statuses(), Names: NamesOf(t.Students)}}
	if run.ID != "" {
		c.Number, c.About.When = run.Number, run.when(t.zone())
	}
	return c
}

// compute works out a run that is saved; false where it has no result any more.
func (t *Table) compute(run Run) (Computed, bool) {
	// A run that was typed on has another text, so an old result is never shown for it.
	key := run.ID + run.Text
	if one, ok := t.known[key]; ok {
		return one, true
	}
	one, wrong, err := run.again(t.Tutor)
	if err != nil || wrong != nil {
		return Computed{}, false
	}
	t.known[key] = one
	return one, true
}

// chosen are the runs that were named, as in "1 3-5"; where none is, those of this
// apparatus that have a result, of this group or, for "all", of everybody, the one in hand
// last.
func (t *Table) chosen(numbers string) (computed []Computed, why string) {
	if err := t.SaveRun(); err != nil {
		return nil, record.Sentence(err)
	}
	all := strings.EqualFold(strings.TrimSpace(numbers), "all")
	if all || strings.TrimSpace(numbers) == "" {
		runs, err := t.Runs(all)
		if err != nil {
			return nil, record.Sentence(err)
		}
		for _, run := range runs {
			// The one in hand comes last, with what the form says now.
			if run.ID == t.run {
				continue
			}
			if one, ok := t.compute(run); ok {
				computed = append(computed, one)
			}
		}
		if r, why := t.Form.Result(); why == nil {
			computed = append(computed, t.computed(r))
		}
		return computed, ""
	}
	for _, number := range Numbers(numbers) {
		run, why := t.numbered(number)
		if why != "" {
			return nil, why
		}
		one, ok := t.compute(run)
		if !ok {
			return nil, saidCannotOpen(run.Number)
		}
		computed = append(computed, one)
	}
	return computed, ""
}

// Numbers takes the numbers of runs apart: "1 3-5" is 1, 3, 4 and 5.
func Numbers(text string) (numbers []string) {
	const most = 100
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' || r == ';' }) {
		from, to, isRange := strings.Cut(strings.ReplaceAll(word, "–", "-"), "-")
		first, errFirst := strconv.Atoi(from)
		last, errLast := strconv.Atoi(to)
		// Passed on as it was typed, so that the refusal can name it.
		if !isRange || errFirst != nil || errLast != nil || last-first > most {
			numbers = append(numbers, word)
			continue
		}
		for n := first; n <= last; n++ {
			numbers = append(numbers, strconv.Itoa(n))
		}
	}
	return numbers
}
