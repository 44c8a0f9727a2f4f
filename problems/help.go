package problems

import (
	_ "embed"
	"strings"
)

//go:embed help.txt
var fileHelp string

// FileHelp explains every key of a problem file, each with an example.
func FileHelp() string {
	return strings.NewReplacer("{units}", strings.Join(units, " "), "{kinds}", strings.Join(kinds(), ", "), "{topics}", strings.Join(topicIDs(), ", ")).Replace(fileHelp)
}
