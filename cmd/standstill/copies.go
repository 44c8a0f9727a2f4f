package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// whose are the flags that choose students' own copies: by a class file, or where
// there is none by the number key that a class's numbers come from.
type whose struct {
	students       []string
	class, numbers string
}

func (w *whose) flags(c *cobra.Command) {
	c.Flags().StringArrayVar(&w.students, "student", nil, "use the numbers of this `student`: a student on the class list, or any name if you use --numbers")
	c.Flags().StringVar(&w.class, "class", "", "use the numbers and the value of g from this class `file`")
	c.Flags().StringVar(&w.numbers, "numbers", "", "make the numbers from this number `key`, without a class file")
}

// copies are a class, its problems and the students whose copies are meant, nobody
// for the numbers of the files.
type copies struct {
	app      *app
	rules    tutor.Class
	bank     *problems.Bank
	students []record.Student
}

// copies reads the class file that is named, if one is.
func (w *whose) copies(a *app) (*copies, error) {
	switch {
	case w.class != "" && w.numbers != "":
		return nil, misuse{errors.New(saidClassOrNumbers)}
	case w.class == "":
		// Without a list any name is a student: the numbers follow from key and name alone.
		all := &copies{app: a, rules: tutor.Class{Code: w.numbers}, bank: a.openBank()}
		for _, name := range w.students {
			all.students = append(all.students, record.Student{ID: name, Name: name})
		}
		return all, nil
	}
	c, err := a.openClass(w.class)
	if err != nil {
		return nil, err
	}
	all := &copies{app: a, rules: c.Class, bank: c.Bank}
	for _, name := range w.students {
		s, ok := c.Student(name)
		if !ok {
			return nil, fmt.Errorf(saidNotInClass, name)
		}
		all.students = append(all.students, s)
	}
	return all, nil
}

// problem finds a problem by its id, or reads it from a file.
func (c *copies) problem(name string) (*problems.Problem, error) {
	return c.app.problemOf(func() *problems.Bank { return c.bank }, name)
}

// page makes an empty page of a student's copy; without a student it has the numbers
// of the file, with the class's g.
func (c *copies) page(p *problems.Problem, student string) (*tutor.Page, error) {
	own, err := c.rules.WithGravity(p)
	if err == nil && (student != "" || c.rules.Students == nil) {
		own, err = c.rules.Copy(p, student, 0)
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w", p.ID, err)
	}
	return c.rules.NewPage(own)
}

// page makes an empty page of the one copy of a problem, given by its id or as a
// file.
func (w *whose) page(a *app, problem string) (*tutor.Page, error) {
	if len(w.students) > 1 {
		return nil, misuse{errors.New(saidOneStudent)}
	}
	all, err := w.copies(a)
	if err != nil {
		return nil, err
	}
	p, err := all.problem(problem)
	if err != nil {
		return nil, err
	}
	student := ""
	if len(all.students) == 1 {
		student = all.students[0].ID
	}
	return all.page(p, student)
}
