// Package memory remembers the latest answers to questions that are asked again: a line
// of a lesson is read several times, and students with other numbers type the same line.
package memory

import "sync"

// Half is how many answers one half of a memory holds.
const Half = 128

// LongestText is how many bytes of text are worth remembering with what was made of them:
// longer ones are read anew, so that a memory stays small whatever is typed.
const LongestText = 200

// Latest remembers the answers that were asked for last, some Half to twice as many. It
// may be used by several goroutines; the zero value is ready. What it holds is shared and
// not to be changed.
type Latest[Question comparable, Answer any] struct {
	mu sync.Mutex
	// When the young half is full it takes the place of the old one; what is asked for
	// again gets young again.
	young, old map[Question]Answer
}

// Recall returns the answer to a question, if it is remembered.
func (l *Latest[Q, A]) Recall(q Q) (a A, ok bool) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if a, ok = l.young[q]; ok {
		return a, true
	}
	if a, ok = l.old[q]; ok {
		l.put(q, a)
	}
	return a, ok
}

// Keep remembers an answer.
func (l *Latest[Q, A]) Keep(q Q, a A) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.put(q, a)
}

func (l *Latest[Q, A]) put(q Q, a A) {
	if len(l.young) >= Half {
		// Forgetting half at once needs no order of age among the answers.
		l.old, l.young = l.young, nil
	}
	if l.young == nil {
		l.young = make(map[Q]A)
	}
	l.young[q] = a
}
