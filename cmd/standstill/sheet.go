package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
	"example.org/standstill/tutor/sheet"
)

func sheetCommand(a *app) *cobra.Command {
	o := &order{app: a}
	var file string
	var noKey bool
	c := &cobra.Command{
		Use:   "sheet PROBLEM…",
		Short: "Make a printable sheet of problems",
		Long: `Writes one HTML file to print from a browser: a page of work for each problem, with the
drawing, and the key on pages of its own. With --class and a code every --student gets a
copy with numbers of their own. With --class and a class file everybody on its list does,
or the --student's who are named, with the numbers that they get on the screen; without a
PROBLEM it is the work that the class has been set.`,
		Example: `  standstill sheet canal-lantern -o lantern-sheet.html
  standstill sheet banner-ring crate-ramp --class 10b --student ada --student ben -o work.html
  standstill sheet --class physics-10b.yaml -o physics-10b.html`,
		RunE: func(c *cobra.Command, ids []string) error {
			if err := o.check(ids); err != nil {
				return misuse{err}
			}
			papers, err := o.papers(ids)
			if err != nil {
				return err
			}
			return a.writeSheet(papers, !noKey, file)
		},
	}
	c.Flags().StringArrayVar(&o.students, "student", nil, "a `student` who gets an own copy; may be given several times")
	c.Flags().StringVar(&o.class, "class", "", "the class `code` that the copies are drawn for, or a class file")
	c.Flags().StringVarP(&file, "output", "o", "", "the `file` to write; else the sheet is printed")
	c.Flags().BoolVar(&noKey, "no-key", false, "leave the key out")
	return c
}

// order says for whom papers are made: for nobody in particular, for students with a
// class code, or for those of a class file.
type order struct {
	*app
	students []string
	class    string
}

func (o *order) check(ids []string) error {
	switch {
	case len(o.students) > 0 && o.class == "":
		return errors.New(saidStudentsNeedClass)
	case len(ids) == 0 && !isFile(o.class):
		return errors.New(saidSheetOfWhat)
	}
	return nil
}

// papers opens each student's copy of each problem, one student after the other.
func (o *order) papers(ids []string) ([]sheet.Paper, error) {
	rules, students, err := o.whom()
	if err != nil {
		return nil, err
	}
	if len(ids) == 0 {
		for _, set := range rules.Work {
			ids = append(ids, set.ID)
		}
	}
	var papers []sheet.Paper
	for _, student := range students {
		for _, id := range ids {
			page, err := o.page(&rules, id, student.ID)
			if err != nil {
				return nil, err
			}
			papers = append(papers, sheet.Paper{Student: student.Name, Page: page})
		}
	}
	return papers, nil
}

// whom finds the class and its students; a class that is only a code sets nothing.
func (o *order) whom() (rules tutor.Class, students []record.Student, err error) {
	if !isFile(o.class) {
		rules.Code = o.class
		for _, name := range o.students {
			students = append(students, record.Student{ID: name, Name: name})
		}
		if len(students) == 0 {
			students = []record.Student{{}}
		}
		return rules, students, nil
	}
	c, err := o.openClass(o.class, o.openBank())
	if err != nil {
		return rules, nil, err
	}
	students = c.Students
	if len(o.students) > 0 {
		students = nil
	}
	for _, name := range o.students {
		s, ok := c.Student(name)
		if !ok {
			return rules, nil, fmt.Errorf(saidNotOnList, name)
		}
		students = append(students, s)
	}
	return c.Class, students, nil
}

// page makes an empty page of a student's copy of a problem, given by its id or as a file.
func (o *order) page(rules *tutor.Class, problem, student string) (*tutor.Page, error) {
	p, err := o.problem(problem)
	if err != nil {
		return nil, err
	}
	own, err := rules.Copy(p, student, 0)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", p.ID, err)
	}
	return rules.NewPage(own)
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
