package class

import (
	"fmt"
	"io"
	"path/filepath"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/class/summary"
)

// WriteText writes what was taken in, one line for each file that is a hand-in or
// a record, and what is to be said about it.
func (c *Collected) WriteText(w io.Writer, of *classfile.Class) error {
	t := &summary.Text{}
	others := 0
	for _, one := range c.Files {
		// A folder has other files, too, which nobody wants to read about one by one.
		if one.Other && one.Trouble == "" {
			others++
			continue
		}
		t.Line("%s: %s", classfile.Shown(filepath.Base(one.File)), one.say(of))
		for _, r := range one.Remarks {
			t.Line("  %s", summary.SayRemark(r, of.Called))
		}
	}
	if others > 0 {
		t.Line(saidOthers, others)
	}
	t.Line(saidCollected, c.Added, c.Known)
	_, err := io.WriteString(w, t.String())
	return err
}

// say words what came of one file.
func (one *Taken) say(of *classfile.Class) string {
	if one.Trouble != "" {
		return one.Trouble
	}
	said := fmt.Sprintf("%s, %d new", summary.Entries(one.Entries), one.Added)
	if one.Student != "" {
		said = of.Called(one.Student) + ", " + said
	}
	said += "."
	if one.Truncated {
		said += saidTruncated
	}
	if one.Unread > 0 {
		said += fmt.Sprintf(saidUnread, one.Unread, one.FirstBad)
	}
	if one.Aside > 0 {
		said += fmt.Sprintf(saidAside, classfile.Shown(one.Student))
	}
	if one.Forgotten > 0 {
		said += fmt.Sprintf(saidForgotten, one.Forgotten)
	}
	if one.TooLong > 0 {
		said += fmt.Sprintf(saidTooLong, one.TooLong)
	}
	if one.Elsewhere > 0 {
		said += fmt.Sprintf(saidElsewhere, one.Elsewhere)
	}
	if one.Besides > 0 {
		said += fmt.Sprintf(saidBesides, one.Besides)
	}
	if one.Refused > 0 {
		said += fmt.Sprintf(saidRefused, one.Refused)
	}
	if one.Class != "" && problems.Fold(one.Class) != problems.Fold(of.Code) {
		said += fmt.Sprintf(saidOtherClass, classfile.Shown(one.Class))
	}
	return said
}
