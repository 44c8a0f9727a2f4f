package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/standstill/tutor/class"
	"example.org/standstill/tutor/record"
)

// TestPromises reads what each version that was given away wrote or could read; README.md
// beside the files says what must hold.
func TestPromises(t *testing.T) {
	folders, err := filepath.Glob(filepath.Join("..", "..", "testdata", "promised", "*", "record.db"))
	if err != nil || len(folders) == 0 {
		t.Fatal("nothing that was promised was found", err)
	}
	for _, file := range folders {
		kept, err := filepath.Abs(filepath.Dir(file))
		if err != nil {
			t.Fatal(err)
		}
		p := promised{kept}
		t.Run(filepath.Base(kept), func(t *testing.T) {
			t.Run("problem files", p.problems)
			t.Run("class file", p.class)
			t.Run("numbers", p.numbers)
			t.Run("mark", p.mark)
			t.Run("record", p.record)
			t.Run("hand-in", p.handIn)
		})
	}
}

// promised is the folder of one version.
type promised struct{ folder string }

func (p promised) path(name string) string { return filepath.Join(p.folder, name) }

func (p promised) lines(t *testing.T, name string) []string {
	t.Helper()
	text, err := os.ReadFile(p.path(name))
	if err != nil || len(text) == 0 {
		t.Fatal(name, "cannot be read", err)
	}
	return lines(string(text))
}

// fine runs a command that has nothing to complain of.
func fine(t *testing.T, input string, args ...string) string {
	t.Helper()
	code, stdout, stderr := inProcess(t, input, args...)
	if code != exitFine || stderr != "" {
		t.Fatalf("standstill %s ends with %d: %s", strings.Join(args, " "), code, stderr)
	}
	return stdout
}

func (p promised) problems(t *testing.T) {
	stdout := fine(t, "", "bank", "check", p.path("problems"), "--draws", "1")
	files, err := filepath.Glob(p.path("problems/*.yaml"))
	if ok := strings.Count(stdout, ": OK; "); err != nil || len(files) < 3 || ok != len(files) {
		t.Errorf("%d of %d problems are right: %s", ok, len(files), stdout)
	}
}

func (p promised) class(t *testing.T) {
	t.Setenv("STANDSTILL_DATA", t.TempDir())
	report := fine(t, "", "class", "report", "--class", p.path("class.yaml"), "--json")
	for _, want := range []string{"gate-lamp", "box-slope", "Ada Berg", "Ben Roos"} {
		if !strings.Contains(report, want) {
			t.Errorf("the report of the class has no %s: %s", want, report)
		}
	}
}

func (p promised) numbers(t *testing.T) {
	for _, line := range p.lines(t, "numbers.jsonl") {
		var want struct {
			Problem, Student string
			Text             []string
			Unknowns         map[string]struct {
				Value float64
				Unit  string
			}
		}
		mustUnmarshal(t, line, &want)
		got := want
		got.Unknowns = nil
		whose := []string{"--bank", p.path("problems"), "--numbers", "lantern-4", "--student", want.Student}
		mustUnmarshal(t, fine(t, "", append(whose, "solve", want.Problem, "--json")...), &got)
		for letter, value := range want.Unknowns {
			now := got.Unknowns[letter]
			if math.Abs(now.Value-value.Value) > 1e-9*math.Abs(value.Value) || now.Unit != value.Unit {
				t.Errorf("%s of %s: %s is %v, and was %v", want.Problem, want.Student, letter, now, value)
			}
		}
		shown := fine(t, "", append(whose, "bank", "show", want.Problem, "--no-solution")...)
		for _, number := range want.Text {
			if !strings.Contains(shown, number) {
				t.Errorf("%s of %s does not have %s: %s", want.Problem, want.Student, number, shown)
			}
		}
	}
}

func (p promised) mark(t *testing.T) {
	requests, want := p.lines(t, "mark-requests.jsonl"), p.lines(t, "mark-answers.jsonl")
	got := lines(fine(t, strings.Join(requests, "\n"), "mark", "--bank", p.path("problems")))
	if len(got) != len(want) || len(got) != len(requests) {
		t.Fatalf("%d requests, %d answers, and there were %d", len(requests), len(got), len(want))
	}
	for i := range got {
		var now, then map[string]any
		mustUnmarshal(t, got[i], &now)
		mustUnmarshal(t, want[i], &then)
		if !holds(now, then) {
			t.Errorf("%s\n  gives %s\n  and gave %s", requests[i], got[i], want[i])
		}
	}
}

// forPeople are the keys whose words may change.
var forPeople = []string{"message", "read", "error"}

// holds reports whether an answer of now has everything that one of then had.
func holds(now, then any) bool {
	switch then := then.(type) {
	case map[string]any:
		object, ok := now.(map[string]any)
		for key, value := range then {
			_, isText := object[key].(string)
			ok = ok && (isText && slices.Contains(forPeople, key) || holds(object[key], value))
		}
		return ok
	case []any:
		list, ok := now.([]any)
		return ok && slices.EqualFunc(list, then, holds)
	}
	return reflect.DeepEqual(now, then)
}

func (p promised) record(t *testing.T) {
	data := t.TempDir()
	t.Setenv("STANDSTILL_DATA", data)
	own := filepath.Join(data, "record.db")
	whole, err := os.ReadFile(p.path("record.db"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(own, whole, 0o600); err != nil {
		t.Fatal(err)
	}
	said := fine(t, "student\ns02\nT1y = T1 sin alpha\nleave\n", "--plain", "--class", p.path("class.yaml"))
	if !strings.Contains(said, "\nRight: T1y = ") {
		t.Errorf("one cannot go on: %s", said)
	}
	p.mustHold(t, own, "s01", "s02")
}

func (p promised) handIn(t *testing.T) {
	data := t.TempDir()
	t.Setenv("STANDSTILL_DATA", data)
	fine(t, "", "class", "collect", p.path("hand-in.jsonl"), "--class", p.path("class.yaml"))
	p.mustHold(t, filepath.Join(data, "classes", class.RecordName("lantern-4")), "s01")
}

// mustHold says that a record has every entry that is known of the students.
func (p promised) mustHold(t *testing.T, file string, students ...string) {
	t.Helper()
	r, err := record.Open(file, record.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	now := map[string]exported{}
	for e, err := range r.Entries(record.Filter{}) {
		if err != nil {
			t.Fatal(err)
		}
		now[e.ID] = exportedEntry(e)
	}
	looked := 0
	for _, line := range p.lines(t, "record.jsonl") {
		var then exported
		mustUnmarshal(t, line, &then)
		if !slices.Contains(students, then.Student) {
			continue
		}
		looked++
		if diff := cmp.Diff(then, now[then.ID]); diff != "" {
			t.Errorf("an entry has changed: %s", diff)
		}
	}
	if looked == 0 {
		t.Error("no entry was looked for")
	}
}

func mustUnmarshal(t *testing.T, line string, into any) {
	t.Helper()
	if err := json.Unmarshal([]byte(line), into); err != nil {
		t.Fatal(line, err)
	}
}
