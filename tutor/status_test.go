// Inside the package: it makes a page again from the entries of an attempt.

package tutor

import (
	"bufio"
	"fmt"
	"os"
	"strings"
	"testing"

	"example.org/standstill/tutor/record"
)

// TestStatuses reads testdata/status.txt: stories of a page and what it comes to.
func TestStatuses(t *testing.T) {
	file, err := os.Open("testdata/status.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var l *Lesson
	checked, number := 0, 0
	for in := bufio.NewScanner(file); in.Scan(); {
		number++
		text := strings.TrimSpace(in.Text())
		switch id, isProblem := strings.CutPrefix(text, "problem "); {
		case text == "" || text[0] == '#':
		case isProblem:
			l = open(t, seat(t, ""), id)
		case text[0] == '=':
			checked++
			again, err := l.desk.tutor.Review(l.attempt.Entries)
			if err != nil {
				t.Fatal(err)
			}
			for _, page := range []*Page{l.Page, again} {
				p := page.Progress()
				got := fmt.Sprintf("= %s %d/%d %d %d %d", p.Status, p.RightFirst, p.Items, p.Refused, p.Hints, p.StepsShown)
				if got != text {
					t.Errorf("line %d: it is %q, want %q", number, got, text)
				}
			}
		default:
			tell(t, l, text)
		}
	}
	if checked < 12 {
		t.Fatalf("only %d standings were found", checked)
	}
}

// tell does what a line of a story says.
func tell(t *testing.T, l *Lesson, text string) {
	t.Helper()
	var err error
	switch text {
	case "hint":
		_, err = l.Hint()
	case "solution":
		_, err = l.Solution()
	case "keep":
		_, err = l.Dispute()
	case "accept":
		var kept string
		for _, line := range l.Lines() {
			if line.Disputed {
				kept = line.ID
			}
		}
		_, err = l.note(record.Entry{Kind: record.Accepted, Ref: kept})
	case "answer":
		stage, item, _ := l.InHand()
		hand(t, l, answer(l, stage, item))
	default:
		hand(t, l, text)
	}
	if err != nil {
		t.Fatal(text, err)
	}
}
