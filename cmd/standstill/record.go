package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

func recordCommand(a *app) *cobra.Command {
	var asJSON bool
	var classFile string
	c := &cobra.Command{
		Use:     "record [STUDENT]",
		Short:   "Print a student's progress",
		Long:    "Prints the status of every problem that a student started: the student whom you name, or the one who practised last.",
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
	c.Flags().StringVar(&classFile, "class", "", "the class `file`; without it class.yaml in the folder of the program or the data folder")
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
	r, err := openToRead(path)
	if err != nil {
		return nil, nil, errors.New(record.Sentence(err))
	}
	// Whoever practised here is found, on the list of the class or not.
	student, err := a.student(tutor.New(tutor.Options{Record: r}), args)
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
func openToRead(path string) (*record.Record, error) {
	r, err := record.Open(path, record.Options{})
	if err != nil && record.IsReadOnly(err) {
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

func (a *app) student(t *tutor.Tutor, args []string) (record.Student, error) {
	if len(args) == 0 {
		s, ok, err := t.LastStudent()
		if err == nil && !ok {
			err = errors.New(saidNobody)
		}
		return s, err
	}
	s, ok, err := t.Find(args[0])
	if err != nil || ok {
		return s, err
	}
	students, err := t.Students()
	if err != nil {
		return s, err
	}
	var names []string
	for _, known := range students {
		names = append(names, known.Name)
	}
	if names == nil {
		return s, errors.New(saidNobody)
	}
	return s, fmt.Errorf(saidNoStudent, args[0], strings.Join(names, ", "))
}

func listProgress(w io.Writer, desk *tutor.Desk) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n", desk.Student.Name)
	begun := 0
	for _, shelf := range desk.Shelves() {
		for _, p := range shelf.Problems {
			if p.Standing == tutor.NotBegun {
				continue
			}
			begun++
			fmt.Fprintf(&b, "  %s: %s (%s, level %d; %slines %d, refused %d, hints %d)\n",
				p.Title, p.Progress, shelf.Title, p.Level, goes(p.Progress), p.Lines, p.Refused, p.Hints)
		}
	}
	if begun == 0 {
		b.WriteString("  Nothing is begun yet.\n")
	} else {
		listIdeas(&b, desk)
	}
	_, err := io.WriteString(w, b.String())
	return err
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
	Standing   string        `json:"standing"`
	Stage      checker.Stage `json:"stage,omitempty"`
	Attempts   int           `json:"attempts"`
	Items      int           `json:"items"`
	FirstGo    int           `json:"firstGo"`
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
	for _, shelf := range desk.Shelves() {
		for _, p := range shelf.Problems {
			if p.Standing != tutor.NotBegun {
				out.Problems = append(out.Problems, progress{p.ID, p.Title, p.Topic, p.Heading.Level, p.Standing.String(),
					p.Stage, p.Attempts, p.Items, p.FirstGo, p.Lines, p.Refused, p.Hints, p.StepsShown})
			}
		}
	}
	return writeJSON(w, out, "  ")
}
