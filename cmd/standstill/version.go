package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
)

const version = "0.1.0"

func versionCommand(a *app) *cobra.Command {
	return &cobra.Command{
		Use:     "version",
		Short:   "Print the version",
		Long:    "Prints the version, and those of the rules for marking and for drawing numbers.",
		Example: "  standstill version",
		Args:    exactly(0, ""),
		RunE: func(*cobra.Command, []string) error {
			_, err := fmt.Fprintf(a.Out, "standstill %s (marking rules %s, drawing rules %d)\n", version, checker.Version, problems.DrawRules)
			return err
		},
	}
}
