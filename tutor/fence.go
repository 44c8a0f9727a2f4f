package tutor

import "fmt"

// Fenced does something in which a fault of ours must spoil no more than itself: one
// line of a lesson, one student's cell of a report. It returns what went wrong, nil where
// nothing did.
func Fenced(do func()) (fault error) {
	defer func() {
		if r := recover(); r != nil {
			fault = fmt.Errorf("internal error: %v", r)
		}
	}()
	do()
	return nil
}
