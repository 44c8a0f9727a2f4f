package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/record"
)

// measured are the flags that hold what was measured, and by whom.
type measured struct {
	set, hanger, ring, read, scale []string
	students                       []string
	asJSON, plain                  bool
}

// any reports whether a run is given on the command line.
func (m *measured) any() bool {
	return len(m.set)+len(m.hanger)+len(m.ring)+len(m.read)+len(m.scale) > 0 || m.asJSON
}

func (m *measured) flags(c *cobra.Command) {
	f := c.Flags()
	f.StringArrayVar(&m.set, "set", nil, "the measured `value` of a given quantity, such as 'm=0.500 kg ± 1 %'; you can repeat this flag")
	f.StringArrayVar(&m.read, "read", nil, "the reading of a spring scale or protractor, a `value` such as 'T1=20.4 N div 0.2 N'; you can repeat this flag")
	f.StringArrayVar(&m.hanger, "hanger", nil, "the mass of a hanger, a `value` such as 'm=50 g ± 0.5 g' that is added to the mass m")
	f.StringArrayVar(&m.ring, "ring", nil, "the mass of the ring, a `value` such as '12 g div 1 g'")
	f.StringArrayVar(&m.scale, "scale", nil, "the zero reading or the calibration factor of the spring scales, given as a `value` such as 'zero=0.1 N div 0.1 N' or 'calibration=1.02 ± 0.01'")
	f.StringArrayVar(&m.students, "student", nil, "the name of a `student` in the group; if you give a name, the run is saved in the record")
}

func benchCommand(a *app) *cobra.Command {
	var m measured
	c := &cobra.Command{
		Use:   "bench [PROBLEM]",
		Short: "Compare measured values with the values that the equations predict",
		Long:  saidBench,
		Example: `  standstill bench canal-lantern
  standstill bench canal-lantern --student Ana --set 'm=0.500 kg ± 1 %' --set 'alpha=35; 34.5; 35.5 deg' --read 'T1=3.2 N ± 0.1 N'
  standstill bench canal-lantern --student Ana --student Ben --set 'm=0.500 kg ± 1 %' --set 'alpha=40 deg ± 0.5 deg' --read 'T1=3.1 N ± 0.1 N'`,
		Args: atMostOne,
		RunE: func(c *cobra.Command, args []string) error {
			// Before anything is asked for, which would be lost.
			if err := a.oneBackground(); err != nil {
				return err
			}
			// Without a value there is nothing to compute, so it is asked for.
			if !m.any() {
				return a.benchGuide(args, &m)
			}
			if len(args) == 0 {
				return exactly(1, "the id of a problem, or a problem file")(c, args)
			}
			r, err := a.run(args[0], &m)
			if err != nil {
				return err
			}
			return a.printResult(r, m.asJSON, m.plain)
		},
	}
	m.flags(c)
	c.Flags().BoolVar(&m.asJSON, "json", false, "print one JSON object")
	c.Flags().BoolVar(&m.plain, "plain", false, "use lines of text instead of screens and columns, and describe drawings in sentences")
	a.screenFlags(c.Flags())
	c.SuggestionsMinimumDistance = nearEnough
	c.AddCommand(benchSheetCommand(a), benchReportCommand(a), benchRunsCommand(a), benchShowCommand(a), benchCompareCommand(a), benchPlotCommand(a), benchSeriesCommand(a), benchExportCommand(a), benchImportCommand(a))
	return c
}

// atMostOne refuses a second word behind a command.
func atMostOne(c *cobra.Command, args []string) error {
	if len(args) > 1 {
		// For its sentence about the word that is one too many.
		return exactly(1, "")(c, args)
	}
	return nil
}

// surroundings are the bank and the class, if there is one; no record is opened.
func (a *app) surroundings() (o tutor.Options, err error) {
	o.Class, o.Bank, err = a.classOrBank(a.classFile)
	return o, err
}

// model finds a problem by its id, or reads it from a file; in a class, with its g.
func (a *app) model(name string, o tutor.Options) (p *problems.Problem, err error) {
	// In a class its g also counts for a problem in a file.
	if isFile(name) {
		p, err = a.problem(name)
	} else {
		p, err = o.Bank.Get(name)
	}
	if err != nil {
		return nil, err
	}
	return o.Class.WithGravity(p)
}

// form makes the form of a problem and fills it from the flags. What is wrong with the
// values is told.
func (a *app) form(problem string, m *measured, o tutor.Options) (*bench.Form, error) {
	p, err := a.model(problem, o)
	if err != nil {
		return nil, err
	}
	f, err := bench.NewForm(p)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", p.ID, err)
	}
	return f, a.refused(m.fill(f))
}

