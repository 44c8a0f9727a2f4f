package bench

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/standstill/checker/expr"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"

	"example.org/standstill/tutor/bench/measure"
)

// Run is one run as the record holds it: what was typed, and who shared it. Number is
// its place among all runs, from 1; ID is that of its first entry. A run that was
// worked on again has several entries for each student, and the last text counts.
type Run struct {
	Number        int
	ID            string
	Problem, Hash string
	Time          time.Time
	Students      []string // their ids, in the order in which they joined
	Text          string
}

// kindWords begin the lines of a saved run.
var kindWords = [...]string{Measure: "set", Hanger: "hanger", Ring: "ring", Reading: "read", Scale: "scale"}

// Text is everything that stands in the form, as typed: one line for each field that
// is not empty, bad ones too.
func (f *Form) Text() string {
	var lines []string
	for i := range f.Fields {
		if e := &f.Fields[i]; e.Typed != "" {
			name := e.Letter
			if e.Kind == Ring {
				name = e.Body
			}
			lines = append(lines, strings.Join(strings.Fields(kindWords[e.Kind]+" "+name), " ")+" = "+e.Typed)
		}
	}
	for _, note := range f.Notes {
		lines = append(lines, noteWord+" = "+note)
	}
	if f.Conclusion != "" {
		lines = append(lines, conclusionWord+" = "+f.Conclusion)
	}
	return strings.Join(lines, "\n")
}

// What else than fields begins the lines of a saved run.
const (
	noteWord       = "note"
	conclusionWord = "conclusion"
)

// Load puts in what Text gave. Lines that this problem has no field for are returned.
func (f *Form) Load(text string) (strange []string) {
	for _, line := range strings.Split(text, "\n") {
		name, value, found := strings.Cut(line, "=")
		word, letter, _ := strings.Cut(strings.TrimSpace(name), " ")
		kind := slices.Index(kindWords[:], word)
		switch {
		case strings.TrimSpace(line) == "":
			continue
		case found && word == noteWord:
			f.Notes = append(f.Notes, strings.TrimSpace(value))
			continue
		case found && word == conclusionWord:
			f.Conclusion = strings.TrimSpace(value)
			continue
		}
		if !found || kind < 0 {
			strange = append(strange, line)
			continue
		}
		field, why := f.Find(Kind(kind), letter)
		if why != "" {
			strange = append(strange, line)
			continue
		}
		f.Type(field, value)
	}
	return strange
}

// Empty reports whether nothing was typed.
func (f *Form) Empty() bool {
	return f.Notes == nil && f.Conclusion == "" && !slices.ContainsFunc(f.Fields, func(e Field) bool { return e.Typed != "" })
}

// SaveRun writes a run to the record, one entry for each student at the table. run is
// the ID that an earlier SaveRun of the same run gave, "" for a new one. The errors are
// those of package record.
func SaveRun(r *record.Record, f *Form, students []record.Student, run string) (id string, err error) {
	p := f.problem
	// First the problem: a run whose problem is in no record could never be opened.
	if err := r.SaveProblem(p.Hash, p.ID, string(p.Raw)); err != nil {
		return run, err
	}
	for _, s := range students {
		e, err := r.Append(record.Entry{Kind: record.Bench, Student: s.ID, Problem: p.ID, Hash: p.Hash, Text: f.Text(), Ref: run})
		if err != nil {
			return run, err
		}
		// The first entry names the run, and the others refer to it.
		run = cmp.Or(run, e.ID)
	}
	return run, nil
}

// Runs lists the runs of a record in the order in which they were begun; of one
// problem, or all for "".
func Runs(r *record.Record, problem string) ([]Run, error) {
	var entries []record.Entry
	for e, err := range r.Entries(record.Filter{Kinds: []string{record.Bench}}) {
		if err != nil {
			return nil, err
		}
		entries = append(entries, e)
	}
	var runs []Run
	for i, kept := range tutor.HistoryOf(entries).Runs {
		first := kept.Entries[0]
		run := Run{Number: i + 1, ID: kept.ID, Problem: first.Problem, Hash: first.Hash, Time: first.Time}
		for _, e := range kept.Entries {
			// Entries are in the order of the record, so the last text counts.
			run.Text = e.Text
			if !slices.Contains(run.Students, e.Student) {
				run.Students = append(run.Students, e.Student)
			}
		}
		if problem == "" || run.Problem == problem {
			runs = append(runs, run)
		}
	}
	return runs, nil
}

// Open makes the form of a run as it was typed. The problem is the one with its hash,
// from the bank or from the record.
func (run Run) Open(r *record.Record, bank *problems.Bank) (*Form, error) {
	p, err := tutor.ProblemOf(record.Entry{Problem: run.Problem, Hash: run.Hash}, bank, r)
	if err != nil {
		return nil, err
	}
	f, err := NewForm(p)
	if err != nil {
		return nil, err
	}
	f.Load(run.Text)
	return f, nil
}

// pick finds the run of a number that was typed.
func pick(runs []Run, number string) (Run, string) {
	for _, run := range runs {
		if strings.TrimSuffix(number, ".") == fmt.Sprint(run.Number) {
			return run, ""
		}
	}
	if len(runs) == 0 {
		return Run{}, saidNoRuns
	}
	return Run{}, saidNoSuchRun
}

// Said is the run in one line: "3. canal-lantern, 9 March 2026 10:12, Ana and Ben: m =
// 0.500 kg ± 1 %; …". names gives students their names.
func (run Run) Said(names map[string]string, zone *time.Location) string {
	said := fmt.Sprintf("%d. %s, %s", run.Number, run.Problem, run.when(zone))
	if who := run.named(names); who != "" {
		said += ", " + who
	}
	var typed []string
	for _, line := range strings.Split(run.Text, "\n") {
		typed = append(typed, strings.TrimPrefix(line, kindWords[Measure]+" "))
	}
	// The record may have come from elsewhere, with anything in its texts.
	return expr.Clean(said + ": " + strings.Join(typed, "; "))
}

func (run Run) when(zone *time.Location) string {
	return run.Time.In(zone).Format("2 January 2006 15:04")
}

func (run Run) named(names map[string]string) string { return measure.Listed(run.people(names), "and") }

func (run Run) people(names map[string]string) []string {
	who := make([]string, len(run.Students))
	for i, id := range run.Students {
		who[i] = expr.Clean(cmp.Or(names[id], id))
	}
	return who
}

// Names gives every student's name by id.
func Names(r *record.Record) (map[string]string, error) {
	students, err := r.Students()
	names := map[string]string{}
	for _, s := range students {
		names[s.ID] = s.Name
	}
	return names, err
}
