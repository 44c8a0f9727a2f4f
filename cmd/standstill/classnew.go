package main

import (
	"bufio"
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor/class"
)

func classNewCommand(t *teacher) *cobra.Command {
	var d class.Draft
	c := &cobra.Command{
		Use:   "new FILE",
		Short: "Make a class file",
		Long: `Makes a class file from the flags, and asks for what they leave out: the name, the
students and the work. Students come from a CSV file with the columns id and name, or
from a OneRoster folder. The file is plain text; change it with any editor.`,
		Example: "  standstill class new my-class.yaml --name Physics --students students.csv --problem canal-lantern --topic springs",
		Args:    exactly(1, "a file"),
		RunE: func(_ *cobra.Command, args []string) error {
			bank := t.openBank()
			if err := t.askFor(&d); err != nil {
				return err
			}
			text, err := d.File(bank)
			if err != nil {
				return err
			}
			if err := writeNew(args[0], text); errors.Is(err, fs.ErrExist) {
				return fmt.Errorf(saidIsThere, args[0])
			} else if err != nil {
				return fmt.Errorf(saidNotWritten, args[0], plainCause(err))
			}
			fmt.Fprintf(t.Out, saidMade+"\n", args[0], args[0])
			return nil
		},
	}
	f := c.Flags()
	f.StringVar(&d.Name, "name", "", "the `name` of the class")
	f.StringVar(&d.Code, "code", "", "the class `code`, which chooses the numbers; made from the name and chance if left out")
	f.StringVar(&d.List, "students", "", "a CSV file or OneRoster `folder` with the students")
	f.StringVar(&d.RosterClass, "roster-class", "", "the `id` of the class, where a OneRoster folder has several")
	f.StringArrayVar(&d.Problems, "problem", nil, "set this `problem`; may be given several times")
	f.StringArrayVar(&d.Topics, "topic", nil, "set all problems of this `topic`; may be given several times")
	f.StringVar(&d.Due, "due", "", "the `date` until which the work is to be done, as in 2026-03-09")
	f.StringVar(&d.Gravity, "g", "", "the `value` of g, as in '9.81 m/s^2'")
	f.StringVar(&d.Tolerance, "tolerance", "", "the `share` within which a number is right, as in '2 %'")
	f.BoolVar(&d.NoHints, "no-hints", false, "give no hints")
	f.BoolVar(&d.NoSolution, "no-solution", false, "show the worked solution only once a problem is solved")
	return c
}

// askFor asks for what the flags left out.
func (t *teacher) askFor(d *class.Draft) error {
	in := bufio.NewScanner(t.In)
	ask := func(question string) (string, error) {
		fmt.Fprintln(t.Out, question)
		if !in.Scan() {
			return "", errors.New(saidNoAnswer)
		}
		return strings.TrimSpace(in.Text()), nil
	}
	for _, one := range []struct {
		have     bool
		question string
		into     *string
	}{
		{d.Name != "", saidAskName, &d.Name},
		{d.List != "", saidAskList, &d.List},
		{len(d.Problems)+len(d.Topics) > 0, saidAskWork, &d.Work},
		{d.Due != "" || len(d.Problems)+len(d.Topics) > 0, saidAskDue, &d.Due},
	} {
		if one.have {
			continue
		}
		answer, err := ask(one.question)
		if err != nil {
			return err
		}
		*one.into = answer
	}
	return nil
}
