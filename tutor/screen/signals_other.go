//go:build !unix

package screen

import tea "github.com/charmbracelet/bubbletea"

// pauses does nothing where a program cannot be stopped for a while.
func pauses(*tea.Program, <-chan struct{}) {}
