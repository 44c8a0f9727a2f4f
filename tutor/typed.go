package tutor

import "example.org/standstill/checker"

// ChooseNamed takes up the open item that a text names and does no more, outside of
// Solve, where such a text is an answer. It reports whether there is one.
func (l *Lesson) ChooseNamed(text string) bool {
	stage, _, open := l.InHand()
	if !open || stage == checker.Solve {
		return false
	}
	item, ok := l.Named(stage, text)
	return ok && l.Choose(item)
}
