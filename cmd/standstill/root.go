package main

import (
	"errors"
	"fmt"
	"os"
	"runtime"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.org/standstill/problems"
)

// app is what the flags of all commands come to.
type app struct {
	streams
	folders     []string // of problem files
	recordFile  string
	classFile   string
	plain       bool
	light, dark bool
	ascii       bool
	told        map[string]bool // findings about files
}

func root(a *app) *cobra.Command {
	c := &cobra.Command{
		Use:           "standstill",
		Short:         "Practise problems about forces in equilibrium, line by line",
		Long:          saidRoot,
		Example:       "  standstill\n  standstill --plain\n  standstill bank list",
		Args:          noSuchCommand,
		SilenceErrors: true,
		SilenceUsage:  true,
		RunE: func(*cobra.Command, []string) error {
			if err := a.oneBackground(); err != nil {
				return err
			}
			return a.practise()
		},
	}
	c.SetFlagErrorFunc(wrongFlag)
	c.SetHelpCommand(helpCommand(c))
	all := c.PersistentFlags()
	all.StringArrayVar(&a.folders, "bank", nil, "add a `folder` of problem files; you can repeat this flag")
	all.StringVar(&a.recordFile, "record", "", "the record `file`, or the address of a database")
	own := c.Flags()
	own.StringVar(&a.classFile, "class", "", "the class `file`, if you practise with a class")
	own.BoolVar(&a.plain, "plain", false, "use lines of text instead of screens")
	a.screenFlags(own)
	all.BoolP("help", "h", false, "show this help")
	c.SetUsageTemplate(saidUsage)
	c.SuggestionsMinimumDistance = nearEnough
	c.AddCommand(markCommand(a), solveCommand(a), bankCommand(a), recordCommand(a), benchCommand(a), classCommand(a), handInCommand(a), sheetCommand(a), hostCommand(a), versionCommand(a), papersCommand())
	a.completeProblems(c)
	sayCompletion(c)
	return c
}

// sayCompletion words the command that the library adds.
func sayCompletion(root *cobra.Command) {
	root.InitDefaultCompletionCmd()
	// The library adds it late, so there is nothing to word before.
	c, _, err := root.Find([]string{"completion"})
	if err != nil {
		return
	}
	c.Short, c.Long, c.Example = saidCompletion, saidCompletionLong, "  standstill completion bash"
	for _, shell := range c.Commands() {
		shell.Short = fmt.Sprintf(saidCompletionOf, shell.Name())
		shell.Long = shell.Short + "."
		shell.Example = fmt.Sprintf("  standstill completion %s", shell.Name())
	}
}

// screenFlags say how screens are shown.
func (a *app) screenFlags(f *pflag.FlagSet) {
	f.BoolVar(&a.light, "light", false, "use colours for a light background, from now on")
	f.BoolVar(&a.dark, "dark", false, "use colours for a dark background, from now on")
	f.BoolVar(&a.ascii, "ascii", plainCharacters(runtime.GOOS, os.Getenv), "draw with plain characters, for terminals that cannot show braille")
}

// oneBackground refuses colours for two backgrounds at once.
func (a *app) oneBackground() error {
	if a.light && a.dark {
		return misuse{errors.New(saidLightAndDark)}
	}
	return nil
}

// nearEnough is how many letters apart a command and what was typed may be.
const nearEnough = 2

// noSuchCommand refuses words behind the name of a command that has commands of
// its own.
func noSuchCommand(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	if near := c.SuggestionsFor(args[0]); len(near) > 0 {
		return misuse{fmt.Errorf(saidNearCommand, args[0], c.CommandPath()+" "+near[0])}
	}
	return misuse{fmt.Errorf(saidNoCommand, args[0])}
}

// exactly refuses any other number of words than n behind a command.
func exactly(n int, what string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		switch {
		case len(args) < n:
			return misuse{fmt.Errorf(saidMissing, c.CommandPath(), what, c.CommandPath())}
		case len(args) > n:
			return misuse{fmt.Errorf(saidTooMany, args[n], c.CommandPath(), c.CommandPath())}
		}
		return nil
	}
}

// wrongFlag words what is wrong with a flag.
func wrongFlag(c *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	var value *pflag.InvalidValueError
	var syntax *pflag.InvalidSyntaxError
	switch {
	case errors.As(err, &unknown):
		name := unknown.GetSpecifiedName()
		if near := nearFlag(c, name); near != "" {
			return misuse{fmt.Errorf(saidNearFlag, c.CommandPath(), dashes(name), near)}
		}
		return misuse{fmt.Errorf(saidNoFlag, c.CommandPath(), dashes(name), c.CommandPath())}
	case errors.As(err, &bare):
		return misuse{fmt.Errorf(saidBareFlag, dashes(bare.GetSpecifiedName()), bareExample(bare.GetFlag()))}
	case errors.As(err, &value):
		return misuse{fmt.Errorf(saidFlagValue, dashes(value.GetFlag().Name), value.GetValue())}
	case errors.As(err, &syntax):
		return misuse{fmt.Errorf(saidFlagSyntax, syntax.GetSpecifiedFlag(), c.CommandPath())}
	}
	return misuse{err}
}

func dashes(name string) string {
	if len([]rune(name)) == 1 {
		return "-" + name
	}
	return "--" + name
}

func bareExample(f *pflag.Flag) string {
	what, _ := pflag.UnquoteUsage(f)
	return dashes(f.Name) + " " + strings.ToUpper(what)
}

// nearFlag finds the flag that a mistyped one begins like.
func nearFlag(c *cobra.Command, name string) string {
	near := ""
	c.Flags().VisitAll(func(f *pflag.Flag) {
		// One letter begins half of all flags.
		if len(name) > 1 && (strings.HasPrefix(f.Name, name) || strings.HasPrefix(name, f.Name)) {
			near = dashes(f.Name)
		}
	})
	return near
}

// openBank returns the bank that is built in, with the folders of the command
// line laid over it. What cannot be read there is told, and left out.
func (a *app) openBank() *problems.Bank {
	bank := problems.Embedded()
	for _, dir := range a.folders {
		folder, found := problems.OpenFolder(dir)
		a.tell(found)
		// The later folder lies over the earlier one.
		bank = bank.With(folder)
	}
	return bank
}

// tell prints findings, each once, with its line and a mark under the place.
func (a *app) tell(found problems.Findings) {
	if a.told == nil {
		a.told = map[string]bool{}
	}
	for _, f := range found {
		if a.told[f.String()] {
			continue
		}
		a.told[f.String()] = true
		fmt.Fprintln(a.Err, f)
		if excerpt := f.Excerpt(); excerpt != "" {
			fmt.Fprintln(a.Err, excerpt)
		}
	}
}

// problem finds a problem by its id, or reads it from a file.
func (a *app) problem(name string) (*problems.Problem, error) { return a.problemOf(a.openBank, name) }

func (a *app) problemOf(bank func() *problems.Bank, name string) (*problems.Problem, error) {
	if !isFile(name) {
		return bank().Get(name)
	}
	p, found := problems.ReadFile(name)
	if len(found) > 0 {
		a.tell(found)
		return nil, errFound
	}
	return p, nil
}

// isFile tells a path from an id, which has neither dots nor separators.
func isFile(name string) bool {
	return slices.ContainsFunc([]rune(name), func(r rune) bool { return r == '.' || r == '/' || r == '\\' })
}
