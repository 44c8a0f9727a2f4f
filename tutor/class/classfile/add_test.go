// Inside the package: it uses the folder of helper_test.go.

package classfile

import (
	"os"
	"strings"
	"testing"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// A student who joins stands at the end of the list, and all else in the file is as
// it was.
func TestAddAStudent(t *testing.T) {
	const work = "problems:\n  - {problem: canal-lantern}  # a comment\n"
	for name, c := range map[string]struct{ list, csv, after string }{
		"items":         {"students:\n  - {id: s01, name: Ada}  # first\n  - {id: s02, name: Ben}\n# end\n", "", "students:\n  - {id: s01, name: Ada}  # first\n  - {id: s02, name: Ben}\n  - {id: 's31', name: 'Zoë O''Neil'}\n# end\n"},
		"long items":    {"students:\n- id: s01\n  name: Ada\n", "", "students:\n- id: s01\n  name: Ada\n- {id: 's31', name: 'Zoë O''Neil'}\n"},
		"DOS lines":     {"students:\r\n  - {id: s01, name: Ada}\r\n", "", "students:\r\n  - {id: s01, name: Ada}\r\n  - {id: 's31', name: 'Zoë O''Neil'}\r\n"},
		"CSV":           {"students: list.csv\n", "id,name\ns01,Ada", "id,name\ns01,Ada\ns31,Zoë O'Neil\n"},
		"other columns": {"students: list.csv\n", "Last name;First name;Room;Student ID\nBerg;Ada;4;s01\n", "Last name;First name;Room;Student ID\nBerg;Ada;4;s01\nO'Neil;Zoë;;s31\n"},
		"no headings":   {"students: list.csv\n", "s01\tAda\n", "s01\tAda\ns31\tZoë O'Neil\n"},
	} {
		text := "name: P\nnumber key: k\n" + c.list + work
		file := classFolder(t, text, map[string]string{"list.csv": c.csv})
		added, err := Add(file, problems.Embedded(), record.Student{ID: "s31", Name: "Zoë O'Neil"})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		expected := "name: P\nnumber key: k\n" + c.after + work
		if c.csv != "" {
			expected = c.after
		}
		want(t, name, string(added.Text), expected)
		must(t, os.WriteFile(added.File, added.Text, 0o600))
		read, found := ReadFile(file, problems.Embedded())
		must(t, found.Err())
		if s, ok := read.Student("s31"); !ok || s.Name != "Zoë O'Neil" || read.Students[len(read.Students)-1] != s {
			t.Errorf("%s: the list is %v", name, read.Students)
		}
	}
}

func TestStudentsThatCannotBeAdded(t *testing.T) {
	text := "name: P\nnumber key: k\nstudents: [{id: s01, name: Ada}]\nproblems: [{problem: canal-lantern}]\n"
	file := classFolder(t, text, map[string]string{})
	for said, s := range map[string]record.Student{
		"the id S01 belongs to Ada":         {ID: "S01", Name: "Zoe"},
		"between 1 and 80":                  {Name: " "},
		"does not have one student on each": {ID: "s02", Name: "Zoe"},
	} {
		if _, err := Add(file, problems.Embedded(), s); err == nil || !strings.Contains(err.Error(), said) {
			t.Errorf("%v: %v; want %q", s, err, said)
		}
	}
}
