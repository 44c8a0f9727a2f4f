package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

func recordCommand(a *app) *cobra.Command {
	var asJSON bool
	var classFile string
	c := &cobra.Command{
		Use:   "record [STUDENT]",
		Short: "Print a student's progress",
		Long: `This command prints the status of every problem that a student has started. If
you do not name a student, it prints the status for the student who practised
last.`,
		Example: "  standstill record\n  standstill record Nele --json",
		Args: func(c *cobra.Command, args []string) error {
			if len(args) > 1 {
				return exactly(1, "")(c, args)
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			desk, done, err := a.seat(classFile, args)
			if err != nil {
				return err
			}
			defer done()
			if asJSON {
				return writeProgress(a.Out, desk)
			}
			return listProgress(a.Out, desk)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print one JSON object")
	c.Flags().StringVar(&classFile, "class", "", "the class `file`; the default is class.yaml in the program's folder or in the data folder")
	c.AddCommand(forgetCommand(a), recordMigrateCommand(a), recordCopyCommand(a), recordExportCommand(a))
	return c
}

// seat opens the record and finds the student. What the class sets holds here as it
// does in the lesson. A record that is not there is not made.
func (a *app) seat(classFile string, args []string) (desk *tutor.Desk, done func(), err error) {
	rules, bank, err := a.classOrBank(classFile)
	if err != nil {
		return nil, nil, err
	}
	path, err := a.recordPath()
	if err != nil {
		return nil, nil, errors.New(record.Sentence(err))
	}
	if err := isThere(path); err != nil {
		return nil, nil, err
	}
	r, err := a.openToRead(path)
	if err != nil {
		return nil, nil, errors.New(record.Sentence(err))
	}
	student, err := a.student(r, &rules, args)
	if err == nil {
		desk, err = tutor.New(tutor.Options{Bank: bank, Record: r, Class: rules}).Seat(student)
	}
	if err != nil {
		r.Close()
		return nil, nil, said(err)
	}
	return desk, func() { r.Close() }, nil
}

// isThere says so where there is no record in a file: to open it would make one.
func isThere(path string) error {
	if _, err := os.Stat(path); !record.IsDatabase(path) && errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf(saidNoRecord, path)
	}
	return nil
}

// openToRead opens a record, also one that this account or its disk lets nobody write.
func (a *app) openToRead(path string) (*record.Record, error) {
	r, err := a.opened(path, record.Options{})
	if err != nil && record.IsReadOnly(err) {
		// To open it for writing would fail, as on a teacher's share.
		return record.OpenForeign(path)
	}
	return r, err
}

// said words an error of the record.
func said(err error) error {
	var fault *record.Error
	if errors.As(err, &fault) {
		return errors.New(record.Sentence(err))
	}
	return err
}

// student finds whose entries are meant: those of the student named, else of the one who
// practised last. Whoever has entries here is found, on the list of the class or not.
func (a *app) student(r *record.Record, of *tutor.Class, args []string) (s record.Student, err error) {
	all, err := studentsIn(r, of)
	switch {
	case err != nil:
		return s, err
	case len(all) == 0:
		return s, errors.New(saidNobody)
	case len(args) > 0:
		s, ok := (&tutor.Class{Students: all}).Student(args[0])
		if !ok {
			return s, fmt.Errorf(saidNoStudent, args[0], namesOf(all))
		}
		return s, nil
	}
	last, err := r.LastStudent()
	for _, s := range all {
		// Whoever practised last may have been deleted since; then a name is asked for.
		if err == nil && s.ID == last {
			return s, nil
		}
	}
	return s, cmp.Or(err, fmt.Errorf(saidNameStudent, namesOf(all)))
}

// studentsIn lists who has a place in a record, and who has entries in it: what is
// collected for a class has no places.
func studentsIn(r *record.Record, of *tutor.Class) ([]record.Student, error) {
	all, err := r.Students()
	if err != nil {
		return nil, err
	}
	counts, err := r.Counts()
	for _, id := range slices.Sorted(maps.Keys(counts)) {
		// A student is one, however the name was typed: Nele and nele.
		if slices.ContainsFunc(all, func(s record.Student) bool { return problems.Fold(s.ID) == problems.Fold(id) }) {
			continue
		}
		one := record.Student{ID: id, Name: id}
		for _, s := range of.Students {
			if problems.Fold(s.ID) == problems.Fold(id) {
				one.Name = s.Name
			}
		}
		all = append(all, one)
	}
	return all, err
}

func namesOf(students []record.Student) string {
	names := make([]string, len(students))
	for i, s := range students {
		names[i] = s.Name
	}
	return strings.Join(names, ", ")
}

func listProgress(w io.Writer, desk *tutor.Desk) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n", desk.Student.Name)
	begun := started(desk)
	for _, p := range begun {
		fmt.Fprintf(&b, "  %s: %s (%s, %s; %slines checked: %d, lines not right: %d, hints: %d)\n",
			p.Title, p.Progress, p.section, problems.LevelWord(p.Level), goes(p.Progress), p.Lines, p.Refused, p.Hints)
	}
	if len(begun) == 0 {
		b.WriteString("  No problem has been started yet.\n")
	} else {
		listIdeas(&b, desk)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// startedProblem is a problem that a student started, and the section where it is found first.
type startedProblem struct {
	tutor.Listed
	section string
}

// started lists the problems that a student started, each once: a set one is on two sections.
func started(desk *tutor.Desk) (all []startedProblem) {
	seen := map[string]bool{}
	for _, section := range desk.Sections() {
		for _, p := range section.Problems {
			if p.Status != tutor.NotBegun && !seen[p.ID] {
				seen[p.ID] = true
				all = append(all, startedProblem{p, section.Title})
			}
		}
	}
	return all
}

func goes(p tutor.Progress) string {
	if said := p.Goes(); said != "" {
		return said + ", "
	}
	return ""
}

// listIdeas lists the ideas that the student has had a chance at.
func listIdeas(b *strings.Builder, desk *tutor.Desk) {
	b.WriteString("Ideas\n")
	for _, said := range desk.SaidIdeas() {
		fmt.Fprintf(b, "  %s\n", said)
	}
}

// ideaHeld is how far a student has come with one idea. Chances are in order of time,
// one for each problem that exercised it.
type ideaHeld struct {
	Idea    tutor.Idea      `json:"idea"`
	Title   string          `json:"title"`
	State   tutor.IdeaState `json:"state"`
	Chances []bool          `json:"chances"`
	Slipped string          `json:"slipped,omitempty"` // the problem where it went wrong last
}

func ideasHeld(desk *tutor.Desk) []ideaHeld {
	var all []ideaHeld
	for _, held := range desk.Past().Ideas() {
		one := ideaHeld{Idea: held.Idea, Title: held.Title(), State: held.State, Chances: []bool{}}
		for _, c := range held.Chances {
			one.Chances = append(one.Chances, c.Right)
		}
		if c, ok := held.Slipped(); ok {
			one.Slipped = c.Problem
		}
		all = append(all, one)
	}
	return all
}

// progress is how a student stands with one problem.
type progress struct {
	Problem    string        `json:"problem"`
	Title      string        `json:"title"`
	Topic      string        `json:"topic"`
	Level      int           `json:"level"`
	Status     string        `json:"standing"`
	Stage      checker.Stage `json:"stage,omitempty"`
	Attempts   int           `json:"attempts"`
	Items      int           `json:"items"`
	RightFirst int           `json:"firstGo"`
	Lines      int           `json:"lines"`
	Refused    int           `json:"refused"`
	Hints      int           `json:"hints"`
	StepsShown int           `json:"stepsShown"`
}

func writeProgress(w io.Writer, desk *tutor.Desk) error {
	out := struct {
		Student  string     `json:"student"`
		Name     string     `json:"name"`
		Problems []progress `json:"problems"`
		Ideas    []ideaHeld `json:"ideas"`
	}{desk.Student.ID, desk.Student.Name, []progress{}, ideasHeld(desk)}
	for _, p := range started(desk) {
		out.Problems = append(out.Problems, progress{p.ID, p.Title, p.Topic, p.Heading.Level, p.Status.Key(),
			p.Stage, p.Attempts, p.Items, p.RightFirst, p.Lines, p.Refused, p.Hints, p.StepsShown})
	}
	return writeJSON(w, out, "  ")
}
