package main

import (
	"fmt"
	"io"
	"maps"
	"math"
	"os"
	"runtime"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"golang.org/x/sync/errgroup"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/problems"
	"example.org/standstill/problems/draw"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
)

func bankCommand(a *app) *cobra.Command {
	c := &cobra.Command{
		Use:   "bank",
		Short: "List, check, show and create problems",
		Long: `The bank contains all problems that students can practise: the built-in
problems, and the problems in the folders that you add with --bank.`,
		Example: "  standstill bank list\n  standstill bank show canal-lantern",
		Args:    noSuchCommand,
		RunE:    func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	c.SuggestionsMinimumDistance = nearEnough
	c.AddCommand(bankListCommand(a), bankCheckCommand(a), bankShowCommand(a), bankNewCommand(a))
	return c
}

func bankListCommand(a *app) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:     "list",
		Short:   "List all problems by topic and level",
		Example: "  standstill bank list\n  standstill bank list --json",
		Args:    exactly(0, ""),
		RunE: func(*cobra.Command, []string) error {
			bank := a.openBank()
			if asJSON {
				return writeHeadings(a.Out, bank.List())
			}
			return listHeadings(a.Out, bank)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print a JSON list")
	return c
}

func writeHeadings(w io.Writer, list []problems.Heading) error {
	type heading struct {
		ID    string `json:"id"`
		Title string `json:"title"`
		Topic string `json:"topic"`
		Level int    `json:"level"`
	}
	out := make([]heading, len(list))
	for i, h := range list {
		out[i] = heading(h)
	}
	return writeJSON(w, out, "  ")
}

func listHeadings(w io.Writer, bank *problems.Bank) error {
	list := bank.List()
	wide := 0
	for _, h := range list {
		wide = max(wide, len(h.ID))
	}
	var b strings.Builder
	topic := ""
	for _, h := range list {
		if h.Topic != topic {
			topic = h.Topic
			fmt.Fprintf(&b, "%s\n", topic)
		}
		note := ""
		if bank.Replaces(h.ID) {
			note = saidReplaces
		}
		fmt.Fprintf(&b, "  %-*s  %-6s  %s%s\n", wide, h.ID, problems.LevelWord(h.Level), h.Title, note)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func bankCheckCommand(a *app) *cobra.Command {
	draws := usualDraws
	c := &cobra.Command{
		Use:   "check FILE|FOLDER…",
		Short: "Check problem files and count the possible number sets",
		Long: `This command reads every file and solves its problem. If a file has an error,
the command says what is wrong and gives the line and the column. If a file is
correct, the command prints a description of the drawing, how many number sets
are possible, and the chance that two of 30 students get the same numbers.`,
		Example: "  standstill bank check my-problems\n  standstill bank check lantern.yaml",
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return misuse{fmt.Errorf(saidMissing, c.CommandPath(), "a file or a folder", c.CommandPath())}
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if draws < 1 {
				return misuse{fmt.Errorf(saidFlagValue, "--draws", fmt.Sprint(draws))}
			}
			wrong, builtIn := false, problems.Embedded()
			for _, name := range args {
				list, found := readAny(name)
				a.tell(found)
				wrong = wrong || len(found) > 0
				for i, line := range linesOf(list, draws) {
					fmt.Fprintln(a.Out, line)
					tellWarnings(a.Out, list[i])
					// The same text under the same id is a copy of the
					// built-in file, which nobody need be told of.
					if other, err := builtIn.Get(list[i].ID); err == nil && other.Hash != list[i].Hash {
						fmt.Fprintf(a.Out, saidSameID+"\n", list[i].ID, other.Title)
					}
					// An author sees in words what the drawing will show, and finds a rope on the wrong side.
					if page, err := tutor.NewPage(list[i]); err == nil {
						for _, sentence := range sceneOf(page.Ref, list[i]) {
							fmt.Fprintf(a.Out, "  scene: %s\n", sentence)
						}
					}
				}
			}
			if wrong {
				return errFound
			}
			return nil
		},
	}
	c.Flags().IntVar(&draws, "draws", usualDraws, "the `number` of random sets to try for each problem")
	return c
}

// tellWarnings prints where a problem may have a slip, line by line.
func tellWarnings(w io.Writer, p *problems.Problem) {
	for _, f := range p.Warnings {
		fmt.Fprintln(w, f)
		if excerpt := f.Excerpt(); excerpt != "" {
			fmt.Fprintln(w, excerpt)
		}
	}
}

// linesOf looks at several problems at once, and keeps their order.
func linesOf(list []*problems.Problem, draws int) []string {
	lines := make([]string, len(list))
	var workers errgroup.Group
	// Each problem is solved hundreds of times, and no two share anything.
	workers.SetLimit(runtime.GOMAXPROCS(0))
	for i, p := range list {
		workers.Go(func() error {
			// To its own place, so that the list stays in order whichever is done first.
			lines[i] = drawsOf(p, draws)
			return nil
		})
	}
	_ = workers.Wait() // no worker returns an error
	return lines
}

// readAny reads a file, or every file of a folder.
func readAny(name string) ([]*problems.Problem, problems.Findings) {
	if info, err := os.Stat(name); err != nil || !info.IsDir() {
		p, found := problems.ReadFile(name)
		// A file may be read in spite of findings; only one that makes no problem is left out.
		if p == nil {
			return nil, found
		}
		return []*problems.Problem{p}, found
	}
	bank, found := problems.OpenFolder(name)
	var list []*problems.Problem
	for _, h := range bank.List() {
		if p, err := bank.Get(h.ID); err == nil {
			list = append(list, p)
		}
	}
	return list, found
}

// fewestSets is the number of usable number sets below which an author is warned.
const fewestSets = 100

// usualDraws is how many sets of numbers are tried for each problem: enough to see
// whether two of thirty may share one.
const usualDraws = 300

// drawsOf says how a problem varies, in one line.
func drawsOf(p *problems.Problem, most int) string {
	// The sets below would be one, tried hundreds of times.
	if len(p.Vary) == 0 {
		return p.ID + ": OK; every student gets the same numbers"
	}
	d := p.Draws(most)
	line := fmt.Sprintf("%s: OK; about %.0f of %.0f number sets can be used; the chance that two of 30 students get the same numbers is %s",
		p.ID, d.Total*float64(d.Usable)/float64(max(d.Tried, 1)), d.Total, percent(d.Shared))
	var unfit, confused []string
	// A map has no order, and two checks of one file must print the same.
	for _, reason := range slices.Sorted(maps.Keys(d.Refused)) {
		share := percent(float64(d.Refused[reason]) / float64(d.Tried))
		if said := saidUnfit(reason); said != "" {
			unfit = append(unfit, fmt.Sprintf("%s (%s)", said, share))
		} else {
			confused = append(confused, fmt.Sprintf("%s (%s)", checker.Code(reason).Meaning(), share))
		}
	}
	if unfit != nil {
		line += "; rejected: " + strings.Join(unfit, ", ")
	}
	if confused != nil {
		line += "; rejected because a mistake gives almost the right number: " + strings.Join(confused, ", ")
	}
	if d.Near != nil {
		var near []string
		for _, code := range d.Near {
			near = append(near, checker.Code(code).Meaning())
		}
		line += "; mistakes that always give almost the right number: " + strings.Join(near, ", ")
	}
	if sets := d.Total * float64(d.Usable) / float64(max(d.Tried, 1)); sets < fewestSets {
		line += fmt.Sprintf("; warning: there are fewer than %d number sets, so some students may get the same numbers", fewestSets)
	}
	return line
}

// saidUnfit says why nobody gets a number set. It is empty for the other reasons, which
// are the codes of mistakes that would give nearly the right number.
func saidUnfit(reason string) string {
	switch reason {
	case problems.Unphysical:
		return "a force or an angle is impossible"
	case problems.TooSpread:
		return "the forces differ too much in size"
	case problems.NoSolution:
		return reason
	}
	return ""
}

func percent(share float64) string {
	switch {
	// Rounded, it would read as if it could not happen.
	case share > 0 && share < 0.001:
		return "under 0.1 %"
	case share < 0.1:
		return fmt.Sprintf("%.1f %%", 100*share)
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

func bankShowCommand(a *app) *cobra.Command {
	var own whose
	var noSolution, file bool
	c := &cobra.Command{
		Use:   "show PROBLEM",
		Short: "Show a problem with its drawing and its solution",
		Long: `This command prints the text of a problem with its numbers, the drawing, a
description of the drawing, the worked solution and the results of common
mistakes. To use the numbers of one student, add --student and either --class or
--numbers.`,
		Example: "  standstill bank show canal-lantern\n  standstill bank show canal-lantern --numbers harbour-2 --student nele",
		Args:    exactly(1, "the id of a problem, or a problem file"),
		RunE: func(_ *cobra.Command, args []string) error {
			if file {
				return a.showFile(args[0])
			}
			page, err := own.page(a, args[0])
			if err != nil {
				return err
			}
			if noSolution {
				_, err := fmt.Fprintf(a.Out, "%s\n\n%s\n", page.Problem.Title, page.Statement())
				return err
			}
			return show(a.Out, page)
		},
	}
	own.flags(c)
	c.Flags().BoolVar(&noSolution, "no-solution", false, "print only the text of the problem, with its numbers")
	c.Flags().BoolVar(&file, "file", false, "print the problem file, so that you can start your own problem from a copy")
	return c
}

// showFile prints the file of a problem as it was written.
func (a *app) showFile(name string) error {
	p, err := a.problem(name)
	if err != nil {
		return err
	}
	_, err = a.Out.Write(p.Raw)
	return err
}

func show(w io.Writer, page *tutor.Page) error {
	p := page.Problem
	var b strings.Builder
	fmt.Fprintf(&b, "%s  %s, %s\n", p.ID, p.Topic, problems.LevelWord(p.Level))
	if p.Notes != "" {
		fmt.Fprintf(&b, "Notes: %s\n", p.Notes)
	}
	if p.Source != "" {
		fmt.Fprintf(&b, "Source: %s\n", p.Source)
	}
	if p.Copy != "" {
		fmt.Fprintf(&b, "Numbers: %s\n", p.Copy)
	}
	for _, sentence := range sceneOf(page.Ref, p) {
		fmt.Fprintf(&b, "Scene: %s\n", sentence)
	}
	b.WriteString("\n")
	for _, line := range picture.Braille(picture.OfProblem(page.Ref, picture.View{Solved: true}), 60, 18).Lines() {
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	// First what is about the problem, in one piece; the solution is written by writeWorked.
	if _, err := io.WriteString(w, b.String()); err != nil {
		return err
	}
	if err := writeWorked(w, page); err != nil {
		return err
	}
	return writePaths(w, page)
}

// sceneOf says in words what the drawing of a problem shows, so that its author can compare it
// with the text.
func sceneOf(ref *checker.Reference, p *problems.Problem) []string {
	setup := picture.NewSetup(ref, p.Figure)
	if setup == nil {
		return nil
	}
	return picture.Sentences(picture.Scene{Setup: setup})
}

// writePaths prints what the listed mistakes lead to.
func writePaths(w io.Writer, page *tutor.Page) error {
	var b strings.Builder
	b.WriteString("\nResults of common mistakes\n")
	var codes []draw.Code
	values := map[draw.Code][]string{}
	for _, path := range page.Problem.WrongPaths() {
		right, _ := page.Ref.Value(path.Unknown)
		unit := page.Ref.Unit(path.Unknown)
		// Nobody takes an angle below 0° or beyond a full turn for a result.
		turned := unit.Dim == quantity.Angle && (path.Value <= 0 || path.Value >= 2*math.Pi)
		nothing := math.Abs(path.Value) <= 1e-9*math.Abs(right)
		if math.IsNaN(path.Value) || turned || nothing {
			continue // sums without a solution, and what nobody would hand in
		}
		value := expr.Set(path.Unknown) + " = " + strings.Replace(unit.In(path.Value, 3), "-", "−", 1)
		// Several ways to make one mistake often end in one number, and some end in the right one.
		if slices.Contains(values[path.Code], value) || math.Abs(path.Value-right) <= 1e-6*math.Abs(right) {
			continue
		}
		if values[path.Code] == nil {
			codes = append(codes, path.Code)
		}
		values[path.Code] = append(values[path.Code], value)
	}
	for _, code := range codes {
		for _, value := range values[code] {
			fmt.Fprintf(&b, "  %s: %s\n", checker.Code(code).Meaning(), value)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}
