package main

import (
	"strings"
	"unicode"
)

const (
	saidRoot = `Standstill is a tutor for forces in equilibrium. It gives you a problem, reads your reasoning
line by line, marks each line and says what is wrong.

Without a command it opens the tutor. Your work is saved, and you come back to the
place where you stopped.`

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
	saidCompletionLong = `Prints a script for your shell. With it the shell completes the commands and flags of
standstill when you press Tab. Save it where your shell looks for such scripts.`
	saidCompletionOf = "Print the completion script for %s"

	saidFault          = "Standstill stopped because of an error in the program: %v. The lines that you checked before are saved."
	saidNoOutput       = "the output cannot be written: %s"
	saidNoInput        = "the input cannot be read: %s"
	saidNoCommand      = "there is no command %q; standstill help lists the commands"
	saidNearCommand    = "there is no command %q; did you mean %s?"
	saidMissing        = "%s needs %s; %s --help shows an example"
	saidTooMany        = "%q is one word too many after %s; %s --help shows an example"
	saidNoFlag         = "%s has no flag %s; %s --help lists its flags"
	saidNearFlag       = "%s has no flag %s; did you mean %s?"
	saidBareFlag       = "the flag %s needs a value, as in %s"
	saidFlagValue      = "the flag %s cannot be %q"
	saidFlags          = "these flags cannot be used together with %s"
	saidLightAndDark   = "the flags --light and --dark cannot be used together; choose one"
	saidNoRecord       = "there is no record at %s; it is created when somebody practises"
	saidWaitsForRecord = "Waiting for the record %s, which another program is using."
	saidNobody         = "nobody has practised here yet"
	saidNoStudent      = "the record has no student %q; it has %s"
	saidNameStudent    = "name a student; the record has %s"
)

// part is a part of the manual page that no command has.
type part struct{ title, text string }

func saidManual() []part {
	return []part{
		{"FILES", `The record is in the folder standstill of the user's data folder: ~/.local/share/standstill on
Linux, ~/Library/Application Support/standstill on macOS, %LocalAppData%\standstill on Windows.
A class file called class.yaml is found there, and in the folder of the program.`},
		{"ENVIRONMENT", `STANDSTILL_DATA names another folder for the record. NO_COLOR turns colours off.`},
		{"EXIT STATUS", `0 on success; 1 if an error was found in what was checked, or if something could not be done;
2 if the command line cannot be understood.`},
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
