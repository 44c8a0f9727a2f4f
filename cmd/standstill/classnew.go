package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/class/classfile"
)

func classNewCommand(t *teacher) *cobra.Command {
	var d classfile.Draft
	c := &cobra.Command{
		Use:   "new FILE",
		Short: "Create a class file",
		Long: `This command creates a class file. It needs the name of the class, the list of
students and the set work, and asks you for anything that you do not give as a
flag. The list of students can be a CSV file with the columns id and name, or a
OneRoster folder.
The program checks each answer at once. To go back to the previous question,
type back. If you stop before the end, your answers are saved. To continue with
the next question, type the same command again. You can change the class file
later with any text editor.`,
		Example: "  standstill class new my-class.yaml --name Physics --students students.csv --problem canal-lantern --topic springs",
		Args:    exactly(1, "the name of the new file"),
		RunE: func(_ *cobra.Command, args []string) error {
			return t.newClass(args[0], &d)
		},
	}
	f := c.Flags()
	f.StringVar(&d.Name, "name", "", "the `name` of the class")
	f.StringVar(&d.Code, "numbers", "", "make the students' numbers from this number `key`; without this flag, the program makes a new key")
	f.StringVar(&d.Code, "code", "", "the same as --numbers `key`")
	f.StringVar(&d.List, "students", "", "a CSV `file` or a OneRoster folder with the students, or the students' names, separated by commas")
	f.StringVar(&d.RosterClass, "roster-class", "", "the `id` of the class, if the OneRoster folder contains several classes")
	f.StringArrayVar(&d.Set, "problem", nil, "set this `problem`; you can repeat this flag")
	f.StringArrayVar(&d.Topics, "topic", nil, "set all problems on this `topic`; you can repeat this flag")
	f.StringArrayVar(&d.From, "problems-from", nil, "a `folder` with your own problem files; you can repeat this flag")
	f.StringVar(&d.Due, "due", "", "the due `date`, such as 2026-03-09")
	f.StringVar(&d.Gravity, "g", "", "the `value` of g, such as '9.81 m/s^2'")
	f.StringVar(&d.Tolerance, "tolerance", "", "accept a number if its error is at most this `percentage`, such as '2 %'")
	f.BoolVar(&d.NoHints, "no-hints", false, "give no hints")
	f.BoolVar(&d.NoSolution, "no-solution", false, "show the worked solution only after the student has solved the problem")
	d.Choices = map[string]*string{}
	for _, one := range classfile.Choices() {
		// One list for the file and the flags: a new choice needs no line here.
		if one.Key != "hints" && one.Key != "solution" { // these have flags of their own
			last := len(one.Words) - 1
			words := append([]string{one.Words[0] + " (the default)"}, one.Words[1:last]...)
			d.Choices[one.Key] = f.String(one.Key, "", one.What+"; the `setting` can be "+strings.Join(words, ", ")+" or "+one.Words[last])
		}
	}
	return c
}

// newClass asks for what the flags left out and writes the file. Whether it can be
// written is looked at first.
func (t *teacher) newClass(path string, d *classfile.Draft) error {
	// Refused before the first question, and not after the last answer.
	if _, err := os.Lstat(path); err == nil {
		return fmt.Errorf(saidFileExists, path)
	}
	if info, err := os.Stat(filepath.Dir(path)); err != nil || !info.IsDir() {
		return fmt.Errorf(saidNoFolder, filepath.Dir(path))
	}
	// A list of students that is named in the file is looked for beside the file.
	d.Beside = filepath.Dir(path)
	bank, err := d.Problems(t.openBank())
	if err != nil {
		return err
	}
	talk := newDialogue(t.In, t.Out, path+".draft")
	missing := missingParts(d, bank)
	// The questions of a class do not depend on its answers.
	talk.next = func(map[string]string) []question { return missing }
	if err := talk.run(); err != nil {
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
func missingParts(d *classfile.Draft, bank *problems.Bank) (missing []question) {
	work := len(d.Set)+len(d.Topics) > 0
	for _, one := range []struct {
		have bool
		question
	}{
		{d.Name != "", question{Part: partName, Ask: saidAskName, Check: classfile.CheckName}},
		{d.List != "", question{Part: partStudents, Ask: saidAskList, Check: func(s string) string { return d.CheckStudents(s) }}},
		{work, question{Part: partWork, Ask: saidAskWork, Check: func(s string) string { return classfile.CheckWork(s, bank) }}},
		// Whoever gives the work as flags is not asked for a date, which may be left out.
		{d.Due != "" || work, question{Part: partDue, Ask: saidAskDue, Check: classfile.CheckDue}},
	} {
		if !one.have {
			missing = append(missing, one.question)
		}
	}
	return missing
}
