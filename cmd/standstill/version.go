package main

import (
	"fmt"
	"runtime"

	"github.com/spf13/cobra"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
)

// version is that of the program. It is written here and nowhere else; changes.txt begins with
// what is new in it.
const version = "0.9.0"

// versions are what a report of a fault needs to say.
type versions struct {
	Version   string `json:"version"`
	Marking   string `json:"marking"` // the rules for marking
	Drawing   int    `json:"drawing"` // the rules for drawing numbers
	Go        string `json:"go"`
	System    string `json:"system"`
	Processor string `json:"processor"`
}

func versionCommand(a *app) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "version",
		Short: "Print the version",
		Long: `This command prints the version of the program, and the versions of the rules
for marking answers and for choosing the students' numbers. To see what is new,
type standstill help changes.`,
		Example: "  standstill version\n  standstill version --json",
		Args:    exactly(0, ""),
		RunE: func(*cobra.Command, []string) error {
			if asJSON {
				return writeJSON(a.Out, versions{version, checker.Version, problems.DrawRules, runtime.Version(), runtime.GOOS, runtime.GOARCH}, "")
			}
			_, err := fmt.Fprintf(a.Out, "standstill %s (version %s of the marking rules, version %d of the rules for students' numbers)\n", version, checker.Version, problems.DrawRules)
			return err
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print one JSON object")
	return c
}
