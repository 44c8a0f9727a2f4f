package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor"
)

func solveCommand(a *app) *cobra.Command {
	var asJSON bool
	var own whose
	c := &cobra.Command{
		Use:   "solve PROBLEM",
		Short: "Solve a problem from the bank or from a file",
		Long: `This command prints the worked solution, stage by stage. With --json, it prints
only the values that the problem asks for.`,
		Example: "  standstill solve canal-lantern\n  standstill solve canal-lantern --json",
		Args:    exactly(1, "the id of a problem, or a problem file"),
		RunE: func(_ *cobra.Command, args []string) error {
			page, err := own.page(a, args[0])
			if err != nil {
				return err
			}
			if asJSON {
				return writeReference(a.Out, page)
			}
			return writeWorked(a.Out, page)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the values as JSON with full precision")
	own.flags(c)
	return c
}

// reference is what is asked for with its value, in the order of the problem.
type reference struct {
	Problem  string   `json:"problem"`
	Unknowns unknowns `json:"unknowns"`
}

type unknowns []unknown

type unknown struct {
	Name  string `json:"-"`
	Value any    `json:"value"`
	Unit  string `json:"unit"`
}

// MarshalJSON writes an object whose keys stand in the problem's order.
func (u unknowns) MarshalJSON() ([]byte, error) {
	var b strings.Builder
	for i, one := range u {
		value, err := json.Marshal(one)
		if err != nil {
			return nil, err
		}
		name, _ := json.Marshal(one.Name)
		if i > 0 {
			b.WriteByte(',')
		}
		fmt.Fprintf(&b, "%s:%s", name, value)
	}
	return []byte("{" + b.String() + "}"), nil
}

func writeReference(w io.Writer, page *tutor.Page) error {
	out := reference{Problem: page.Problem.ID, Unknowns: unknowns{}}
	for _, name := range page.Problem.System.Find {
		unit := page.Ref.Unit(name)
		one := unknown{Name: name, Unit: unit.Symbol}
		// A formula has no number: its value is null.
		if value, ok := page.Ref.Value(name); ok && !page.IsFormula(name) {
			one.Value = value / unit.Factor
		}
		out.Unknowns = append(out.Unknowns, one)
	}
	return json.NewEncoder(w).Encode(out)
}

func writeWorked(w io.Writer, page *tutor.Page) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n%s\n", page.Problem.Title, page.Statement())
	for _, step := range page.Worked() {
		fmt.Fprintf(&b, "\n%s\n", step.Title)
		for _, line := range step.Lines {
			fmt.Fprintf(&b, "  %s\n", line)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}
