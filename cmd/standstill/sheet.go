package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor/sheet"
)

func sheetCommand(a *app) *cobra.Command {
	var students []string
	var class, file string
	var noKey bool
	c := &cobra.Command{
		Use:   "sheet PROBLEM…",
		Short: "Make a printable sheet of problems",
		Long: "Writes one HTML file to print from a browser: a page of work for each problem, with the\n" +
			"drawing, and the key on pages of its own. With --class every --student gets a copy with\n" +
			"numbers of their own.",
		Example: "  standstill sheet canal-lantern -o lantern-sheet.html\n  standstill sheet banner-ring crate-ramp --class 10b --student ada --student ben -o work.html",
		Args:    cobra.MinimumNArgs(1),
		RunE: func(_ *cobra.Command, ids []string) error {
			if len(students) > 0 && class == "" {
				return misuse{errors.New(saidStudentsNeedClass)}
			}
			papers, err := a.papers(ids, class, students)
			if err != nil {
				return err
			}
			return a.writeSheet(papers, !noKey, file)
		},
	}
	c.Flags().StringArrayVar(&students, "student", nil, "a `student` who gets an own copy; may be given several times")
	c.Flags().StringVar(&class, "class", "", "the class `code` that the copies are drawn for")
	c.Flags().StringVarP(&file, "output", "o", "", "the `file` to write; else the sheet is printed")
	c.Flags().BoolVar(&noKey, "no-key", false, "leave the key out")
	return c
}

// papers opens each student's copy of each problem, one student after the other.
func (a *app) papers(ids []string, class string, students []string) ([]sheet.Paper, error) {
	if len(students) == 0 {
		students = []string{""}
	}
	var papers []sheet.Paper
	for _, student := range students {
		for _, id := range ids {
			own := whose{student: student, class: class}
			page, err := own.page(a, id)
			if err != nil {
				return nil, err
			}
			papers = append(papers, sheet.Paper{Student: student, Page: page})
		}
	}
	return papers, nil
}

// writeSheet never writes over a file.
func (a *app) writeSheet(papers []sheet.Paper, key bool, file string) error {
	var b bytes.Buffer
	if err := sheet.Write(&b, papers, key); err != nil {
		return err
	}
	if file == "" {
		_, err := a.Out.Write(b.Bytes())
		return err
	}
	err := writeNew(file, b.Bytes())
	if errors.Is(err, os.ErrExist) {
		return fmt.Errorf(saidFileIsThere, file)
	}
	if err != nil {
		return err
	}
	fmt.Fprintf(a.Out, saidSheetWritten, file)
	return nil
}