// fill puts the flags into the form and returns a sentence for every value that is
// refused.
func (m *measured) fill(f *bench.Form) (wrong []string) {
	for _, part := range []struct {
		kind  bench.Kind
		lines []string
	}{{bench.Measure, m.set}, {bench.Hanger, m.hanger}, {bench.Ring, m.ring}, {bench.Scale, m.scale}, {bench.Reading, m.read}} {
		for _, line := range part.lines {
			if why := f.Assign(part.kind, line); why != "" {
				wrong = append(wrong, why)
			}
		}
	}
	return wrong
}

// refused tells every sentence, and is an error where there is one.
func (a *app) refused(wrong []string) error {
	if len(wrong) == 0 {
		return nil
	}
	for _, why := range wrong {
		fmt.Fprintln(a.Err, why)
	}
	return errFound
}

// run computes a run from the command line, and saves it where students are named.
func (a *app) run(problem string, m *measured) (*bench.Result, error) {
	o, err := a.surroundings()
	if err != nil {
		return nil, err
	}
	f, err := a.form(problem, m, o)
	if err != nil {
		return nil, err
	}
	r, wrong := f.Result()
	if err := a.refused(wrong); err != nil {
		return nil, err
	}
	return r, a.saveRun(f, m.students, o)
}

func (a *app) printResult(r *bench.Result, asJSON, plain bool) error {
	if asJSON {
		out, err := r.JSON()
		if err == nil {
			_, err = a.Out.Write(out)
		}
		return err
	}
	blocks := r.Blocks()
	if !plain {
		// On a terminal the first lines may have left the screen.
		blocks = append(blocks, bench.Block{Title: "Warning", Lines: r.Warnings})
	}
	// A listener hears the warnings first and only once.
	return a.printBlocks(r.Form().Heading(), blocks, plain)
}

func (a *app) printBlocks(heading string, blocks []bench.Block, plain bool) error {
	lines := bench.Style{Plain: plain}.Set(blocks)
	if heading != "" {
		lines = append([]string{heading}, lines...)
	}
	_, err := fmt.Fprintln(a.Out, strings.Join(lines, "\n"))
	return err
}

// saveRun saves a run for the students who are named.
func (a *app) saveRun(f *bench.Form, names []string, o tutor.Options) error {
	if len(names) == 0 {
		return nil
	}
	return a.withRecord(o, func(t *tutor.Tutor) error {
		var students []record.Student
		for _, name := range names {
			s, ok, err := t.Enrol(name)
			if err != nil {
				return err
			}
			if !ok {
				return fmt.Errorf(saidNotAtTable, name)
			}
			students = append(students, s)
		}
		// A run of its own for every command: there is no run in hand to go on with.
		_, err := bench.SaveRun(t.Record, f, students, "")
		return err
	})
}

// withRecord opens the record for one thing to be done with it.
func (a *app) withRecord(o tutor.Options, do func(*tutor.Tutor) error) error {
	path, err := a.recordPath()
	if err != nil {
		return said(err)
	}
	if o.Record, err = record.Open(path, record.Options{}); err != nil {
		return said(err)
	}
	defer o.Record.Close()
	return said(do(tutor.New(o)))
}

// fileThere is the name of a file that was not to be written over.
type fileThere string

func (f fileThere) Error() string { return fmt.Sprintf(saidFileThere, string(f)) }

// saveAtBench writes a file whose name may be typed at the bench.
func saveAtBench(name, usual string, content []byte) (string, error) {
	o := benchOutput{name: name}
	where, err := o.save(usual, content)
	var there fileThere
	// At the bench a flag such as --force is no help; the sentence asks for another name.
	if errors.As(err, &there) {
		return "", fmt.Errorf(saidFileThereToo, string(there))
	}
	return where, err
}

// benchOutput is a page or a table that the bench writes, to a file of that name, or
// the usual one where there is no name.
type benchOutput struct {
	output
	name string
}

func (o *benchOutput) flags(c *cobra.Command) {
	c.Flags().StringVarP(&o.name, "out", "o", "", "the `file` to write, or - for standard output")
	o.output.flags(c)
}

// save writes a file and returns where it is. One that was not named must not be there
// yet, because somebody may have filled it in.
func (o *benchOutput) save(usual string, content []byte) (string, error) {
	o.Mark = bench.PageMark
	name := o.name
	if name == "" {
		name = usual
		// Lstat, because a link that leads nowhere is there too.
		if _, err := os.Lstat(name); err == nil {
			return "", fileThere(name)
		}
	}
	if err := o.write(name, content); err != nil {
		return "", err
	}
	// The whole path: whoever started the program from a menu does not know its folder.
	if where, err := filepath.Abs(name); err == nil {
		name = where
	}
	return name, nil
}

// writePaper writes a page, or prints it where the name is a dash, and says where it is.
func (a *app) writePaper(o *benchOutput, usual string, page []byte) error {
	if o.name == "-" {
		_, err := a.Out.Write(page)
		return err
	}
	where, err := o.save(usual, page)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(a.Out, saidWritten+"\n", where)
	return err
}
