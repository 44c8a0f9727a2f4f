package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/picture"
)

func benchSeriesCommand(a *app) *cobra.Command {
	var line, residuals string
	var plain bool
	c := &cobra.Command{
		Use:   "series RUN…",
		Short: "Put runs of one apparatus in a table and fit a straight line",
		Long: `Prints a table of the runs, and errors that are the same in all of them, such as a scale
that always reads too high. With --line 'T against 1/(2 sin theta)', it fits a straight line and compares
its slope and intercept, with their uncertainties, with what the equations predict. With
--residuals it plots readings minus predictions for one letter.`,
		Example: "  standstill bench series 1-4\n  standstill bench series 1 2 4 --residuals T1",
		Args:    severalRuns,
		RunE: func(_ *cobra.Command, args []string) error {
			return a.withComputed(args, func(computed []bench.Computed) error {
				s, why := bench.NewSeries(computed)
				if why != "" {
					return errors.New(why)
				}
				answer, why := s.Answer(line, residuals)
				if why != "" {
					return errors.New(why)
				}
				if err := a.printBlocks("", answer.Blocks, plain); err != nil || answer.Scene == nil {
					return err
				}
				return a.printScene(*answer.Scene, nil, plain)
			})
		},
	}
	c.Flags().StringVar(&line, "line", "", "two `axes`, as in 'T against 1/(2 sin theta)'; for a line through the origin, add 'through 0' at the end")
	c.Flags().StringVar(&residuals, "residuals", "", "plot the residuals of this `letter`")
	c.Flags().BoolVar(&plain, "plain", false, "lines of text without columns, sentences instead of a drawing")
	return c
}

// printScene draws a scene, or says what it shows, with notes below.
func (a *app) printScene(scene picture.Scene, notes []string, plain bool) error {
	lines := picture.Braille(scene, plotCols, plotRows).Lines()
	if plain {
		// A drawing in dots says nothing to a screen reader.
		lines = picture.Sentences(scene)
	}
	_, err := fmt.Fprintln(a.Out, strings.Join(append(lines, notes...), "\n"))
	return err
}

func benchExportCommand(a *app) *cobra.Command {
	var out benchOutput
	c := &cobra.Command{
		Use:     "export RUN…",
		Short:   "Write runs of one apparatus as a table (CSV)",
		Long:    "Writes one row for each run: measured values and readings with their standard uncertainties, predictions, notes and conclusion. The first row has letters and units.",
		Example: "  standstill bench export 1-2 --out runs.csv",
		Args:    severalRuns,
		RunE: func(_ *cobra.Command, args []string) error {
			return a.withComputed(args, func(computed []bench.Computed) error {
				table, err := bench.Export(computed)
				if err != nil {
					return err
				}
				return a.writePaper(&out, computed[0].Form().Problem().ID+"-runs.csv", table)
			})
		},
	}
	out.flags(c)
	return c
}

func benchImportCommand(a *app) *cobra.Command {
	var students []string
	c := &cobra.Command{
		Use:   "import PROBLEM FILE",
		Short: "Read runs from a table (CSV)",
		Long: `Reads a table whose first row has letters and units, as in "m / kg,alpha / deg,T1 read / N",
and saves a run for each row below it. u(m) / kg is the standard uncertainty of m. A cell
can also contain a value as you would type it, such as 35; 34.5 deg div 1 deg. Columns with
predictions are ignored.`,
		Example: "  standstill bench import canal-lantern runs.csv --student Ana --student Ben",
		Args:    exactly(2, "the id of a problem, or a file, and a table of runs"),
		RunE: func(_ *cobra.Command, args []string) error {
			o, err := a.surroundings()
			if err != nil {
				return err
			}
			// Before the table is read: a run without people could not be saved.
			if len(students) == 0 {
				return misuse{errors.New(saidImportForWhom)}
			}
			p, err := a.model(args[0], o)
			if err != nil {
				return err
			}
			file, err := os.Open(args[1])
			if err != nil {
				return said(err)
			}
			defer file.Close()
			forms, wrong, err := bench.Import(p, file)
			if err != nil {
				return err
			}
			// All or nothing: half a table, imported twice, would be in the record twice.
			if err := a.refused(wrong); err != nil {
				return err
			}
			for _, f := range forms {
				if err := a.keepRun(f, students, o); err != nil {
					return err
				}
			}
			_, err = fmt.Fprintf(a.Out, saidImported+"\n", len(forms))
			return err
		},
	}
	c.Flags().StringArrayVar(&students, "student", nil, "a `student` of the group that made the runs")
	return c
}
