package main

import (
	"strings"
	"unicode"
)

const (
	saidRoot = `Standstill is a tutor for forces in equilibrium. It gives you a problem, marks
your reasoning line by line, and says what is wrong with a line.

If you type only standstill, without a command, the tutor opens. Standstill
saves your work. The next time, you continue where you stopped.`

	saidUsage = `Usage:{{if .Runnable}}
  {{.UseLine}}{{end}}{{if .HasAvailableSubCommands}}
  {{.CommandPath}} COMMAND{{end}}{{if .HasExample}}

Examples:
{{.Example}}{{end}}{{if .HasAvailableSubCommands}}

Commands:{{range .Commands}}{{if or .IsAvailableCommand (eq .Name "help")}}
  {{rpad .Name .NamePadding}} {{.Short}}{{end}}{{end}}{{end}}{{if .HasAvailableLocalFlags}}

Flags:
{{.LocalFlags.FlagUsages | trimTrailingWhitespaces}}{{end}}{{if .HasAvailableInheritedFlags}}

Flags of every command:
{{.InheritedFlags.FlagUsages | trimTrailingWhitespaces}}{{end}}{{if .HasAvailableSubCommands}}

"{{.CommandPath}} COMMAND --help" explains one command.{{end}}
`
	saidCompletion     = "Print a script that completes commands when you press Tab"
	saidCompletionLong = `This command prints a completion script for your shell. Save the script in the
folder where your shell looks for completion scripts. When you press Tab, the
shell then completes the commands and flags of standstill.`
	saidCompletionOf = "Print the completion script for %s"

	saidFault          = "Standstill stopped because of an error in the program: %v. The lines that you checked earlier are saved."
	saidNoOutput       = "the output cannot be written: %s"
	saidNoInput        = "the input cannot be read: %s"
	saidNoCommand      = "there is no command %q; standstill help lists the commands"
	saidNearCommand    = "there is no command %q; did you mean %s?"
	saidMissing        = "%s needs %s; %s --help shows an example"
	saidTooMany        = "%q cannot be used after %s; %s --help shows an example"
	saidNoFlag         = "%s has no flag %s; %s --help lists its flags"
	saidNearFlag       = "%s has no flag %s; did you mean %s?"
	saidBareFlag       = "the flag %s needs a value, as in %s"
	saidFlagValue      = "the flag %s cannot have the value %q"
	saidFlagSyntax     = "%q is not the name of a flag; %s --help lists its flags"
	saidLightAndDark   = "the flags --light and --dark cannot be used together; choose one"
	saidNoRecord       = "there is no record at %s; the program creates the record when a student starts to practise"
	saidWaitsForRecord = "Waiting for the record %s, which another program is using."
	saidNobody         = "the record is empty, because nobody has practised yet"
	saidNoStudent      = "the record has no student %q; its students are %s"
	saidNameStudent    = "name a student; the students in the record are %s"
)

// part is a part of the manual page that no command has.
type part struct{ title, text string }

func saidManual() []part {
	return []part{
		{"FILES", `The record is in the data folder of Standstill: ~/.local/share/standstill on
Linux, ~/Library/Application Support/standstill on macOS, and
%LocalAppData%\standstill on Windows. The program looks for a class file called
class.yaml in this folder and in the folder of the program.`},
		{"ENVIRONMENT", `If STANDSTILL_DATA names a folder, the program uses this folder as its data
folder. If NO_COLOR is set, the program does not use colours.`},
		{"EXIT STATUS", `The exit status is 0 if the command succeeded, 1 if it found an error or could
not finish, and 2 if the command line has an error.`},
	}
}

// sentence makes a whole sentence of an error's text.
func sentence(text string) string {
	runes := []rune(strings.TrimSpace(text))
	if len(runes) == 0 {
		return ""
	}
	if !strings.HasPrefix(text, "standstill") {
		runes[0] = unicode.ToUpper(runes[0])
	}
	if last := runes[len(runes)-1]; last != '.' && last != '?' {
		runes = append(runes, '.')
	}
	return string(runes)
}
