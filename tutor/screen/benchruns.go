package screen

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/record"
)

// runs lists runs that are kept: at the beginning those of the apparatus, beside a new
// one, later all.
type runs struct {
	scroller
	all    []bench.Run
	names  map[string]string
	marked map[string]bool
	fresh  int // rows for a new run: 1 or 0
	at     int
}

func (r *runs) step(m *model) benchStep {
	if r.fresh > 0 {
		return stepNames
	}
	return stepResult
}

// newRuns lists the runs of a problem; nil where there are none.
func newRuns(m *model, problem string) sheet {
	r, err := listRuns(m, problem)
	if err != nil {
		m.say(record.Sentence(err))
	}
	if err != nil || len(r.all) == 0 {
		return nil
	}
	r.fresh = 1
	return r
}

func listRuns(m *model, problem string) (r *runs, err error) {
	r = &runs{marked: map[string]bool{}}
	if r.all, err = bench.Runs(m.tutor.Record, problem); err == nil {
		r.names, err = bench.Names(m.tutor.Record)
	}
	return r, err
}

// showRuns lists all runs.
func (m *model) showRuns() {
	if !m.bench.lend(m) || !m.bench.keep(m) {
		return
	}
	r, err := listRuns(m, "")
	if err != nil {
		m.say(record.Sentence(err))
		m.home()
		return
	}
	r.at = max(slices.IndexFunc(r.all, func(run bench.Run) bool { return run.ID == m.bench.table.Run() }), 0)
	m.sheet = r
}

func (r *runs) question(m *model) string {
	switch {
	case len(r.all) == 0:
		return saidNoRunYet
	case r.fresh > 0:
		return saidWhichRun
	}
	return saidWhichOfAll
}

func (r *runs) under(*model, int, int) []row { return nil }

func (r *runs) typed(*model) {}

func (r *runs) press(m *model, k tea.KeyMsg) bool {
	if k.Type == tea.KeyTab {
		if i := r.at - r.fresh; r.fresh == 0 && i < len(r.all) {
			id := r.all[i].ID
			r.marked[id] = !r.marked[id]
		}
		return true
	}
	return picked(&r.at, len(r.all)+r.fresh, k)
}

func (r *runs) keys(m *model) []binding {
	keys := []binding{m.on.upDown, m.on.open}
	if r.fresh == 0 {
		keys = append(keys, m.on.mark)
	}
	if len(r.numbers()) > 0 {
		keys[1] = m.on.layBeside
	}
	if m.sheet == m.bench.base {
		return append(keys, m.on.menu, m.on.leave)
	}
	return append(keys, m.on.back, m.on.leave)
}

// numbers are those of the marked runs.
func (r *runs) numbers() []string {
	var numbers []string
	for _, run := range r.all {
		if r.marked[run.ID] {
			numbers = append(numbers, fmt.Sprint(run.Number))
		}
	}
	return numbers
}

// enter opens the run that is picked or typed, or compares those that are marked.
func (r *runs) enter(m *model, text string) {
	marked := r.numbers()
	switch {
	case !m.line.isEmpty():
		m.runsNumbered(text)
	case len(marked) == 1:
		m.say(saidMarkTwo)
	case len(marked) > 1:
		m.compare(strings.Join(marked, " "))
	case r.at < r.fresh:
		m.bench.to(m, m.bench.form)
	case r.at-r.fresh < len(r.all):
		m.openRun(r.all[r.at-r.fresh])
	}
}

// runsNumbered opens the run of a number, or compares those of several.
func (m *model) runsNumbered(text string) {
	if len(strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' })) > 1 {
		m.compare(text)
		return
	}
	run, why := m.bench.table.Numbered(strings.TrimSpace(text))
	if why != "" {
		m.say(why)
		return
	}
	m.openRun(run)
}

func (m *model) openRun(run bench.Run) {
	if !m.bench.lend(m) || !m.bench.keep(m) {
		return
	}
	said, ok := m.bench.table.Open(run)
	if ok {
		m.bench.begun(m)
		m.bench.to(m, m.bench.form)
	}
	m.say(said)
}

// openNumbered and compareNumbered obey a word with numbers behind it; without, the runs
// are there to be chosen.
func (m *model) openNumbered() {
	if m.bench.rest == "" {
		m.showRuns()
		return
	}
	m.runsNumbered(m.bench.rest)
}

func (m *model) compareNumbered() {
	if m.bench.rest == "" {
		m.showRuns()
		return
	}
	m.compare(m.bench.rest)
}

// compare lays runs side by side.
func (m *model) compare(numbers string) {
	if m.bench.hasLine(m) && !m.bench.form.commit(m) {
		return
	}
	blocks, why := m.bench.table.Compare(numbers)
	if why != "" {
		m.say(why)
		return
	}
	title := blocks[0].Title
	blocks[0].Title = ""
	m.lay(title, func(m *model, cols int) []row { return m.blockRows(blocks, cols) })
}

func (r *runs) body(m *model, cols, rows int) []row {
	var all []row
	from, to := 0, 0
	for i := range len(r.all) + r.fresh {
		if i == r.at {
			from = len(all)
		}
		all = append(all, r.rows(m, i, cols)...)
		if i == r.at {
			to = len(all) - 1
		}
	}
	r.follow(to, len(all), rows-1)
	r.follow(from, len(all), rows-1)
	return append([]row{m.rule(cols, wordRuns, "")}, r.cut(all, rows-1)...)
}

// rows are one run: its number, time and students, then what was typed.
func (r *runs) rows(m *model, i, cols int) []row {
	if i < r.fresh {
		return []row{m.pickRow(i == r.at, m.look.row(plain, wordNewRun))}
	}
	run := r.all[i-r.fresh]
	head, typed, _ := strings.Cut(run.Said(r.names, m.bench.zone), ": ")
	first := m.look.row(plain, head)
	if r.marked[run.ID] {
		first = append(m.look.row(bold, wordMarked+"  "), first...)
	}
	rows := []row{m.pickRow(i == r.at, first)}
	for _, part := range m.look.wrapMeasured(typed, cols-8) {
		rows = append(rows, append(row{gap(6)}, m.look.text(quiet, part)))
	}
	return rows
}
