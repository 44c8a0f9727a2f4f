// Inside the package: it writes times as a hand-in does, to change one.

package class

import (
	"context"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

// The story of a class of thirty over two weeks. Students of six kinds work at
// machines of their own; what each of them did is written into a ledger beside it,
// by what the story lets them do and not by what the program makes of it. Files come
// late, twice, copied, edited, from two machines, under a wrong name and from one
// who joined later; the class has a problem of its own. At the end every number of
// the report is held against the ledger.

// ledger is what one student did about one problem.
type ledger struct {
	standing      tutor.Status
	attempts      int
	lines         int
	refused       int
	hints, steps  int
	items, firsts int
	spent         time.Duration
	begun, done   time.Time
	mistakes      map[checker.Code]int
}

// actor is one student of the story.
type actor struct {
	*room
	id     string
	work   map[string]*ledger
	last   time.Time // of the last entry
	kept   int       // entries
	beside int       // entries about what is not set
}

func (a *actor) of(problem string) *ledger {
	if a.work[problem] == nil {
		a.work[problem] = &ledger{mistakes: map[checker.Code]int{}}
	}
	return a.work[problem]
}

// tick notes an entry that was just made.
func (a *actor) tick(problem string) *ledger {
	w := a.of(problem)
	if pause := a.now.Sub(a.last); !a.last.IsZero() {
		w.spent += min(pause, 10*time.Minute)
	}
	a.last = a.now
	a.kept++
	return w
}

// open begins a problem at a machine.
func (a *actor) open(machine string, rules tutor.Class, problem string) *tutor.Lesson {
	a.t.Helper()
	key := a.id + machine
	if a.desks[key] == nil {
		kept, err := record.OpenMemory(a.options())
		must(a.t, err)
		a.t.Cleanup(func() { kept.Close() })
		a.desks[key] = kept
	}
	t := a.tutorOf(a.desks[key], rules)
	s, ok, err := t.Enrol(a.id)
	must(a.t, err)
	if !ok {
		a.t.Fatalf("%s may not sit down", a.id)
	}
	desk, err := t.Seat(s)
	must(a.t, err)
	l, err := desk.Open(problem)
	must(a.t, err)
	w := a.tick(problem)
	w.attempts++
	w.begun, w.standing = a.now, tutor.Begun
	return l
}

// says hands a line in; code is the mistake in it, "" for a right one.
func (a *actor) says(l *tutor.Lesson, line string, code checker.Code) {
	a.t.Helper()
	_, err := l.Check(line)
	must(a.t, err)
	w := a.tick(l.Problem.ID)
	w.lines++
	if code != "" {
		w.refused++
		w.mistakes[code]++
	}
	if got := l.Lines()[len(l.Lines())-1]; got.Code != code {
		a.t.Fatalf("%s: %q is %s %s; the story has %q", a.id, line, got.Verdict, got.Code, code)
	}
}

// solves goes to the end of a lantern; with misses it takes the sine for the cosine
// in so many components first.
func (a *actor) solves(l *tutor.Lesson, misses int) {
	a.t.Helper()
	a.says(l, "T1 up left; T2 up right; w down", "")
	for _, line := range []string{"T1x = T1 sin α", "T1y = T1 cos α", "T2x = T2 sin β"}[:misses] {
		a.says(l, line, "sine-cosine")
	}
	a.says(l, "T1x = -T1 cos α; T1y = T1 sin α; T2x = T2 cos β; T2y = T2 sin β; wx = 0; wy = -w", "")
	a.says(l, "T1 cos α = T2 cos β", "")
	a.says(l, "T1 sin α + T2 sin β = w", "")
	for _, name := range []string{"T1", "T2"} {
		v, _ := l.Ref.Value(name)
		a.says(l, name+" = "+l.Ref.Unit(name).In(v, 4), "")
	}
	w := a.of(l.Problem.ID)
	w.done = a.now
	w.items, w.firsts = 11, 11-misses
	w.standing = tutor.RightFirst
	if misses > 2 {
		w.standing = tutor.WorkedOut
	}
}

func (a *actor) asks(l *tutor.Lesson, hints int) {
	a.t.Helper()
	for range hints {
		_, err := l.Hint()
		must(a.t, err)
		a.tick(l.Problem.ID).hints++
	}
}

// kinds are the six ways of working; day is the first day of the two weeks on which
// the student works.
var kinds = []struct {
	name string
	work func(a *actor, rules tutor.Class, problem string)
}{
	{"sure", func(a *actor, rules tutor.Class, problem string) { a.solves(a.open("", rules, problem), 0) }},
	{"one slip", func(a *actor, rules tutor.Class, problem string) { a.solves(a.open("", rules, problem), 1) }},
	{"works it out", func(a *actor, rules tutor.Class, problem string) {
		l := a.open("", rules, problem)
		a.says(l, "T1 up left; T2 up right; w down", "")
		a.says(l, "T1x = T1 sin α", "sine-cosine")
		a.asks(l, 1)
		a.says(l, "T1x = -T1 cos α", "")
		a.says(l, "T1y = T1 cos α", "sine-cosine")
		a.asks(l, 1)
		a.says(l, "T1y = T1 sin α", "")
		a.says(l, "T2x = T2 sin β", "sine-cosine")
		a.asks(l, 1)
		a.says(l, "T2x = T2 cos β; T2y = T2 sin β; wx = 0; wy = -w", "")
		a.says(l, "T1 cos α = T2 cos β", "")
		a.says(l, "T1 sin α + T2 sin β = w", "")
		for _, name := range []string{"T1", "T2"} {
			v, _ := l.Ref.Value(name)
			a.says(l, name+" = "+l.Ref.Unit(name).In(v, 4), "")
		}
		w := a.of(problem)
		w.done, w.items, w.firsts, w.standing = a.now, 11, 8, tutor.WorkedOut
	}},
	{"stuck", func(a *actor, rules tutor.Class, problem string) {
		l := a.open("", rules, problem)
		a.says(l, "T1 up left; T2 up right; w down", "")
		for range 3 {
			a.says(l, "T1x = T1 sin α", "sine-cosine")
		}
		a.asks(l, 3)
		w := a.of(problem)
		w.steps, w.items, w.firsts = 1, 2, 1
	}},
	{"looks it up", func(a *actor, rules tutor.Class, problem string) {
		l := a.open("", rules, problem)
		a.says(l, "T1 up left; T2 up right; w down", "")
		_, err := l.Solution()
		must(a.t, err)
		w := a.tick(problem)
		w.items, w.firsts, w.standing = 1, 1, tutor.Shown
	}},
	{"begins", func(a *actor, rules tutor.Class, problem string) { a.open("", rules, problem) }},
}

const storyClass = `
name: Physics 10b
number key: harbour-2
problems_from: [handouts]
students: list.csv
problems:
  - {problem: canal-lantern, due: 2030-03-09}
  - {problem: quay-lantern, due: 2030-03-16, weight: 3}
`

// storyList is the list of n students.
func storyList(n int) string {
	var b strings.Builder
	b.WriteString("id,name\n")
	for i := range n {
		fmt.Fprintf(&b, "s%02d,Student %c%c\n", i+1, 'A'+i/26, 'A'+i%26)
	}
	return b.String()
}

func storyRoom(t *testing.T, n int) *room {
	r := &room{t: t, bank: problems.Embedded(), now: time.Date(2030, 3, 4, 8, 0, 0, 0, time.UTC), desks: map[string]*record.Record{}, dir: t.TempDir()}
	var found problems.Findings
	r.class, found = classfile.ReadFile(classFolder(t, storyClass, map[string]string{"list.csv": storyList(n), "handouts/quay.yaml": ownProblem}), r.bank)
	must(t, found.Err())
	r.bank = r.class.Bank
	return r
}

func TestStoryOfAClass(t *testing.T) {
	const first, second = "canal-lantern", "quay-lantern"
	r := storyRoom(t, 29)
	monday := r.now
	at := func(day, hour int) { r.now = monday.AddDate(0, 0, day).Add(time.Duration(hour-8) * time.Hour) }
	kept, err := record.OpenMemory(r.options())
	must(t, err)
	defer kept.Close()
	open := func() {
		r.book, err = OpenMarkbook(Options{Class: r.class, Bank: r.bank, Record: kept, Now: func() time.Time { return r.now }})
		must(t, err)
	}
	open()
	actors := make([]*actor, 30)
	for i := range actors {
		actors[i] = &actor{room: r, id: fmt.Sprintf("s%02d", i+1), work: map[string]*ledger{}}
	}
	handIn := func(a *actor, machine string, rules tutor.Class, id string) []byte {
		h := HandIn{Tutor: r.tutorOf(r.desks[a.id+machine], rules), Student: record.Student{ID: id, Name: "Student"}, Now: r.now}
		data, _, _, err := h.File()
		must(t, err)
		return data
	}
	collect := func(o CollectOptions, files ...[]byte) {
		named := map[string][]byte{}
		for i, data := range files {
			named[fmt.Sprintf("%02d.jsonl", i)] = data
		}
		_, err := r.book.Collect(context.Background(), []string{r.folder(named)}, o)
		must(t, err)
	}

	// The first week: twenty-four students, four of each kind.
	for i, a := range actors[:24] {
		at(i%4, 8+i/4)
		kinds[i%6].work(a, r.class.Class, first)
	}
	// One works at two machines: the first problem here, the second there.
	two := actors[24]
	at(1, 15)
	kinds[0].work(two, r.class.Class, first)
	// One is late: on the eighth day and the ninth, after the date of the first.
	late := actors[25]
	at(7, 9)
	kinds[1].work(late, r.class.Class, first)
	// One practises under a name of their own, with the class's list left at home.
	wrong := actors[26]
	at(2, 16)
	alone := *wrong
	alone.id = "Gast"
	kinds[0].work(&alone, tutor.Class{}, first)
	wrong.last, wrong.kept = alone.last, alone.kept
	// Everybody hands in; some twice, and one a copy of another's file.
	at(8, 8)
	var files [][]byte
	for _, a := range actors[:26] {
		files = append(files, handIn(a, "", r.class.Class, a.id))
	}
	copier := actors[27]
	files = append([][]byte{as(t, files[0], copier.id)}, files...) // and it is the first that is read
	collect(CollectOptions{}, files...)
	collect(CollectOptions{}, files[3], files[4])
	collect(CollectOptions{}, handIn(&alone, "", tutor.Class{}, "gast")) // kept aside
	collect(CollectOptions{As: wrong.id}, handIn(&alone, "", tutor.Class{}, "gast"))

	// The second week: a thirtieth joins, the own problem is worked on.
	r.class = storyRoom(t, 30).class
	r.bank = r.class.Bank
	open()
	joined := actors[29]
	at(9, 9)
	kinds[2].work(joined, r.class.Class, second)
	for i, a := range actors[:18] {
		at(8+i%4, 10+i/4)
		kinds[(i+1)%6].work(a, r.class.Class, second)
	}
	at(10, 15)
	l := two.open("second", r.class.Class, second)
	two.solves(l, 0)
	// One practises what is not set besides.
	at(11, 20)
	beside := actors[3]
	lesson := beside.open("", r.class.Class, "letter-scale")
	beside.says(lesson, "F up; w down", "")
	beside.beside = 2
	at(12, 8)
	files = nil
	for _, a := range append(slices.Clone(actors[:18]), joined) {
		files = append(files, handIn(a, "", r.class.Class, a.id))
	}
	// One edits a refused line of a file that is handed in already.
	edit := edited(t, files[1], func(f map[string]any) {
		if f["text"] == "T1x = T1 sin α" && f["problem"] == first {
			f["text"], f["time"] = "T1x = -T1 cos α", r.now.UTC().Format(timeForm)
		}
	})
	collect(CollectOptions{}, append([][]byte{edit}, files...)...)
	collect(CollectOptions{}, handIn(two, "second", r.class.Class, two.id))

	r.now = time.Date(2030, 3, 18, 8, 0, 0, 0, time.UTC) // both dates are past
	report := r.report()
	story{t, report, actors, []string{first, second}}.check()
	agree(t, r, report)

	want(t, "the remarks", notices(report.Remarks), fmt.Sprintf("s02 entry-changed 1; s02 verdict-other 1; s27 given %d; s28 entry-copied %d", wrong.kept, 7))
	// The second report comes from what is remembered.
	var one, other strings.Builder
	must(t, report.WriteJSON(&one))
	must(t, r.report().WriteJSON(&other))
	want(t, "the second report", other.String(), one.String())
}

// story holds a report against the ledger.
type story struct {
	*testing.T
	*summary.Report
	actors []*actor
	work   []string
}

func (s story) check() {
	if len(s.Report.Students) != len(s.actors) || len(s.Work) != len(s.work) {
		s.Fatalf("%d students, %d problems", len(s.Report.Students), len(s.Work))
	}
	entries := 0
	for i, a := range s.actors {
		row := s.Report.Students[i]
		entries += a.kept
		if row.ID != a.id || row.Entries != a.kept || row.Beside != a.beside {
			s.Errorf("%s has %d entries, %d beside; the ledger has %d and %d", row.ID, row.Entries, row.Beside, a.kept, a.beside)
		}
		var spent time.Duration
		for j, problem := range s.work {
			w := a.work[problem]
			if w == nil {
				w = &ledger{}
			}
			spent += w.spent
			s.cell(a.id, problem, row.Cells[j], w, s.Work[j].Due)
		}
		if row.Spent != spent {
			s.Errorf("%s worked %v; the ledger has %v", a.id, row.Spent, spent)
		}
	}
	if s.Report.Entries != entries {
		s.Errorf("%d entries; the ledger has %d", s.Report.Entries, entries)
	}
	for j, problem := range s.work {
		s.column(j, problem)
	}
	s.stuck()
}

func (s story) cell(id, problem string, c summary.Cell, w *ledger, due time.Time) {
	late, overdue, days := w.done.After(due), !w.standing.Done() && s.At.After(due), 0
	if late {
		days = int(math.Ceil(w.done.Sub(due).Hours() / 24))
	}
	if overdue {
		days = int(math.Ceil(s.At.Sub(due).Hours() / 24))
	}
	want := summary.Cell{Status: w.standing, Late: late, Overdue: overdue, Days: days, Attempts: w.attempts, Items: w.items, RightFirst: w.firsts,
		Lines: w.lines, Refused: w.refused, Hints: w.hints, Shown: w.steps, Spent: w.spent, Begun: w.begun, Done: w.done, Last: c.Last, Stage: c.Stage, Item: c.Item}
	if c != want {
		s.Errorf("%s, %s:\n%+v; the ledger has\n%+v", id, problem, c, want)
	}
}

func (s story) column(at int, problem string) {
	var counts [tutor.RightFirst + 1]int
	times, who := map[checker.Code]int{}, map[checker.Code][]string{}
	for _, a := range s.actors {
		w := a.work[problem]
		if w == nil {
			counts[tutor.NotBegun]++
			continue
		}
		counts[w.standing]++
		for code, n := range w.mistakes {
			times[code] += n
			who[code] = append(who[code], a.id)
		}
	}
	if s.Work[at].Students != counts {
		s.Errorf("%s is at %v; the ledger has %v", problem, s.Work[at].Students, counts)
	}
	for _, tally := range s.ByProblem {
		if tally.Problem != problem {
			continue
		}
		if tally.Count != times[tally.Code] || !slices.Equal(tally.Who, who[tally.Code]) || tally.Students != len(tally.Who) {
			s.Errorf("%s, %s: %d times by %v; the ledger has %d by %v", problem, tally.Code, tally.Count, tally.Who, times[tally.Code], who[tally.Code])
		}
		delete(times, tally.Code)
	}
	for code, n := range times {
		s.Errorf("%s, %s: not reported; the ledger has %d", problem, code, n)
	}
}

// stuck are those who asked for every hint and did no more.
func (s story) stuck() {
	var got, want []string
	for _, one := range s.Stuck {
		got = append(got, one.Student+" "+one.Problem)
	}
	for _, a := range s.actors {
		for _, problem := range s.work {
			if w := a.work[problem]; w != nil && w.steps > 0 && !w.standing.Done() {
				want = append(want, a.id+" "+problem)
			}
		}
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		s.Errorf("stuck are %v; the ledger has %v", got, want)
	}
}

// reportForm is what other programs read of a report as JSON.
type reportForm struct {
	Problems []struct {
		ID, Due string
		Weight  float64
	}
	Students []struct {
		ID, Name string
		Share    float64
		Work     []struct {
			Problem, Standing, Stage, Item, Begun, Done                       string
			Late, Overdue                                                     bool
			Days, Attempts, Items, FirstGo, Lines, Refused, Hints, StepsShown int
			Minutes                                                           float64
		}
	}
	ByWork []struct {
		Problem         string
		Code            checker.Code
		Students, Times int
	} `json:"mistakesByProblem"`
	Ideas []struct {
		Idea, Title                     string
		Steady, Learning, Slipping, New []string
	}
}

// agree lays every output of one report beside the others: a number that is in two
// of them must be the same.
func agree(t *testing.T, r *room, report *summary.Report) {
	t.Helper()
	var text, plain, page, table, data strings.Builder
	must(t, report.WriteText(&text, summary.Layout{Width: 200}))
	must(t, report.WriteText(&plain, summary.Layout{Plain: true}))
	must(t, report.WriteHTML(&page, r.bank))
	must(t, report.WriteCSV(&table, false))
	must(t, report.WriteJSON(&data))
	var out reportForm
	must(t, json.Unmarshal([]byte(data.String()), &out))
	rows, err := csv.NewReader(strings.NewReader(table.String())).ReadAll()
	must(t, err)
	heads := rows[0]
	n := 0
	for _, s := range out.Students {
		var letters []string
		share := 0.0
		for i, w := range s.Work {
			n++
			row := map[string]string{}
			for k, cell := range rows[n] {
				row[heads[k]] = cell
			}
			for head, want := range map[string]string{"student": s.ID, "name": s.Name, "problem": w.Problem, "standing": w.Standing, "stage": w.Stage,
				"item": w.Item, "attempts": strconv.Itoa(w.Attempts), "lines": strconv.Itoa(w.Lines), "refused": strconv.Itoa(w.Refused),
				"hints": strconv.Itoa(w.Hints), "stepsShown": strconv.Itoa(w.StepsShown), "items": strconv.Itoa(w.Items), "firstGo": strconv.Itoa(w.FirstGo),
				"minutes": strconv.FormatFloat(w.Minutes, 'f', 1, 64), "begun": w.Begun, "done": w.Done, "due": out.Problems[i].Due,
				"late": strconv.FormatBool(w.Late), "overdue": strconv.FormatBool(w.Overdue), "days": strconv.Itoa(w.Days), "weight": classfile.Number(out.Problems[i].Weight)} {
				if row[head] != want {
					t.Errorf("%s, %s: %s is %q in CSV and %q in JSON", s.ID, w.Problem, head, row[head], want)
				}
			}
			if !slices.Contains([]string{"solution shown", "begun", "not begun"}, w.Standing) {
				share += []float64{0.25, 0.75}[i] // weights of 1 and 3
			}
			letters = append(letters, summary.Letter(report.Students[(n-1)/len(out.Problems)].Cells[i]))
			said := report.Students[(n-1)/len(out.Problems)].Cells[i].Status.String()
			if begun := w.Standing != "not begun"; begun && !strings.Contains(plain.String(), s.Name+": "+w.Problem+": "+said) {
				t.Errorf("%s, %s: the plain text has no %s", s.ID, w.Problem, said)
			}
		}
		if s.Share != share {
			t.Errorf("%s: the share is %g, want %g", s.ID, s.Share, share)
		}
		spent := summary.Minutes(report.Students[(n-1)/len(out.Problems)].Spent)
		done := fmt.Sprintf("%.0f %%", 100*share)
		line := regexp.MustCompile(`(?m)^` + regexp.QuoteMeta(s.Name) + ` +` + regexp.QuoteMeta(letters[0]) + ` +` + regexp.QuoteMeta(letters[1]) + ` +` + regexp.QuoteMeta(spent) + `, ` + done + `$`)
		if !line.MatchString(text.String()) {
			t.Errorf("%s: the text has not %v, %s", s.ID, letters, spent)
		}
		if row := regexp.MustCompile(`<th scope="row">` + s.Name + `</th><td class="cell[^>]*>` + regexp.QuoteMeta(letters[0]) + `</td><td class="cell[^>]*>` + regexp.QuoteMeta(letters[1]) + `</td><td>` + spent + `</td><td>` + done + `</td>`); !row.MatchString(page.String()) {
			t.Errorf("%s: the page has not %v, %s", s.ID, letters, spent)
		}
	}
	if n != len(rows)-1 {
		t.Errorf("%d rows of CSV for %d cells", len(rows)-1, n)
	}
	for _, out := range []string{text.String(), page.String()} {
		if !strings.Contains(out, fmt.Sprintf("%d entries", report.Entries)) {
			t.Errorf("the entries are not %d in\n%.300s", report.Entries, out)
		}
	}
	for _, tally := range out.ByWork {
		said := fmt.Sprintf("%s: %s, %s, %s (", tally.Problem, tally.Code.Meaning(), summary.Times(tally.Times, "time"), summary.Times(tally.Students, "student"))
		if !strings.Contains(text.String(), said) {
			t.Errorf("the text has no %q", said)
		}
		cells := fmt.Sprintf("<td>%s</td><td>%s</td><td>%d</td><td>%d</td>", tally.Problem, tally.Code.Meaning(), tally.Times, tally.Students)
		if !strings.Contains(page.String(), cells) {
			t.Errorf("the page has no %q", cells)
		}
	}
	for i, idea := range out.Ideas {
		said := fmt.Sprintf("%3d  %s: %d steady, %d learning, %d slipping, %d new", i+1, idea.Title, len(idea.Steady), len(idea.Learning), len(idea.Slipping), len(idea.New))
		cells := fmt.Sprintf("<td>%s</td><td>%d</td><td>%d</td><td>%d</td><td>%d</td>", idea.Title, len(idea.Steady), len(idea.Learning), len(idea.Slipping), len(idea.New))
		if !strings.Contains(text.String(), said) || !strings.Contains(page.String(), cells) {
			t.Errorf("the idea %s differs", idea.Idea)
		}
	}
}
