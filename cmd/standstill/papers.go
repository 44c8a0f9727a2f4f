package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/problems"
)

// papersCommand writes what goes with the program in an archive and can be made from it. It is
// for whoever packs the program, and not in the list of commands.
func papersCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "papers FOLDER",
		Short: "Write the files that are packed with the program",
		Long: `This command writes the manual page, the completion scripts for four shells, the
list of problems and the help pages into a folder.`,
		Example: "  standstill papers papers",
		Hidden:  true,
		Args:    exactly(1, "a folder"),
		RunE: func(c *cobra.Command, args []string) error {
			files, err := papers(c.Root())
			if err != nil {
				return err
			}
			for name, text := range files {
				if err := writePaper(filepath.Join(args[0], filepath.FromSlash(name)), text); err != nil {
					return fmt.Errorf(saidNotWritten, name, plainCause(err))
				}
			}
			return nil
		},
	}
}

// papers are the files by their paths.
func papers(root *cobra.Command) (map[string]string, error) {
	files := map[string]string{"standstill.1": manual(root)}
	for _, t := range topics() {
		files[t.name+".txt"] = t.page
	}
	for name, write := range completions(root) {
		var b strings.Builder
		if err := write(&b); err != nil {
			return nil, err
		}
		files["completions/"+name] = b.String()
	}
	var list strings.Builder
	// Not openBank: the list is packed, and no folder of whoever packs belongs into it.
	err := listHeadings(&list, problems.Embedded())
	files["problems.txt"] = list.String()
	return files, err
}

func writePaper(path, text string) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		return err
	}
	return os.WriteFile(path, []byte(text), 0o666)
}
