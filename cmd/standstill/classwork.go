package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"sync"
	"syscall"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor/class"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/door"
)

func classCollectCommand(t *teacher) *cobra.Command {
	var o class.CollectOptions
	c := &cobra.Command{
		Use:     "collect FILE|FOLDER…",
		Short:   "Collect hand-ins and records from students",
		Long:    saidCollect,
		Example: "  standstill class collect . --class physics-10b.yaml",
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return exactly(1, "a file or a folder")(c, args)
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error {
			return t.with(func(m *class.Markbook) error {
				sum, err := m.Collect(c.Context(), args, o)
				if err != nil {
					return plainly(err)
				}
				if err := sum.WriteText(t.Out, m.Class); err != nil {
					return err
				}
				// The other files are collected all the same; the exit code is for a script.
				if n := sum.Failed(); n > 0 {
					return fmt.Errorf(saidNotTaken, summary.Times(n, "file"))
				}
				return nil
			})
		},
	}
	c.Flags().BoolVar(&o.Mine, "mine", false, "also collect the accepted lines and the problem files; use this flag only for files that come from the teacher")
	c.Flags().StringVar(&o.As, "as", "", "count the files as the work of this `student`, whatever name the files contain")
	c.Flags().StringVar(&o.From, "from", "", "if the file contains the work of several students, collect only the work under this `name`; use this flag together with --as")
	c.Flags().BoolVar(&o.Again, "again", false, "also collect the work of students who were deleted")
	return c
}

// with opens the class and its record for one piece of work.
func (t *teacher) with(work func(*class.Markbook) error) error {
	m, done, err := t.open()
	if err != nil {
		return err
	}
	defer done()
	return said(work(m))
}

// plainly names the file of a system error without the call.
func plainly(err error) error {
	var path *os.PathError
	if errors.As(err, &path) {
		return fmt.Errorf(saidNoPath, path.Path, path.Err)
	}
	return err
}

// exports are the forms in which a report leaves.
type exports struct {
	layout        summary.Layout
	json, csv     bool
	mark          bool
	html, xapi    string
	roster, place string
	delta         bool
	out           output
}

func (e *exports) flags(c *cobra.Command) {
	f := c.Flags()
	f.BoolVar(&e.layout.Plain, "plain", false, "use lines of text without columns")
	f.BoolVar(&e.json, "json", false, "print one JSON object")
	f.BoolVar(&e.csv, "csv", false, "print CSV, with one row for each student and problem")
	f.BoolVar(&e.mark, "bom", false, "start the CSV with a byte order mark, which some spreadsheet programs need")
	f.StringVar(&e.html, "html", "", "write a page to this HTML `file`, for reading and printing")
	f.StringVar(&e.xapi, "xapi", "", "write xAPI statements to this `file`, one per line")
	f.StringVar(&e.place, "home", class.HomePage, "for xAPI: the `address` of the system that gave the students their ids")
	f.StringVar(&e.roster, "oneroster", "", "write OneRoster results to this `folder`")
	f.BoolVar(&e.delta, "delta", false, "write OneRoster delta files, which update the data in the school system instead of replacing them")
	e.out.flags(c)
}

func classReportCommand(t *teacher) *cobra.Command {
	var e exports
	c := &cobra.Command{
		Use:     "report",
		Short:   "Report the progress of the class",
		Long:    saidClassReport,
		Example: "  standstill class report --class physics-10b.yaml\n  standstill class report --class physics-10b.yaml --html report.html",
		Args:    exactly(0, ""),
		RunE: func(c *cobra.Command, _ []string) error {
			return t.with(func(m *class.Markbook) error { return t.report(c, m, &e) })
		},
	}
	e.flags(c)
	return c
}

func (t *teacher) report(c *cobra.Command, m *class.Markbook, e *exports) error {
	if e.xapi != "" {
		students := 0
		return t.export(e, e.xapi, class.StatementMark, func() string { return fmt.Sprintf(saidXAPILeaves, summary.Times(students, "student")) }, func(w io.Writer) (err error) {
			students, err = m.WriteStatements(c.Context(), w, strings.TrimRight(e.place, "/"))
			return err
		})
	}
	r, err := m.Report(c.Context())
	switch {
	case err != nil:
		return err
	case e.html != "":
		return t.export(e, e.html, summary.ReportMark, func() string { return fmt.Sprintf(saidLeaves, summary.Times(len(r.Students), "student")) }, func(w io.Writer) error { return r.WriteHTML(w, m.Bank) })
	case e.roster != "":
		return t.exportRoster(r, e)
	case e.json:
		return r.WriteJSON(t.Out)
	case e.csv:
		return r.WriteCSV(t.Out, e.mark)
	}
	return r.WriteText(t.Out, e.layout)
}

// export writes one file whole, and then says what leaves with it. Whether it may be
// written is looked at before the work.
func (t *teacher) export(e *exports, path, mark string, leaves func() string, write func(io.Writer) error) error {
	out := output{Mark: mark, Force: e.out.Force}
	// A class of a thousand takes a while to mark.
	if err := out.allowed(path); err != nil {
		return err
	}
	// Into memory first, so that an error leaves the old file as it was.
	var b bytes.Buffer
	if err := write(&b); err != nil {
		return err
	}
	if err := out.write(path, b.Bytes()); err != nil {
		return err
	}
	fmt.Fprintf(t.Out, saidExported+"\n", path, leaves())
	return nil
}

// rosterManifest is the file that names all others of a OneRoster folder, and so
// says who wrote them.
const rosterManifest = "manifest.csv"

