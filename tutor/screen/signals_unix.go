//go:build unix

package screen

import (
	"os"
	"os/signal"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
)

// pauses gives the terminal back while the program is stopped from outside, and takes it
// again afterwards. The library's own suspending signals the whole group of processes,
// which would come back here without end.
func pauses(p *tea.Program, done <-chan struct{}) {
	stopped := make(chan os.Signal, 1)
	signal.Notify(stopped, syscall.SIGTSTP)
	defer signal.Stop(stopped)
	again := make(chan os.Signal, 1)
	signal.Notify(again, syscall.SIGCONT)
	defer signal.Stop(again)
	for {
		select {
		case <-done:
			return
		case <-stopped:
			if p.ReleaseTerminal() != nil {
				continue
			}
			// The call may be back before the process stops, so what follows waits
			// for the signal that ends the stop.
			for len(again) > 0 {
				<-again
			}
			syscall.Kill(os.Getpid(), syscall.SIGSTOP)
			<-again
			if p.RestoreTerminal() != nil {
				p.Quit()
			}
		}
	}
}
