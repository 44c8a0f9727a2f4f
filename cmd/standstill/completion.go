package main

import (
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"
)

// completions write the scripts that teach a shell to complete commands, by the names of
// files that the shells look for.
func completions(root *cobra.Command) map[string]func(io.Writer) error {
	return map[string]func(io.Writer) error{
		"standstill.bash": func(w io.Writer) error { return root.GenBashCompletionV2(w, true) },
		"_standstill":     root.GenZshCompletion,
		"standstill.fish": func(w io.Writer) error { return root.GenFishCompletion(w, true) },
		"standstill.ps1":  root.GenPowerShellCompletionWithDesc,
	}
}

// completeProblems lets a shell complete the id of a problem where a command's usage has one.
// For anything else the shell offers files.
func (a *app) completeProblems(c *cobra.Command) {
	isProblem := func(word string) bool { return strings.Contains(word, "PROBLEM") }
	// Asked of the usage line, so that a new command is completed without a word here.
	if place := slices.IndexFunc(strings.Fields(c.Use)[1:], isProblem); place >= 0 {
		c.ValidArgsFunction = func(_ *cobra.Command, before []string, _ string) ([]string, cobra.ShellCompDirective) {
			// Behind the dots any number of problems may follow.
			if len(before) != place && !strings.Contains(c.Use, "PROBLEM…") {
				return nil, cobra.ShellCompDirectiveDefault
			}
			var ids []string
			for _, h := range a.openBank().List() {
				ids = append(ids, cobra.CompletionWithDesc(h.ID, h.Title))
			}
			// A problem may be a file, too.
			return ids, cobra.ShellCompDirectiveDefault
		}
	}
	for _, sub := range c.Commands() {
		a.completeProblems(sub)
	}
}
