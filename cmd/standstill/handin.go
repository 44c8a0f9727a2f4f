package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor/class"
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
	c.Flags().StringVar(&student, "student", "", "the `student`, by name or id; else the one who practised last")
	c.Flags().StringVar(&classFile, "class", "", "the class `file`; else class.yaml beside the program or in the data folder")
	return c
}

func (a *app) handIn(folder, student, classFile string) error {
	var who []string
	if student != "" {
		who = []string{student}
	}
	bank := a.openBank()
	c, err := a.openClass(classFile, bank)
	if err != nil {
		return err
	}
	desk, done, err := a.seat(who)
	if err != nil {
		return err
	}
	defer done()
	h := class.HandIn{Student: desk.Student, Record: desk.Record(), Bank: bank, Now: time.Now()}
	if c != nil {
		h.Class = c.Code
	}
	data, name, entries, err := h.File()
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
	if err := writeWhole(path, data); err != nil {
		return fmt.Errorf(saidNotWritten, path, plainCause(err))
	}
	fmt.Fprintf(a.Out, saidHandedIn+"\n", path, entries, desk.Student.Name)
	return nil
}

// writeWhole writes a file so that under its name there is the old content or the
// new, never a part.
func writeWhole(path string, data []byte) error {
	f, err := os.CreateTemp(filepath.Dir(path), ".standstill-*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name())
	_, err = f.Write(data)
	err = errors.Join(err, f.Sync(), f.Close())
	if err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}

// plainCause is what the system says, without the path and the call.
func plainCause(err error) string {
	var path *os.PathError
	if errors.As(err, &path) {
		return path.Err.Error()
	}
	return err.Error()
}
