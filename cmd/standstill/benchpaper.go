package main

import (
	"errors"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor/bench"
)

func benchSheetCommand(a *app) *cobra.Command {
	var out benchOutput
	c := &cobra.Command{
		Use:   "sheet PROBLEM",
		Short: "Make a sheet to print and fill in at the bench",
		Long: `This command writes one HTML file for printing. The file contains the safety
rules, a drawing of the apparatus, and tables to fill in.`,
		Example: "  standstill bench sheet canal-lantern\n  standstill bench sheet canal-lantern -o sheet.html",
		Args:    exactly(1, "the id of a problem, or a problem file"),
		RunE: func(_ *cobra.Command, args []string) error {
			o, err := a.surroundings()
			if err != nil {
				return err
			}
			f, err := a.form(args[0], &measured{}, o)
			if err != nil {
				return err
			}
			page, err := bench.Sheet(f)
			if err != nil {
				return err
			}
			return a.writePaper(&out, f.Problem().ID+"-sheet.html", page)
		},
	}
	out.flags(c)
	return c
}

func benchReportCommand(a *app) *cobra.Command {
	var m measured
	var out benchOutput
	var line string
	var runs []string
	c := &cobra.Command{
		Use:   "report [PROBLEM]",
		Short: "Make a page for the lab book",
		Long: `This command writes one HTML file about a saved run, or about values on the
command line. The file contains the safety rules, the measured values, the
uncertainty budget, a drawing, a plot, and the comparison of the readings with
the prediction. For a report on a series, repeat --run or give a range such as
1-5. Such a report gives the result of the last run, the table of the series,
and the group that made each run.`,
		Example: "  standstill bench report canal-lantern --set 'm=0.500 kg ± 1 %' --read 'T1=3.4 N ± 0.1 N' -o run.html\n  standstill bench report --run 1 -o run-1.html",
		Args:    atMostOne,
		RunE: func(_ *cobra.Command, args []string) error {
			switch {
			case len(runs) > 0 && len(args) == 0:
				return a.withComputed(runs, func(computed []bench.Computed) error { return a.report(computed, line, &out) })
			case len(runs) == 0 && len(args) == 1:
				return a.reportValues(args[0], &m, &out)
			}
			return misuse{errors.New(saidReportOfWhat)}
		},
	}
	m.flags(c)
	c.Flags().StringArrayVar(&runs, "run", nil, "the number of a saved `run`, or a range such as 1-5")
	c.Flags().StringVar(&line, "line", "", "fit a straight line to the points of a graph with these `axes`, as in 'T against 1/(2 sin theta)'")
	out.flags(c)
	return c
}

func (a *app) reportValues(problem string, m *measured, out *benchOutput) error {
	r, err := a.run(problem, m)
	if err != nil {
		return err
	}
	return a.report([]bench.Computed{{Number: 1, Result: r, About: bench.About{Students: m.students, Names: m.students}}}, "", out)
}

func (a *app) report(computed []bench.Computed, line string, out *benchOutput) error {
	page, err := bench.Report(computed, line)
	if err != nil {
		return err
	}
	return a.writePaper(out, computed[len(computed)-1].Form().Problem().ID+"-report.html", page)
}
