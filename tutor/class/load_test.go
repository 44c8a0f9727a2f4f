// Inside the package: it sorts entries into attempts as a report does, to count them.

package class

import (
	"context"
	"fmt"
	"iter"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/record"
)

// loadVariable names the environment variable that asks for a school:
// STANDSTILL_LOAD=2000x60 is students and problems. Without it a small class is made.
const loadVariable = "STANDSTILL_LOAD"

// school makes a class with work, and its entries: twelve for each student and
// problem, of whom some go to the end, some get stuck and some ask for hints.
func school(t testing.TB, students, work int) (*classfile.Class, *problems.Bank) {
	bank := problems.Embedded()
	c := &classfile.Class{Class: tutor.Class{Name: "School", Code: "school"}}
	for i := range students {
		c.Students = append(c.Students, record.Student{ID: fmt.Sprintf("s%04d", i), Name: fmt.Sprintf("Student %d", i)})
	}
	for _, h := range bank.List() {
		if len(c.Work) < work {
			c.Work = append(c.Work, tutor.Set{Heading: h})
		}
	}
	if len(c.Work) < work {
		t.Fatalf("the bank has %d problems", len(c.Work))
	}
	return c, bank
}

const perProblem = 12

// entriesOfSchool are the entries, student by student.
func entriesOfSchool(t testing.TB, c *classfile.Class, bank *problems.Bank) iter.Seq2[record.Entry, error] {
	rules := &c.Class
	return func(yield func(record.Entry, error) bool) {
		r := rand.New(rand.NewPCG(1, 2))
		id := func() string { return fmt.Sprintf("%016x%016x", r.Uint64(), r.Uint64()) }
		for _, s := range c.Students {
			g := &generator{Rand: r, id: id, machine: id(), student: s.ID, at: time.Date(2030, 3, 2, 8, 0, 0, 0, time.UTC)}
			for _, set := range c.Work {
				p, err := bank.Get(set.ID)
				if err != nil {
					t.Fatal(err)
				}
				own, err := rules.Copy(p, s.ID, 0)
				if err != nil {
					t.Fatal(err)
				}
				for _, e := range g.about(own) {
					if !yield(e, nil) {
						return
					}
				}
			}
		}
	}
}

type generator struct {
	*rand.Rand
	id      func() string
	machine string
	student string
	number  int64
	at      time.Time
}

// about makes the entries about one problem: lines of the worked kind, some of
// them spoiled.
func (g *generator) about(p *problems.Problem) []record.Entry {
	var list []record.Entry
	add := func(kind string, stage checker.Stage, item, text string) {
		g.number++
		g.at = g.at.Add(time.Duration(20+g.IntN(120)) * time.Second)
		list = append(list, record.Entry{ID: g.id(), Record: g.machine, Number: g.number, Time: g.at, Student: g.student, Kind: kind,
			Problem: p.ID, Hash: p.Hash, Givens: p.Copy, Stage: string(stage), Item: item, Text: text, Detail: "1"})
	}
	add(record.Begun, "", "", "")
	ref, err := p.Reference()
	if err != nil {
		return list
	}
	for _, step := range ref.Worked() {
		items := ref.Items(step.Stage)
		for i, line := range step.Lines {
			if len(list) == perProblem {
				return list
			}
			if g.IntN(4) == 0 {
				line = spoilt(line)
			}
			add(record.Answer, step.Stage, items[min(i, len(items)-1)], line)
		}
	}
	for len(list) < perProblem {
		if g.IntN(3) == 0 {
			add(record.Hint, checker.Solve, "", "")
			continue
		}
		add(record.Answer, checker.Solve, "", fmt.Sprintf("%s = %d N", p.System.Find[0], 1+g.IntN(200)))
	}
	return list
}

// spoilt changes the first function of a line into the other.
func spoilt(line string) string {
	for i := 0; i+3 <= len(line); i++ {
		switch line[i : i+3] {
		case "cos":
			return line[:i] + "sin" + line[i+3:]
		case "sin":
			return line[:i] + "cos" + line[i+3:]
		}
	}
	return line + " + 1 N"
}

// TestSchool reports on a school twice and wants the same from the cache. Its
// times are in the log, with what it needed: STANDSTILL_LOAD=2000x60.
func TestSchool(t *testing.T) {
	students, work := 6, 8
	if size := os.Getenv(loadVariable); size != "" {
		if n, err := fmt.Sscanf(size, "%dx%d", &students, &work); n != 2 {
			t.Fatal(err)
		}
	}
	c, bank := school(t, students, work)
	kept, err := record.Open(filepath.Join(t.TempDir(), "class.db"), record.Options{})
	must(t, err)
	defer kept.Close()
	start := time.Now()
	merged, err := kept.Merge(entriesOfSchool(t, c, bank))
	must(t, err)
	if merged.Added != students*work*perProblem {
		t.Fatalf("%d entries were made", merged.Added)
	}
	t.Logf("%d entries made and merged in %v", merged.Added, time.Since(start).Round(time.Millisecond))
	var told [2]string
	for i := range told {
		start, used := time.Now(), cpuTime()
		m, err := OpenMarkbook(Options{Class: c, Bank: bank, Record: kept, Now: func() time.Time { return time.Unix(0, 0) }})
		must(t, err)
		report, err := m.Report(context.Background())
		must(t, err)
		t.Logf("report %d in %v, %v of CPU time", i+1, time.Since(start).Round(time.Millisecond), (cpuTime() - used).Round(time.Millisecond))
		if report.Entries != merged.Added || len(report.Remarks) > 0 || len(report.ByStage) == 0 {
			t.Fatalf("%d entries, %v, %v", report.Entries, report.Remarks, report.ByStage)
		}
		told[i] = fmt.Sprint(report.Work, report.ByStage, report.ByProblem, report.Students)
	}
	want(t, "the report from the cache", told[1], told[0])
}

// BenchmarkMarkAgain marks entries again, on one core, their numbers known to be
// the student's own: entries a second.
func BenchmarkMarkAgain(b *testing.B) {
	c, bank := school(b, 4, 60)
	byStudent := map[string][]record.Entry{}
	for e := range entriesOfSchool(b, c, bank) {
		byStudent[e.Student] = append(byStudent[e.Student], e)
	}
	rules := &c.Class
	entries, used := 0, cpuTime()
	for b.Loop() {
		for _, all := range byStudent {
			for _, a := range attemptsOf(all) {
				p, err := bank.Get(a.Problem)
				if err == nil {
					p, err = p.WithGivens(a.Givens)
				}
				if err != nil {
					b.Fatal(err)
				}
				page, err := rules.NewPage(p)
				if err != nil {
					b.Fatal(err)
				}
				for _, e := range a.Entries {
					page.Add(e)
				}
				entries += len(a.Entries)
			}
		}
	}
	b.ReportMetric(float64(entries)/b.Elapsed().Seconds(), "entries/s")
	if used = cpuTime() - used; used > 0 {
		b.ReportMetric(float64(entries)/used.Seconds(), "entries/cpu-s")
	}
}
