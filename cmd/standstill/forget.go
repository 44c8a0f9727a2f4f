package main

import (
	"bufio"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor/class"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

func forgetCommand(a *app) *cobra.Command {
	var classFile, before string
	var yes bool
	c := &cobra.Command{
		Use:   "forget [STUDENT]",
		Short: "Delete all entries of a student, or all old entries",
		Long: `This command deletes one student and all entries of that student from the
record. Type the student's name or id. In a record file, the command also
overwrites the deleted entries. With --class, it deletes the student from the
class record. The command first says what it will delete and asks you to
confirm. The remaining entries keep their numbers, so there is a gap in the
numbering. The student's hand-in file still contains all entries, but if you
collect the file again, the entries do not come back. With --before, the command
deletes all entries that were made before a date, and all students who then have
no entries left. The record then contains a note that says who deleted entries,
when, and how many, but does not name the student.`,
		Example: "  standstill record forget Nele --yes\n  standstill record forget --before 2026-08-01 --yes",
		Args: func(c *cobra.Command, args []string) error {
			if before != "" {
				return exactly(0, "")(c, args)
			}
			return exactly(1, "the name or the id of a student")(c, args)
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if before != "" {
				return a.forgetBefore(classFile, before, yes)
			}
			if classFile != "" {
				t := &teacher{app: a, file: classFile}
				return t.with(func(m *class.Markbook) error { return a.forgetOfClass(m, args[0], yes) })
			}
			desk, done, err := a.seat("", args)
			if err != nil {
				return err
			}
			defer done()
			return a.forgetOne(desk.Record(), desk.Student, yes)
		},
	}
	c.Flags().StringVar(&classFile, "class", "", "the class `file`, to delete entries from the class record")
	c.Flags().BoolVar(&yes, "yes", false, "delete without asking")
	c.Flags().StringVar(&before, "before", "", "delete all entries that were made before this `date`, such as 2026-08-01")
	return c
}

// forgetOne deletes a student from a record that belongs to no class.
func (a *app) forgetOne(r *record.Record, s record.Student, yes bool) error {
	// How much it is makes a wrong name noticed before the yes.
	counts, err := r.Counts()
	if err != nil {
		return said(err)
	}
	if err := a.sure(yes, fmt.Sprintf(saidWillForget, summary.Entries(counts[s.ID]), s.Name, r.Path())); err != nil {
		return err
	}
	n, err := r.Forget(s.ID)
	if err == nil && n > 0 {
		err = r.NoteDeleted(record.OfOneStudent, n)
	}
	return said(a.forgotten(s.Name, n, r.Path(), err))
}

// forgetBefore deletes what everybody did before a day, which begins at midnight where the
// program runs.
func (a *app) forgetBefore(classFile, day string, yes bool) error {
	at, err := time.ParseInLocation(time.DateOnly, day, time.Local)
	if err != nil {
		return misuse{fmt.Errorf(saidNoDay, day)}
	}
	if classFile != "" {
		t := &teacher{app: a, file: classFile}
		return t.with(func(m *class.Markbook) error { return a.forgetOld(m.Record, at, yes) })
	}
	path, err := a.recordPath()
	if err != nil {
		return said(err)
	}
	if err := isThere(path); err != nil {
		return err
	}
	r, err := a.opened(path, record.Options{})
	if err != nil {
		return said(err)
	}
	defer r.Close()
	return a.forgetOld(r, at, yes)
}

func (a *app) forgetOld(r *record.Record, at time.Time, yes bool) error {
	day := at.Format(time.DateOnly)
	// The teacher sees the number before the yes, and not only after it.
	n, err := r.CountBefore(at)
	if err != nil {
		return said(err)
	}
	if err := a.sure(yes, fmt.Sprintf(saidWillForgetOld, summary.Entries(n), day, r.Path())); err != nil {
		return err
	}
	if n, err = r.ForgetBefore(at); err != nil {
		return said(err)
	}
	if n > 0 {
		// A gap in the numbers is explained by the record itself.
		if err := r.NoteDeleted("from before "+day, n); err != nil {
			return said(err)
		}
	}
	_, err = fmt.Fprintf(a.Out, saidForgottenOld+"\n", day, summary.Entries(n), r.Path())
	return err
}

func (a *app) forgetOfClass(m *class.Markbook, who string, yes bool) error {
	s, ok := m.Class.Student(who)
	if !ok {
		// Whoever has left the class is no longer on the list, but has entries.
		s = record.Student{ID: who, Name: who}
	}
	n, err := m.Count(s.ID)
	switch {
	case err != nil:
		return err
	case n == 0 && !ok:
		return fmt.Errorf(saidNobodyToForget, who)
	}
	if err := a.sure(yes, fmt.Sprintf(saidWillForget, summary.Entries(n), s.Name, m.Record.Path())); err != nil {
		return err
	}
	n, _, err = m.Forget(s.ID)
	return a.forgotten(s.Name, n, m.Record.Path(), err)
}

// sure says what will be deleted and asks. Nothing but a yes is a yes.
func (a *app) sure(yes bool, what string) error {
	if yes {
		return nil
	}
	fmt.Fprintln(a.Out, what)
	lines := bufio.NewScanner(a.In)
	// The end of the input is no yes.
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
	_, err = fmt.Fprintf(a.Out, saidForgotten+"\n", name, summary.Entries(entries), path)
	return err
}
