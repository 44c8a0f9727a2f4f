package main

import (
	"io"
	"slices"
	"sync"
)

// A heldLog passes log lines on, and keeps them back while the lab is shown on the same
// terminal.
type heldLog struct {
	out io.Writer

	mu    sync.Mutex
	held  bool
	lines [][]byte
}

// mostHeld is how many lines are kept back; the oldest go.
const mostHeld = 1000

// Write takes one line, as log/slog gives it.
func (l *heldLog) Write(line []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if !l.held {
		return l.out.Write(line)
	}
	if len(l.lines) == mostHeld {
		l.lines = slices.Delete(l.lines, 0, 1)
	}
	// slog uses its buffer again.
	l.lines = append(l.lines, slices.Clone(line))
	return len(line), nil
}

func (l *heldLog) hold() {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.held = true
}

// release writes what was kept back, and keeps nothing back any more.
func (l *heldLog) release() {
	l.mu.Lock()
	defer l.mu.Unlock()
	for _, line := range l.lines {
		l.out.Write(line)
	}
	l.held, l.lines = false, nil
}
