// Inside the package: trust_test.go uses its room.

package class

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

const classText = `
name: Physics 10b
code: harbour-2
students:
  - {id: s01, name: Ada Berg}
  - {id: s02, name: Ben Roos}
  - {id: s03, name: Cem Acar}
problems:
  - {problem: canal-lantern, due: 2030-03-09}
  - {problem: letter-scale}
`

// room is a class with one record for each student, a clock and the teacher's
// markbook.
type room struct {
	t     *testing.T
	class *classfile.Class
	bank  *problems.Bank
	now   time.Time
	desks map[string]*record.Record
	book  *Markbook
	dir   string
}

func newRoom(t *testing.T) *room {
	t.Helper()
	r := &room{t: t, bank: problems.Embedded(), now: time.Date(2030, 3, 2, 10, 0, 0, 0, time.UTC), desks: map[string]*record.Record{}, dir: t.TempDir()}
	var found problems.Findings
	if r.class, found = classfile.Read("class.yaml", []byte(classText), r.bank); found != nil {
		t.Fatal(found.Err())
	}
	r.book = r.markbook()
	return r
}

func (r *room) options() record.Options {
	return record.Options{Now: func() time.Time { r.now = r.now.Add(30 * time.Second); return r.now }}
}

func (r *room) markbook() *Markbook {
	r.t.Helper()
	kept, err := record.OpenMemory(r.options())
	must(r.t, err)
	r.t.Cleanup(func() { kept.Close() })
	m, err := OpenMarkbook(Options{Class: r.class, Bank: r.bank, Record: kept, Now: func() time.Time { return r.now }})
	must(r.t, err)
	return m
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// lesson opens a problem at the student's own machine.
func (r *room) lesson(student, problem string) *tutor.Lesson {
	r.t.Helper()
	return r.lessonUnder(r.class.Class, student, problem)
}

func (r *room) lessonUnder(rules tutor.Class, student, problem string) *tutor.Lesson {
	r.t.Helper()
	kept := r.desks[student]
	if kept == nil {
		var err error
		kept, err = record.Open(filepath.Join(r.dir, "machine-"+student, "record.db"), r.options())
		must(r.t, err)
		r.t.Cleanup(func() { kept.Close() })
		r.desks[student] = kept
	}
	t := r.tutorOf(kept, rules)
	s, ok, err := t.Enrol(student)
	must(r.t, err)
	if !ok {
		r.t.Fatalf("%s may not sit down", student)
	}
	desk, err := t.Seat(s)
	must(r.t, err)
	l, err := desk.Open(problem)
	must(r.t, err)
	return l
}

func (r *room) tutorOf(kept *record.Record, rules tutor.Class) *tutor.Tutor {
	return tutor.New(tutor.Options{Bank: r.class.Bank, Record: kept, Class: rules})
}

func (r *room) type_(l *tutor.Lesson, lines ...string) {
	r.t.Helper()
	for _, line := range lines {
		_, err := l.Check(line)
		must(r.t, err)
	}
}

// solveLantern works the lantern to its end with the numbers of the copy.
func (r *room) solveLantern(l *tutor.Lesson) {
	r.t.Helper()
	value := func(name string) string {
		v, _ := l.Ref.Value(name)
		return name + " = " + l.Ref.Unit(name).In(v, 4)
	}
	r.type_(l, "T1 up left; T2 up right; w down", "T1x = T1 cos α; T1y = T1 sin α; T2x = T2 cos β; T2y = T2 sin β; wx = 0; wy = w",
		"T1 cos α = T2 cos β", "T1 sin α + T2 sin β = w", value("T1"), value("T2"))
	if !l.Solved() {
		r.t.Fatalf("not solved: %v", l.Lines()[len(l.Lines())-1].Message)
	}
}

// handIn gives the bytes of a student's hand-in.
func (r *room) handIn(student string) []byte {
	r.t.Helper()
	s, _ := r.class.Student(student)
	h := HandIn{Tutor: r.tutorOf(r.desks[student], r.class.Class), Student: s, Now: r.now}
	data, _, _, err := h.File()
	must(r.t, err)
	return data
}

// collect writes files into a folder and collects it.
func (r *room) collect(files map[string][]byte) Collected {
	r.t.Helper()
	sum, err := r.book.Collect(context.Background(), []string{r.folder(files)}, CollectOptions{})
	must(r.t, err)
	return sum
}

func (r *room) folder(files map[string][]byte) string {
	r.t.Helper()
	dir := r.t.TempDir()
	for name, data := range files {
		must(r.t, writeFile(filepath.Join(dir, name), data))
	}
	return dir
}

func (r *room) report() *summary.Report {
	r.t.Helper()
	report, err := r.book.Report(context.Background())
	must(r.t, err)
	return report
}

// standing is a word for every student's first problem.
func standings(r *summary.Report) string {
	var words []string
	for _, row := range r.Students {
		words = append(words, row.Cells[0].Status.String())
	}
	return strings.Join(words, ", ")
}

func notices(list []summary.Remark) string {
	var words []string
	for _, one := range list {
		words = append(words, fmt.Sprintf("%s %s %d", one.Student, one.Notice, one.Count))
	}
	return strings.Join(words, "; ")
}

func want(t *testing.T, what, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("%s is %q; want %q", what, got, want)
	}
}

func TestHandedInCollectedReported(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lesson("s01", "canal-lantern"))
	ben := r.lesson("s02", "canal-lantern")
	r.type_(ben, "T1 up left; T2 up right; w down", "T1x = T1 sin α", "T1x = T1 sin α")
	for range 3 {
		_, err := ben.Hint()
		must(t, err)
	}
	files := map[string][]byte{"ada.jsonl": r.handIn("s01"), "ben.jsonl": r.handIn("s02")}
	if sum := r.collect(files); sum.Added != 14 || sum.Known != 0 {
		t.Fatalf("collected %+v", sum)
	}
	if sum := r.collect(files); sum.Added != 0 || sum.Known != 14 {
		t.Fatalf("collected again %+v", sum)
	}
	report := r.report()
	want(t, "the first column", standings(report), doneWord+", in progress, not started")
	want(t, "the remarks", notices(report.Remarks), "")
	if len(report.Stuck) != 1 || !report.Stuck[0].AllHints || report.Stuck[0].Refused != 2 || report.Stuck[0].Code != "sine-cosine" {
		t.Errorf("stuck are %+v", report.Stuck)
	}
	if report.Students[0].Spent != 6*30*time.Second {
		t.Errorf("Ada spent %v", report.Students[0].Spent)
	}
	// The second report comes from the cache and says the same.
	var first, second strings.Builder
	must(t, report.WriteJSON(&first))
	must(t, r.report().WriteJSON(&second))
	want(t, "the second report", second.String(), first.String())
}

func TestOrderAndRepetitionMakeNoDifference(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lesson("s01", "canal-lantern"))
	early := r.handIn("s01")
	l := r.lesson("s01", "letter-scale")
	r.type_(l, "F up; w down", "N up; w down")
	late := r.handIn("s01")
	var told []string
	for _, order := range [][][]byte{{early, late}, {late, early}, {late, late}, {late}} {
		r.book = r.markbook()
		for _, data := range order {
			r.collect(map[string][]byte{"x": data})
		}
		var b strings.Builder
		report := r.report()
		report.At = time.Time{}
		must(t, report.WriteJSON(&b))
		told = append(told, b.String())
	}
	for _, one := range told[1:] {
		want(t, "the report in another order", one, told[0])
	}
}
