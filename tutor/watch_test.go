// Inside the package: it uses the class of class_test.go.

package tutor

import (
	"slices"
	"testing"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/tutor/record"
)

// TestAuthorsOwnMistake types in a lesson, at each place, what the author of a problem
// watches for, and wants to hear what the author says of it.
func TestAuthorsOwnMistake(t *testing.T) {
	found := 0
	for _, id := range []string{"box-stays"} {
		p := problemOf(t, id)
		for i, own := range p.Watch {
			g, err := (&Class{}).NewPage(p)
			if err != nil {
				t.Fatal(err)
			}
			item := own.Item
			if items := g.Ref.Items(own.Stage); item == "" || !slices.Contains(items, item) {
				item = items[0]
			}
			line := g.Add(record.Entry{ID: "1", Kind: record.Answer, Time: time.Unix(int64(i), 0), Stage: string(own.Stage), Item: item, Text: own.Typed})
			if line.Verdict != checker.Wrong || line.Message != own.Say {
				t.Errorf("%s: %q is %s: %q; the author says %q", id, own.Typed, line.Verdict, line.Message, own.Say)
			}
			found++
		}
	}
	if found == 0 {
		t.Fatal("nothing is watched for")
	}
}
