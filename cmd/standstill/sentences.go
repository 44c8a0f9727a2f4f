package main

import (
	"strings"
	"unicode"
)

const (
	saidRoot = `Standstill is a tutor for forces in equilibrium. It gives you a problem, checks
your reasoning line by line, and explains your mistakes.

To open the tutor, type standstill without a command. Your work is saved, so you
can continue later where you stopped.`

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

To read about one command, type "{{.CommandPath}} COMMAND --help".{{end}}
`
	saidCompletion     = "Print a script that completes commands when you press Tab"
	saidCompletionLong = `This command prints a completion script for your shell. Save the script in the
folder where your shell looks for completion scripts. When you press Tab, the
shell then completes the commands and flags of standstill.`
	saidCompletionOf = "Print the completion script for %s"

	saidFault          = "Standstill stopped because of an error in the program: %v. The lines that you checked earlier are saved."
	saidNoOutput       = "the output cannot be written: %s"
	saidNoInput        = "the input cannot be read: %s"
	saidNoCommand      = "there is no command %q; to see all commands, type standstill help"
	saidNearCommand    = "there is no command %q; did you mean %s?"
	saidMissing        = "%s needs %s; for an example, type %s --help"
	saidTooMany        = "%[2]s does not accept the extra word %[1]q; for an example, type %[3]s --help"
	saidNoFlag         = "%s has no flag %s; to see its flags, type %s --help"
	saidNearFlag       = "%s has no flag %s; did you mean %s?"
	saidBareFlag       = "the flag %s needs a value, as in %s"
	saidFlagValue      = "the flag %s cannot have the value %q"
	saidFlagSyntax     = "%q is not the name of a flag; to see all flags, type %s --help"
	saidLightAndDark   = "the flags --light and --dark cannot be used together; choose one"
	saidNoRecord       = "there is no record file %s; the program creates this file when a student starts to practise"
	saidWaitsForRecord = "Waiting for the record %s, which another program is using."
	saidNobody         = "the record is empty, because nobody has practised yet"
	saidNoStudent      = "there is no student %q in the record; students in the record: %s"
	saidNameStudent    = "give the name of a student; students in the record: %s"
)

// part is a part of the manual page that no command has.
type part struct{ title, text string }

func saidManual() []part {
	return []part{
		{"FILES", `The record is in the data folder of Standstill: ~/.local/share/standstill on
Linux, ~/Library/Application Support/standstill on macOS, and
%LocalAppData%\standstill on Windows. The program looks for a class file called
class.yaml in this folder and in the program's folder.`},
		{"ENVIRONMENT", `To use a different data folder, set STANDSTILL_DATA to the path of this folder.
To switch off the colours, set NO_COLOR to any value.`},
		{"EXIT STATUS", `The exit status is 0 if the command succeeded, 1 if it found an error or could
not finish, and 2 if the command or its flags were typed incorrectly.`},
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
