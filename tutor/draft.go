package tutor

import (
	"sync/atomic"

	"example.org/standstill/tutor/record"
)

// findDrafts puts the half-typed lines of the record to their attempts; the one that was
// typed last counts.
func (d *Desk) findDrafts() error {
	drafts, err := d.tutor.Record.Drafts(d.Student.ID)
	for _, draft := range drafts {
		for _, a := range d.history.Of(draft.Problem) {
			if a.Hash == draft.Hash && a.Givens == draft.Givens && a.Copy == draft.Copy {
				// They come oldest first, so the newest stays.
				d.kept(a).Store(&draft.Text)
			}
		}
	}
	return err
}

// kept is the half-typed line of an attempt that the record has. It is read and written
// beside the lesson.
func (d *Desk) kept(a *Attempt) *atomic.Pointer[string] {
	if d.drafts[a] == nil {
		d.drafts[a] = new(atomic.Pointer[string])
		d.drafts[a].Store(new(string))
	}
	return d.drafts[a]
}

// SaveDraft saves a half-typed line, to be found by Draft on coming back, in the place
// of the one before.
func (l *Lesson) SaveDraft(text string) error {
	if save := l.HalfTyped(text); save != nil {
		return save()
	}
	return nil
}

// HalfTyped takes note of a half-typed line. What it returns keeps the line in the
// record and touches nothing else, so that it may run beside the lesson; nil where the
// record has that line already.
func (l *Lesson) HalfTyped(text string) (save func() error) {
	text = tidyText(text)
	l.draft = text
	kept := l.desk.kept(l.attempt)
	if text == *kept.Load() {
		return nil
	}
	stage, item, _ := l.InHand()
	d := record.Draft{Student: l.desk.Student.ID, Problem: l.Problem.ID, Hash: l.Problem.Hash, Givens: l.Problem.Copy,
		Copy: l.attempt.Copy, Stage: string(stage), Item: item, Text: text}
	r := l.desk.tutor.Record
	return func() error {
		err := r.SaveDraft(d)
		if err == nil {
			kept.Store(&text)
		}
		return err
	}
}
