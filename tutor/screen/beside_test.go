// Inside the package: it stops between a key and its work.

package screen

import (
	"context"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor/record"
)

// What is half typed is kept while the student types, and not only on leaving: a program
// that is killed loses a few seconds of it.
func TestHalfTypedIsKeptWhileTyping(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	b := newBeside(d.model, newWaits(context.Background()))
	drafts := func() (texts []string) {
		all, err := d.tutor.Record.Drafts(d.model.desk.Student.ID)
		if err != nil {
			t.Fatal(err)
		}
		for _, one := range all {
			texts = append(texts, one.Text)
		}
		return texts
	}
	for _, more := range []string{"T1", " up", " left"} {
		d.write(more)
		if save := b.model.lesson.HalfTyped(d.line.Text()); save == nil {
			t.Fatal("a change is not to be kept")
		} else if err := save(); err != nil {
			t.Fatal(err)
		}
		if got := drafts(); len(got) != 1 || got[0] != d.line.Text() {
			t.Fatalf("kept: %q, typed: %q", got, d.line.Text())
		}
	}
	if b.model.lesson.HalfTyped(d.line.Text()) != nil {
		t.Error("what is kept already is kept again")
	}
	again, err := d.tutor.Seat(d.model.desk.Student)
	if err != nil {
		t.Fatal(err)
	}
	lesson, err := again.Open("canal-lantern")
	if err != nil || lesson.Draft() != d.line.Text() {
		t.Errorf("it comes back as %q, %v", lesson.Draft(), err)
	}
	d.hand("T1 up left; T2 up right; w down")
	if got := drafts(); got != nil {
		t.Errorf("after the line was checked: %q", got)
	}
}

// A key has the half-typed line kept a moment later, once for all keys until then. Where
// that fails, it is tried again; where nobody types, nothing is done.
func TestSavesOnlyWhereSomebodyTypes(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	b := newBeside(d.model, newWaits(context.Background()))
	for _, c := range []struct {
		name   string
		msg    tea.Msg
		saving bool
	}{
		{"a size", tea.WindowSizeMsg{Width: 80, Height: 24}, false},
		{"a key", tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'a'}}, true},
		{"another", tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'b'}}, true},
		{"the moment", saveTick{}, false},
		{"kept", saveEnded{}, false},
		{"not kept", saveEnded{record.ErrBusy}, true},
	} {
		if b.Update(c.msg); b.saving != c.saving {
			t.Errorf("after %s: to be kept soon: %v", c.name, b.saving)
		}
	}
}

// Keys that come while others are worked on are not lost and keep their order.
func TestKeysWhileWorkingKeepTheirOrder(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	b := newBeside(d.model, newWaits(context.Background()))
	key := func(r rune) tea.Cmd {
		_, cmd := b.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
		return cmd
	}
	if key('a') == nil {
		t.Fatal("the first key is not worked on")
	}
	all := b.pending
	for _, r := range "bcd" {
		if key(r) != nil {
			t.Fatal("two things are worked on at once")
		}
	}
	if len(all) != 0 || len(b.pending) != 3 {
		t.Fatalf("%d keys wait, want 3", len(b.pending))
	}
	b.do([]tea.Msg{tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'a'}}})
	b.do(b.pending)
	if got := d.line.Text(); got != "abcd" {
		t.Errorf("the line is %q", got)
	}
}
