package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor/record"
	"example.org/standstill/tutor/sheet"
)

func sheetCommand(a *app) *cobra.Command {
	o := &order{app: a}
	var file string
	var noKey, answers bool
	c := &cobra.Command{
		Use:   "sheet [PROBLEM…]",
		Short: "Make a sheet of problems to print",
		Long: `This command writes one HTML file that you can print from a browser. For each
problem, the HTML file contains a page to work on, with the drawing, and the
worked solution on a separate page. With a class file, every student gets the
same numbers on paper as on the screen. To make sheets for only some of the
students, add --student for each of them. If you give a class file but no
PROBLEM, the sheets contain the set work of the class. Without a class file, use
--numbers KEY to give different numbers to each student whom you name with
--student.`,
		Example: `  standstill sheet canal-lantern -o lantern-sheet.html
  standstill sheet banner-ring crate-ramp --numbers 10b --student ada --student ben -o work.html
  standstill sheet --class physics-10b.yaml --no-solution -o physics-10b.html
  standstill sheet --class physics-10b.yaml --answers -o answers-10b.html`,
		RunE: func(c *cobra.Command, ids []string) error {
			if err := o.check(ids); err != nil {
				return misuse{err}
			}
			papers, err := o.papers(ids)
			if err != nil {
				return err
			}
			if answers {
				return o.writeSheet(file, func(w io.Writer) error { return sheet.WriteAnswers(w, papers) })
			}
			return o.writeSheet(file, func(w io.Writer) error { return sheet.Write(w, papers, !noKey) })
		},
	}
	o.flags(c)
	o.out.flags(c)
	c.Flags().StringVarP(&file, "output", "o", "", "the `file` to write; without this flag, the sheet goes to standard output")
	c.Flags().BoolVar(&noKey, "no-solution", false, "leave out the worked solutions")
	c.Flags().BoolVar(&noKey, "no-key", false, "the same as --no-solution")
	c.Flags().BoolVar(&answers, "answers", false, "write only each student's numbers and results, with one page for each problem")
	return c
}

// order says for whom papers are made: for nobody in particular, for students with a
// number key, or for those of a class file.
type order struct {
	*app
	whose
	out output
}

func (o *order) check(ids []string) error {
	switch {
	case len(o.students) > 0 && o.class == "" && o.numbers == "":
		return errors.New(saidStudentsNeedClass)
	case len(ids) == 0 && o.class == "":
		return errors.New(saidSheetOfWhat)
	}
	return nil
}

// papers opens each student's copy of each problem, one student after the other.
func (o *order) papers(ids []string) ([]sheet.Paper, error) {
	all, err := o.copies(o.app)
	if err != nil {
		return nil, err
	}
	if len(o.students) == 0 {
		all.students = all.rules.Students
	}
	if len(all.students) == 0 {
		// Nobody in particular gets one sheet, with the numbers of the file.
		all.students = []record.Student{{}}
	}
	if len(ids) == 0 {
		for _, set := range all.rules.Work {
			ids = append(ids, set.ID)
		}
	}
	var papers []sheet.Paper
	for _, student := range all.students {
		for _, id := range ids {
			p, err := all.problem(id)
			if err != nil {
				return nil, err
			}
			page, err := all.page(p, student.ID)
			if err != nil {
				return nil, err
			}
			papers = append(papers, sheet.Paper{Student: student.Name, Page: page})
		}
	}
	return papers, nil
}

func (o *order) writeSheet(file string, write func(io.Writer) error) error {
	a := o.app
	var b bytes.Buffer
	// Into memory first, so that an error leaves no half sheet in a pipe.
	if err := write(&b); err != nil {
		return err
	}
	if file == "" {
		_, err := a.Out.Write(b.Bytes())
		return err
	}
	if err := o.out.write(file, b.Bytes()); err != nil {
		return err
	}
	fmt.Fprintf(a.Out, saidSheetWritten, file)
	return nil
}
