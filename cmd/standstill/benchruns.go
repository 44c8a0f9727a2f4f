package main

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench"
)

func benchRunsCommand(a *app) *cobra.Command {
	return &cobra.Command{
		Use:   "runs [PROBLEM]",
		Short: "List the saved runs",
		Long: `This command lists all saved runs, or only the runs of one problem. It prints
the number of each run, the time, the names of the students in the group, and
the values that the group typed.`,
		Example: "  standstill bench runs",
		Args:    atMostOne,
		RunE: func(_ *cobra.Command, args []string) error {
			return a.withRecord(tutor.Options{}, func(t *tutor.Tutor) error {
				// At most one word, and "" is every problem.
				runs, err := bench.Runs(t.Record, strings.Join(args, ""))
				if err != nil {
					return err
				}
				names, err := bench.Names(t.Record)
				if err != nil {
					return err
				}
				if len(runs) == 0 {
					// An empty list would look as if nothing had been done.
					fmt.Fprintln(a.Out, saidNoRuns)
				}
				for _, run := range runs {
					fmt.Fprintln(a.Out, run.Said(names, time.Local))
				}
				return nil
			})
		},
	}
}

func benchShowCommand(a *app) *cobra.Command {
	var asJSON, plain bool
	c := &cobra.Command{
		Use:   "show RUN",
		Short: "Print the result of a saved run",
		Long: `This command calculates a saved run again from the values that the group typed,
and prints the result.`,
		Example: "  standstill bench show 1",
		Args:    exactly(1, "the number of a run"),
		RunE: func(_ *cobra.Command, args []string) error {
			return a.withComputed(args, func(computed []bench.Computed) error {
				return a.printResult(computed[0].Result, asJSON, plain)
			})
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print one JSON object")
	c.Flags().BoolVar(&plain, "plain", false, "use lines of text without columns")
	return c
}

func benchCompareCommand(a *app) *cobra.Command {
	var plain bool
	c := &cobra.Command{
		Use:     "compare RUN RUN…",
		Short:   "Compare runs with the same apparatus",
		Example: "  standstill bench compare 1 2",
		Args:    severalRuns,
		RunE: func(_ *cobra.Command, args []string) error {
			return a.withComputed(args, func(computed []bench.Computed) error {
				blocks, why := bench.Compare(computed)
				if why != "" {
					return errors.New(why)
				}
				return a.printBlocks("", blocks, plain)
			})
		},
	}
	c.Flags().BoolVar(&plain, "plain", false, "use lines of text without columns")
	return c
}

func benchPlotCommand(a *app) *cobra.Command {
	var by string
	var plain bool
	c := &cobra.Command{
		Use:   "plot RUN…",
		Short: "Plot predictions and readings against an angle or an expression",
		Long: `This command draws the curve that the equations predict for the last run that
you name. It also shows the readings of all the runs as points with error bars.
With --plain, it describes the plot in words.`,
		Example: "  standstill bench plot 1 2\n  standstill bench plot 1-2 --by '1/sin(alpha)'",
		Args:    severalRuns,
		RunE: func(_ *cobra.Command, args []string) error {
			return a.withComputed(args, func(computed []bench.Computed) error {
				scene, notes, why := bench.Plot(computed, by)
				if why != "" {
					return errors.New(why)
				}
				return a.printScene(scene, notes, plain)
			})
		},
	}
	c.Flags().StringVar(&by, "by", "", "the `letter` or expression for the horizontal axis, as in 1/(2 sin theta)")
	c.Flags().BoolVar(&plain, "plain", false, "describe the plot in sentences")
	return c
}

// Room for a plot on a terminal of 80 by 24.
const (
	plotCols = 78
	plotRows = 20
)

// severalRuns asks for at least one run.
func severalRuns(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return exactly(1, "the number of a run")(c, args)
	}
	return nil
}

// withComputed opens the record and computes the runs of these numbers.
func (a *app) withComputed(numbers []string, do func([]bench.Computed) error) error {
	o, err := a.surroundings()
	if err != nil {
		return err
	}
	return a.withRecord(o, func(t *tutor.Tutor) error {
		var computed []bench.Computed
		// “1-3” may be one word or, with blanks, several.
		for _, number := range bench.Numbers(strings.Join(numbers, " ")) {
			one, wrong, err := bench.Again(t, number)
			if err != nil {
				return err
			}
			if err := a.refused(wrong); err != nil {
				return err
			}
			computed = append(computed, one)
		}
		return do(computed)
	})
}
