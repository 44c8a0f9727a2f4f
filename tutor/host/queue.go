package host

import (
	"context"
	"sync"
)

// A turnstile lets one pass phrase be checked at a time: each takes 19 MiB and some 20 ms
// of a core. Where a student has come in from today goes first, so that somebody who tries
// phrases keeps nobody out.
type turnstile struct {
	mu     sync.Mutex
	busy   bool
	first  []chan struct{}
	others []chan struct{}
}

// mostWaiting is how many wait in each of the two rows: as many as may be connected.
const mostWaiting = mostUnproved

// enter waits for the turn; false where too many wait, or the context is done.
func (t *turnstile) enter(ctx context.Context, first bool) bool {
	turn := t.line(first)
	if turn == nil {
		return false
	}
	select {
	case <-turn:
		return true
	case <-ctx.Done():
	}
	if !t.drop(turn) {
		t.leave() // it came at the same moment
	}
	return false
}

// line gives a channel that is closed when it is one's turn, nil where there is no room.
func (t *turnstile) line(first bool) chan struct{} {
	t.mu.Lock()
	defer t.mu.Unlock()
	turn := make(chan struct{})
	row := &t.others
	if first {
		row = &t.first
	}
	switch {
	case !t.busy:
		t.busy = true
		close(turn)
	case len(*row) >= mostWaiting:
		return nil
	default:
		*row = append(*row, turn)
	}
	return turn
}

// drop takes somebody out of the rows; false for one whose turn it is.
func (t *turnstile) drop(turn chan struct{}) bool {
	t.mu.Lock()
	defer t.mu.Unlock()
	for _, row := range []*[]chan struct{}{&t.first, &t.others} {
		for i, waiting := range *row {
			if waiting == turn {
				*row = append((*row)[:i], (*row)[i+1:]...)
				return true
			}
		}
	}
	return false
}

// leave gives the turn to the next.
func (t *turnstile) leave() {
	t.mu.Lock()
	defer t.mu.Unlock()
	for _, row := range []*[]chan struct{}{&t.first, &t.others} {
		if len(*row) > 0 {
			close((*row)[0])
			*row = (*row)[1:]
			return
		}
	}
	t.busy = false
}
