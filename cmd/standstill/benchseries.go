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
		Short: "Make a table of runs with the same apparatus, and fit a straight line",
		Long: `This command prints a table of the runs. It also finds errors that are the same
in all runs, such as a spring scale that always reads too high. With --line 'T
against 1/(2 sin theta)', it fits a straight line and compares the slope and the
intercept with the values that the equations predict. With --residuals T1, it
plots the residuals of T1: each reading minus its prediction.`,
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
	c.Flags().StringVar(&line, "line", "", "fit a straight line to the points of a graph with these `axes`, as in 'T against 1/(2 sin theta)'; for a line through the origin, add 'through 0' at the end")
	c.Flags().StringVar(&residuals, "residuals", "", "plot the residuals of this `quantity`, such as T1")
	c.Flags().BoolVar(&plain, "plain", false, "use lines of text without columns, and describe plots in sentences")
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
		Use:   "export RUN…",
		Short: "Write runs with the same apparatus to a CSV table",
		Long: `This command writes one row for each run. A row contains the measured values and
the readings with their standard uncertainties, the predictions, the notes and
the conclusion. The first row of the table contains the letters and the units.`,
		Example: "  standstill bench export 1-2 -o runs.csv",
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
		Short: "Read runs from a CSV table",
		Long: `This command reads a CSV table and saves one run for each row. The first row of
the table contains the letters and the units, as in "m / kg,alpha / deg,T1 read
/ N". A column with the heading u(m) / kg contains the standard uncertainty of
m. A cell can also contain a value as you would type it at the bench, such as
35; 34.5 deg div 1 deg. The command ignores columns with predictions.`,
		Example: "  standstill bench import canal-lantern runs.csv --student Ana --student Ben",
		Args:    exactly(2, "a problem (its id or its file) and a table of runs"),
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
				if err := a.saveRun(f, students, o); err != nil {
					return err
				}
			}
			_, err = fmt.Fprintf(a.Out, saidImported+"\n", len(forms))
			return err
		},
	}
	c.Flags().StringArrayVar(&students, "student", nil, "the name of a `student` in the group that made the runs; repeat this flag for each name")
	return c
}
