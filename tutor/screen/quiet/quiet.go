// Package quiet keeps the program from asking the terminal for its background
// colour before main begins.
//
// The terminal library asks while the program starts, and waits for seconds
// where the terminal does not answer, whatever the command is. It does not ask
// where the answer is known. Packages that are ready are initialised in the order
// of their import paths, so this one must import nothing that asks, and its path
// must sort before github.com. What is set here is not used: the screens take
// dark or light from a flag.
package quiet

import "github.com/charmbracelet/lipgloss"

func init() { lipgloss.SetHasDarkBackground(true) }
