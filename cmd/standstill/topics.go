package main

import (
	_ "embed"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/problems"
)

//go:embed changes.txt
var saidChanges string

//go:embed promises.txt
var saidPromises string

// topic is a help page that is not about one command.
type topic struct {
	name, short string
	page        string
}

func topics() []topic {
	return []topic{
		{"problem-file", "the keys of a problem file, with examples", problems.FileHelp()},
		{"promises", "what stays the same in later versions", saidPromises},
		{"changes", "what is new in each version", saidChanges},
	}
}

// helpCommand prints a help page, or the help of a command as --help does.
func helpCommand(root *cobra.Command) *cobra.Command {
	return &cobra.Command{
		Use:     "help [COMMAND|PAGE]",
		Short:   "Explain a command, or show a help page",
		Long:    "This command explains another command, or shows one of these help pages:\n\n" + listTopics(),
		Example: "  standstill help mark\n  standstill help problem-file",
		RunE: func(_ *cobra.Command, args []string) error {
			for _, t := range topics() {
				// Pages before commands: no command has such a name.
				if len(args) == 1 && args[0] == t.name {
					_, err := io.WriteString(root.OutOrStdout(), t.page)
					return err
				}
			}
			c, rest, err := root.Find(args)
			if err != nil || len(rest) > 0 {
				return misuse{fmt.Errorf(saidNoCommand, strings.Join(args, " "))}
			}
			return c.Help()
		},
	}
}

func listTopics() string {
	var b strings.Builder
	for _, t := range topics() {
		fmt.Fprintf(&b, "  %-14s%s\n", t.name, t.short)
	}
	return strings.TrimRight(b.String(), "\n")
}
