package main

import (
	"strings"
	"unicode"
)

const (
	saidRoot = `Standstill is a tutor for forces at rest. It gives a problem, reads your reasoning
line by line, marks each line and says what is off.

Without a command it opens the tutor. What you type is kept, and you come back to
where you left.`

	saidFault          = "Standstill has met a fault of its own and stops: %v. What was handed in before is kept."
	saidNoOutput       = "the output cannot be written: %s"
	saidNoInput        = "the input cannot be read: %s"
	saidNoCommand      = "there is no command %q; standstill help lists those that there are"
	saidNearCommand    = "there is no command %q; %s is the nearest"
	saidMissing        = "%s needs %s; %s --help shows an example"
	saidTooMany        = "%q is one word too many for %s; %s --help shows an example"
	saidNoFlag         = "%s has no flag %s; %s --help lists those that there are"
	saidNearFlag       = "%s has no flag %s; %s is the nearest"
	saidBareFlag       = "the flag %s needs a value, as in %s"
	saidFlagValue      = "the flag %s cannot be %q"
	saidFlags          = "these flags do not go together for %s"
	saidLightAndDark   = "the flags --light and --dark do not go together; choose one"
	saidNoRecord       = "there is no record at %s; one is made when somebody practises"
	saidWaitsForRecord = "Waiting for the record %s, which another program is using."
	saidNobody         = "nobody has practised here yet"
	saidNoStudent      = "the record has no student %q; it has %s"
)

// part is a part of the manual page that no command has.
type part struct{ title, text string }

func saidManual() []part {
	return []part{
		{"FILES", `The record is in the folder standstill of the user's data folder: ~/.local/share/standstill on
Linux, ~/Library/Application Support/standstill on macOS, %LocalAppData%\standstill on Windows.
A class file named class.yaml is found there, and beside the program.`},
		{"ENVIRONMENT", `STANDSTILL_DATA names another folder for the record. NO_COLOR turns colours off.`},
		{"EXIT STATUS", `0 if all is well; 1 if something is wrong with what was looked at, or could not be done;
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
