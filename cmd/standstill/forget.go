package main

import (
	"bufio"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor/class"
	"example.org/standstill/tutor/record"
)

func forgetCommand(a *app) *cobra.Command {
	var classFile string
	var yes bool
	c := &cobra.Command{
		Use:   "forget STUDENT",
		Short: "Delete everything that a student did",
		Long: `Deletes a student, by name or id, and all entries of the student, and overwrites them in
the file; with --class in the record of the class. It says what it will delete and asks
first. The numbers of the other entries then have a gap. A hand-in file of the student
still contains everything, but collecting it again does not bring the entries back.`,
		Example: "  standstill record forget Nele --yes",
		Args:    exactly(1, "a student, by name or id"),
		RunE: func(_ *cobra.Command, args []string) error {
			if classFile != "" {
				t := &teacher{app: a, file: classFile}
				return t.with(func(m *class.Markbook) error { return a.forgetOfClass(m, args[0], yes) })
			}
			desk, done, err := a.seat("", args)
			if err != nil {
				return err
			}
			defer done()
			r, id := desk.Record(), desk.Student.ID
			counts, err := r.Counts()
			if err != nil {
				return said(err)
			}
			if err := a.sure(yes, desk.Student.Name, counts[id], r.Path()); err != nil {
				return err
			}
			n, err := r.Forget(id)
			return said(a.forgotten(desk.Student.Name, n, r.Path(), err))
		},
	}
	c.Flags().StringVar(&classFile, "class", "", "forget in the record of this class `file`")
	c.Flags().BoolVar(&yes, "yes", false, "do not ask first")
	return c
}

func (a *app) forgetOfClass(m *class.Markbook, who string, yes bool) error {
	s, ok := m.Class.Student(who)
	if !ok {
		s = record.Student{ID: who, Name: who}
	}
	n, err := m.Count(s.ID)
	switch {
	case err != nil:
		return err
	case n == 0 && !ok:
		return fmt.Errorf(saidNobodyToForget, who)
	}
	if err := a.sure(yes, s.Name, n, m.Record.Path()); err != nil {
		return err
	}
	n, _, err = m.Forget(s.ID)
	return a.forgotten(s.Name, n, m.Record.Path(), err)
}

// sure says what will be deleted and asks. Nothing but a yes is a yes.
func (a *app) sure(yes bool, name string, entries int, path string) error {
	if yes {
		return nil
	}
	fmt.Fprintf(a.Out, saidWillForget+"\n", entries, name, path)
	lines := bufio.NewScanner(a.In)
	if lines.Scan() {
		switch strings.ToLower(strings.TrimSpace(lines.Text())) {
		case "y", "yes":
			return nil
		}
	}
	return errors.New(saidNothingForgotten)
}

func (a *app) forgotten(name string, entries int, path string, err error) error {
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(a.Out, saidForgotten+"\n", name, entries, path)
	return err
}
