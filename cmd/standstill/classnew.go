package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/class"
)

func classNewCommand(t *teacher) *cobra.Command {
	var d class.Draft
	c := &cobra.Command{
		Use:   "new FILE",
		Short: "Make a class file",
		Long: `Makes a class file from the flags, and asks for what they leave out: the name, the
students and the work. Students come from a CSV file with the columns id and name, or
from a OneRoster folder. An answer is checked when it is given; the word back goes to the
question before, and what was answered is kept beside the file if you break off. The file
is plain text; change it with any editor.`,
		Example: "  standstill class new my-class.yaml --name Physics --students students.csv --problem canal-lantern --topic springs",
		Args:    exactly(1, "a file"),
		RunE: func(_ *cobra.Command, args []string) error {
			return t.newClass(args[0], &d)
		},
	}
	f := c.Flags()
	f.StringVar(&d.Name, "name", "", "the `name` of the class")
	f.StringVar(&d.Code, "numbers", "", "the number `key`, which chooses the numbers; made from the name and chance if left out")
	f.StringVar(&d.Code, "code", "", "the same as --numbers")
	f.StringVar(&d.List, "students", "", "a CSV `file` or OneRoster folder with the students, or their names with commas between them")
	f.StringVar(&d.RosterClass, "roster-class", "", "the `id` of the class, where a OneRoster folder has several")
	f.StringArrayVar(&d.Set, "problem", nil, "set this `problem`; may be given several times")
	f.StringArrayVar(&d.Topics, "topic", nil, "set all problems of this `topic`; may be given several times")
	f.StringArrayVar(&d.From, "problems-from", nil, "a `folder` of own problem files; may be given several times")
	f.StringVar(&d.Due, "due", "", "the `date` until which the work is to be done, as in 2026-03-09")
	f.StringVar(&d.Gravity, "g", "", "the `value` of g, as in '9.81 m/s^2'")
	f.StringVar(&d.Tolerance, "tolerance", "", "the `share` within which a number is right, as in '2 %'")
	f.BoolVar(&d.NoHints, "no-hints", false, "give no hints")
	f.BoolVar(&d.NoSolution, "no-solution", false, "show the worked solution only once a problem is solved")
	d.Choices = map[string]*string{}
	for _, one := range class.Choices() {
		if one.Key != "hints" && one.Key != "solution" { // these have flags of their own
			d.Choices[one.Key] = f.String(one.Key, "", one.What+": "+strings.Join(one.Words, ", ")+"; the first if left out")
		}
	}
	return c
}

// newClass asks for what the flags left out and writes the file. Whether it can be
// written is looked at first.
func (t *teacher) newClass(path string, d *class.Draft) error {
	if _, err := os.Lstat(path); err == nil {
		return fmt.Errorf(saidIsThere, path)
	}
	if info, err := os.Stat(filepath.Dir(path)); err != nil || !info.IsDir() {
		return fmt.Errorf(saidNoFolder, filepath.Dir(path))
	}
	d.Beside = filepath.Dir(path)
	bank, err := d.Problems(t.openBank())
	if err != nil {
		return err
	}
	talk := newDialogue(t.In, t.Out, path+".draft")
	if err := talk.run(missingParts(d, bank)); err != nil {
		return err
	}
	for part, into := range map[string]*string{partName: &d.Name, partStudents: &d.List, partWork: &d.Work, partDue: &d.Due} {
		if answer, ok := talk.answers[part]; ok {
			*into = answer
		}
	}
	text, err := d.File(bank)
	if err != nil {
		return err
	}
	if err := writeNew(path, text); err != nil {
		return fmt.Errorf(saidNotWritten, path, plainCause(err))
	}
	talk.done()
	_, err = fmt.Fprintf(t.Out, saidMade+"\n", path, path)
	return err
}

// The parts of a class file that are asked for.
const (
	partName     = "name"
	partStudents = "students"
	partWork     = "work"
	partDue      = "due"
)

// missingParts are the questions about what the flags leave out.
func missingParts(d *class.Draft, bank *problems.Bank) (missing []question) {
	work := len(d.Set)+len(d.Topics) > 0
	for _, one := range []struct {
		have bool
		question
	}{
		{d.Name != "", question{partName, saidAskName, class.CheckName}},
		{d.List != "", question{partStudents, saidAskList, func(s string) string { return d.CheckStudents(s) }}},
		{work, question{partWork, saidAskWork, func(s string) string { return class.CheckWork(s, bank) }}},
		{d.Due != "" || work, question{partDue, saidAskDue, class.CheckDue}},
	} {
		if !one.have {
			missing = append(missing, one.question)
		}
	}
	return missing
}