func (t *teacher) exportRoster(r *summary.Report, e *exports) error {
	// OneRoster names students by the ids of the school system, which a typed list does not have.
	if r.Roster.Version == "" {
		return errors.New(saidNoRoster)
	}
	files, refused := r.OneRoster(e.delta)
	out := output{Mark: summary.RosterMark, Force: e.out.Force}
	// Only the manifest can tell whose the folder is: the others are plain tables.
	if err := out.allowed(filepath.Join(e.roster, rosterManifest)); err != nil {
		return err
	}
	if err := os.MkdirAll(e.roster, 0o777); err != nil {
		return fmt.Errorf(saidNotWritten, e.roster, plainCause(err))
	}
	if _, err := os.Stat(filepath.Join(e.roster, rosterManifest)); err == nil {
		out.Force = true // the folder is ours, whatever its other files begin with
	}
	for name, content := range files {
		if err := out.write(filepath.Join(e.roster, name), content); err != nil {
			return err
		}
	}
	fmt.Fprintf(t.Out, saidExported+"\n", e.roster, fmt.Sprintf(saidRosterLeaves, summary.Times(len(r.Students)-len(refused), "student")))
	if len(refused) > 0 {
		return fmt.Errorf(saidRosterRefused, strings.Join(refused, ", "))
	}
	return nil
}

func classShowCommand(t *teacher) *cobra.Command {
	return &cobra.Command{
		Use:   "show STUDENT PROBLEM",
		Short: "Show what one student typed in a problem",
		Long: `This command prints every line that the student checked in the problem, with the
tutor's message and the hints. It also shows which lines the student disputed.
Each line starts with an id. To accept a line, type its id after standstill
class accept.`,
		Example: "  standstill class show Nele canal-lantern --class physics-10b.yaml",
		Args:    exactly(2, "a student and a problem"),
		RunE: func(_ *cobra.Command, args []string) error {
			return t.with(func(m *class.Markbook) error {
				s, ok := m.Class.Student(args[0])
				if !ok {
					return fmt.Errorf(saidNotInClass, args[0])
				}
				return m.Show(t.Out, s, args[1])
			})
		},
	}
}

// exampleAccept names an entry that every class has another of.
const exampleAccept = "standstill class accept 1f3c9a2b --class physics-10b.yaml"

func classAcceptCommand(t *teacher) *cobra.Command {
	var o class.Accepting
	c := &cobra.Command{
		Use:   "accept ENTRY",
		Short: "Count a line as right although the tutor marked it wrong",
		Long: `This command counts a line as right although the tutor marked it wrong. It does
not matter whether the student disputed the line. ENTRY is the id at the start
of the line in the output of class show. The command does not change the
student's entry. Instead, it adds a separate entry by the teacher. With --undo,
it cancels the teacher's entry.`,
		Example: "  " + exampleAccept + "\n  " + exampleAccept + " --undo",
		Args:    exactly(1, "the id at the start of the line in the output of class show"),
		RunE: func(_ *cobra.Command, args []string) error {
			return t.with(func(m *class.Markbook) error {
				o.Entry = args[0]
				// What is accepted is printed, so that a slip in the code of the entry is seen.
				e, line, err := m.Accept(o)
				if err != nil {
					return err
				}
				words := saidAcceptedLine
				if o.Undo {
					words = saidTakenBack
				}
				_, err = fmt.Fprintf(t.Out, words+"\n", m.Class.Called(e.Student), e.Problem, class.AsTyped(line.AsTyped))
				return err
			})
		},
	}
	c.Flags().BoolVar(&o.Undo, "undo", false, "no longer count the line as right")
	c.Flags().StringVar(&o.Student, "student", "", "the `student` who typed the line, if several students have this entry")
	c.Flags().StringVar(&o.Text, "text", "", "the `text` that counts, if the entry arrived in different versions")
	return c
}

func classWatchCommand(t *teacher) *cobra.Command {
	var once bool
	c := &cobra.Command{
		Use:     "watch FOLDER…",
		Short:   "Show what the students in a lab are doing",
		Long:    saidWatch,
		Example: "  standstill class watch . --once --class physics-10b.yaml",
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return exactly(1, "a folder")(c, args)
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error {
			of, err := t.needClass()
			if err != nil {
				return err
			}
			w := &class.Watch{Class: of, Bank: of.Bank, Paths: args}
			defer w.Close()
			if once {
				view, err := w.View(c.Context())
				if err != nil {
					return plainly(err)
				}
				_, err = io.WriteString(t.Out, view)
				return err
			}
			return plainly(t.follow(c, w))
		},
	}
	c.Flags().BoolVar(&once, "once", false, "print the view once and stop")
	return c
}

// progress tells on the error stream how far a long piece of work is; nil for a
// class that is done at once.
func (t *teacher) progress() func(done, of int) {
	var mu sync.Mutex
	told := 0
	return func(done, of int) {
		mu.Lock()
		defer mu.Unlock()
		// Every five per cent, so that a log does not fill.
		if step := 100 * done / max(of, 1); of >= longClass && step/5 > told {
			told = step / 5
			fmt.Fprintf(t.Err, saidProgress+"\n", step, done, of)
		}
	}
}

// longClass is from how many on progress is told.
const longClass = 200

// follow shows the view until Ctrl-C. A terminal is cleared for each; elsewhere one
// stands below the other.
func (t *teacher) follow(c *cobra.Command, w *class.Watch) error {
	ctx, stop := signal.NotifyContext(c.Context(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	clear := func() {}
	// Where the view goes to a file, each stays.
	if t.fullTerminal() {
		clear = func() { fmt.Fprint(door.Behind(t.Out).(io.Writer), "\x1b[H\x1b[2J") }
	}
	return w.Run(ctx, t.Out, clear)
}
