// Inside the package: it uses the room of class_test.go.

package class

import (
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/record"
)

// In a file of changes each row says that it holds and since when; after its date
// work that nobody began is missing, and work that is not done is late.
func TestOneRosterAsChanges(t *testing.T) {
	r := newRoom(t)
	r.class.Roster = classfile.Roster{Version: "1.2", Class: "c1", School: "o1", Term: "t1"}
	r.lesson("s02", "canal-lantern")
	r.collect(map[string][]byte{"ben": r.handIn("s02")})
	r.now = time.Date(2030, 3, 12, 10, 0, 0, 0, time.UTC)
	files, _ := r.report().OneRoster(true)
	for _, line := range []string{"file.results,delta", "file.lineItems,delta", "file.categories,delta", "file.users,absent"} {
		if !strings.Contains(string(files["manifest.csv"]), line+"\r\n") {
			t.Errorf("the manifest has no %s", line)
		}
	}
	for name, file := range files {
		if name == "manifest.csv" {
			continue
		}
		for i, line := range strings.Split(strings.TrimSpace(string(file)), "\r\n") {
			if cells := strings.Split(line, ","); i > 0 && (cells[1] != "active" || cells[2] != "2030-03-12T10:00:00.000Z") {
				t.Errorf("%s: %s", name, line)
			}
		}
	}
	for _, want := range []string{
		"canal-lantern,s01,not submitted,,2030-03-12,not started,,c1,false,false,false,true",
		"canal-lantern,s02,partially graded,0,2030-03-02,in progress,,c1,true,true,true,false",
		"letter-scale,s01,not submitted,,2030-03-12,not started,,c1,false,false,false,false",
	} {
		if !strings.Contains(string(files["results.csv"]), want) {
			t.Errorf("%s is not in\n%s", want, files["results.csv"])
		}
	}
}

func TestOneRosterOut(t *testing.T) {
	for _, version := range []string{"1.1", "1.2"} {
		r := newRoom(t)
		r.class.Students, r.class.Roster = []record.Student{{ID: "u1", Name: "Ada Berg"}, {ID: "a b", Name: "Odd"}}, classfile.Roster{Version: version, Class: "c1", School: "o1", Term: "t1"}
		r.book = r.markbook()
		r.solveLantern(r.lesson("u1", "canal-lantern"))
		r.collect(map[string][]byte{"ada": r.handIn("u1")})
		files, refused := r.report().OneRoster(false)
		if !slices.Equal(refused, []string{"a b"}) {
			t.Errorf("%q are refused", refused)
		}
		var all strings.Builder
		for _, name := range []string{"manifest.csv", "categories.csv", "lineItems.csv", "results.csv"} {
			all.WriteString(strings.ReplaceAll(string(files[name]), "\r\n", "\n"))
		}
		golden, err := os.ReadFile("testdata/oneroster-" + version + ".csv")
		must(t, err)
		want(t, "OneRoster "+version, all.String(), string(golden))
	}
}
