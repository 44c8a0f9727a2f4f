package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

func classPackCommand(t *teacher) *cobra.Command {
	var out output
	c := &cobra.Command{
		Use:   "pack FILE",
		Short: "Put the class file and your own problems into one file",
		Long: `This command writes one file with the class, the list of students and your own
problems. Copy this file to the students' machines, into the program's folder or
into the data folder, and name it class.yaml. The program then finds the file
automatically.`,
		Example: "  standstill class pack packed.yaml --class physics-10b.yaml",
		Args:    exactly(1, "the file to write"),
		RunE: func(_ *cobra.Command, args []string) error {
			c, err := t.needClass()
			if err != nil {
				return err
			}
			text, err := c.Pack(problems.Embedded())
			if err != nil {
				return err
			}
			// A packed file may be written again; the class file itself, named by mistake, may not.
			out.Mark = classfile.PackedMark
			if err := out.write(args[0], text); err != nil {
				return err
			}
			_, err = fmt.Fprintf(t.Out, saidPacked+"\n", args[0], summary.Times(len(c.Students), "student"), summary.Times(len(c.Work), "problem"))
			return err
		},
	}
	out.flags(c)
	return c
}

func classAddCommand(t *teacher) *cobra.Command {
	var id string
	c := &cobra.Command{
		Use:   "add NAME",
		Short: "Add a student to the class list",
		Long: `This command adds one student at the end of the class list, either in the class
file or in the CSV file with the list. It changes nothing else. Copy the changed
file to the student's machine, so that the student can start.`,
		Example: "  standstill class add Zoe --class physics-10b.yaml\n  standstill class add Zoe --id s31 --class physics-10b.yaml",
		Args:    exactly(1, "the name of a student"),
		RunE: func(_ *cobra.Command, args []string) error {
			name := t.file
			if name == "" {
				name = t.findClass()
			}
			if name == "" {
				return errors.New(saidNoClass)
			}
			added, err := classfile.Add(name, t.openBank(), record.Student{ID: id, Name: args[0]})
			if err != nil {
				return err
			}
			// The list of a class, half written, would lock out every student behind the break.
			if err := writeWhole(added.File, added.Text); err != nil {
				return fmt.Errorf(saidNotWritten, added.File, plainCause(err))
			}
			_, err = fmt.Fprintf(t.Out, saidAdded+"\n", added.Student.Name, added.Student.ID, added.File)
			return err
		},
	}
	c.Flags().StringVar(&id, "id", "", "the `id` of the student; without this flag, the program makes the id from the name")
	return c
}
