// Inside the package: it compares with the sentences of the package.

package plain

import (
	"strings"
	"testing"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// classLesson runs a lesson in a class and returns all that was said.
func classLesson(t *testing.T, c tutor.Class, typed string) string {
	t.Helper()
	r, err := record.OpenMemory(record.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	var out strings.Builder
	o := Options{Tutor: tutor.New(tutor.Options{Bank: problems.Embedded(), Record: r, Class: c}), In: strings.NewReader(typed), Out: &out, SavedIn: "record.db"}
	if err := Run(t.Context(), o); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// A class whose students draw the situation themselves hears nothing of it.
func TestAClassMayDrawTheSceneItself(t *testing.T) {
	scene, _, _ := strings.Cut(saidScene, "%s")
	for _, none := range []bool{false, true} {
		said := classLesson(t, tutor.Class{Settings: tutor.Settings{NoScenes: none}}, "Nele\nproblems\ncanal-lantern\ndrawing\nleave\n")
		if told := strings.Contains(said, "\n"+scene); told == none {
			t.Errorf("scenes are left out: %v, and one is told: %v\n%s", none, told, said)
		}
	}
}

// Names come from a file that others wrote: nothing in them acts on a terminal.
func TestNoNameOfAClassActs(t *testing.T) {
	c := tutor.Class{Students: []record.Student{{ID: "s01", Name: "Ada\x1b[2J\u009b2J\u202e Berg"}, {ID: "s02", Name: "Ben"}}}
	said := classLesson(t, c, "s01\nstudent\ns02\nleave\n")
	if strings.ContainsAny(said, "\x1b\u009b\u202e") || !strings.Contains(said, "Ada") {
		t.Errorf("%q", said)
	}
}
