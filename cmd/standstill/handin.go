package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor/class"
	"example.org/standstill/tutor/class/summary"
)

func handInCommand(a *app) *cobra.Command {
	var student, classFile string
	c := &cobra.Command{
		Use:     "hand-in [FOLDER]",
		Short:   "Write one student's answers into a file for the teacher",
		Long:    saidHandInHelp,
		Example: "  standstill hand-in\n  standstill hand-in . --student Nele",
		Args:    atMostOne,
		RunE: func(_ *cobra.Command, args []string) error {
			folder := "."
			if len(args) == 1 {
				folder = args[0]
			}
			return a.handIn(folder, student, classFile)
		},
	}
	c.Flags().StringVar(&student, "student", "", "the name or the id of the `student`; the default is the student who practised last")
	c.Flags().StringVar(&classFile, "class", "", "the class `file`; the default is class.yaml in the program's folder or in the data folder")
	return c
}

func (a *app) handIn(folder, student, classFile string) error {
	var who []string
	if student != "" {
		who = []string{student}
	}
	desk, done, err := a.seat(classFile, who)
	if err != nil {
		return err
	}
	defer done()
	h := class.HandIn{Tutor: desk.Tutor(), Student: desk.Student, Now: time.Now()}
	data, name, entries, err := h.File()
	// An empty file would look to the teacher as if something had been lost.
	if errors.Is(err, class.ErrNothing) {
		return fmt.Errorf(saidNothingToHandIn, desk.Student.Name)
	}
	if err != nil {
		return said(err)
	}
	if info, err := os.Stat(folder); err != nil || !info.IsDir() {
		return fmt.Errorf(saidNoFolder, folder)
	}
	path := filepath.Join(folder, name)
	out := output{Mark: class.HandInMark}
	if err := out.write(path, data); err != nil {
		return err
	}
	fmt.Fprintf(a.Out, saidHandedIn+"\n", path, summary.Entries(entries), desk.Student.Name)
	return nil
}
