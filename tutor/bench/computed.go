package bench

import (
	"time"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench/measure"
	"example.org/standstill/tutor/record"
)

// Computed is one run's result with the number it goes by, who shared it, each with how far
// they predicted it by hand, and when it was begun.
type Computed struct {
	Number int
	*Result
	About About
}

// About is who made a run, each with how far they predicted by hand, and when.
type About struct {
	Number   int
	Students []string
	When     string
	Names    []string // the students without what they did
}

// group names those who made a run: "Ida and Jon".
func (a About) group() string { return measure.Listed(a.Names, "and") }

// Again computes the run of a number as it was typed. The sentences say what stands in
// the way of a result; the error is that of the record.
func Again(t *tutor.Tutor, number string) (Computed, []string, error) {
	runs, err := Runs(t.Record, "")
	if err != nil {
		return Computed{}, nil, err
	}
	run, why := pick(runs, number)
	if why != "" {
		return Computed{}, []string{why}, nil
	}
	return run.again(t)
}

func (run Run) again(t *tutor.Tutor) (Computed, []string, error) {
	f, err := run.Open(t.Record, t.Bank)
	if err != nil {
		return Computed{}, []string{saidCannotOpen(run.Number)}, nil
	}
	names, err := Names(t.Record)
	if err != nil {
		return Computed{}, nil, err
	}
	about := About{When: run.when(time.Local)}
	// The names of today: a student may have been renamed since.
	about.Names = run.people(names)
	for i, name := range about.Names {
		about.Students = append(about.Students, name+saidStatus(statusOf(t, run.Students[i], f)))
	}
	r, wrong := f.Result()
	return Computed{Number: run.Number, Result: r, About: about}, wrong, nil
}

// statusOf says how far a student has come by hand on the numbers of a form, "" for
// nothing begun.
func statusOf(t *tutor.Tutor, student string, f *Form) string {
	p, why := f.Copy()
	if why != "" {
		return ""
	}
	desk, err := t.Seat(record.Student{ID: student})
	if err != nil {
		return ""
	}
	if progress := desk.ProgressOf(p); progress.Status != tutor.NotBegun {
		return progress.String()
	}
	return ""
}
