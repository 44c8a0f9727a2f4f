package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor/class"
	"example.org/standstill/tutor/record"
)

func forgetCommand(a *app) *cobra.Command {
	var classFile string
	c := &cobra.Command{
		Use:   "forget STUDENT",
		Short: "Delete everything that a student did",
		Long: `Deletes a student, by name or id, with all entries, and overwrites them in the file;
with --class from the class's record. The running numbers of the others show the gap.
A hand-in file of the student still holds everything: delete it too, or it comes back
when it is collected again.`,
		Example: "  standstill record forget Nele",
		Args:    exactly(1, "a student, by name or id"),
		RunE: func(_ *cobra.Command, args []string) error {
			if classFile != "" {
				t := &teacher{app: a, file: classFile}
				return t.with(func(m *class.Markbook) error {
					s, ok := m.Class.Student(args[0])
					if !ok {
						s = record.Student{ID: args[0], Name: args[0]}
					}
					n, err := m.Forget(s.ID)
					return a.forgotten(s.Name, n, m.Record.Path(), err)
				})
			}
			desk, done, err := a.seat("", args)
			if err != nil {
				return err
			}
			defer done()
			n, err := desk.Record().Forget(desk.Student.ID)
			return said(a.forgotten(desk.Student.Name, n, desk.Record().Path(), err))
		},
	}
	c.Flags().StringVar(&classFile, "class", "", "forget in the record of this class `file`")
	return c
}

func (a *app) forgotten(name string, entries int, path string, err error) error {
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(a.Out, saidForgotten+"\n", name, entries, path)
	return err
}
