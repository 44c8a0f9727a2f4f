package door_test

import (
	"testing"

	"example.org/standstill/tutor/door"
)

func TestCellsComeBack(t *testing.T) {
	for text, cell := range map[string]string{
		"": "", "Rope B": "Rope B", "=1+1": "'=1+1", "-3": "'-3", "＝1+1": "'＝1+1", "＠now": "'＠now", "'tis": "''tis",
	} {
		if got := door.Inert(text); got != cell {
			t.Errorf("%q is written as %q, want %q", text, got, cell)
		}
		if got := door.Plain(cell); got != text {
			t.Errorf("%q is read as %q, want %q", cell, got, text)
		}
	}
	if got := door.Plain("'tis"); got != "'tis" {
		t.Errorf("an apostrophe of somebody else is lost: %q", got)
	}
}
