// Inside the package: it compares the solver with published values.

package problems

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/standstill/checker/quantity"
)

// published is a printed answer: what the named file of ../testdata/published must
// come out as. Tolerance is half a unit of the last printed place, or one.
type published struct {
	File      string  `json:"file"`
	Find      string  `json:"find"`
	Printed   string  `json:"printed"`
	Value     float64 `json:"value"`
	Unit      string  `json:"unit"`
	LastPlace float64 `json:"last_place"`
	Tolerance string  `json:"tolerance"`
}

func TestPublishedExamples(t *testing.T) {
	const folder = "../testdata/published"
	data, err := os.ReadFile(filepath.Join(folder, "expect.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	read := map[string]*solution{}
	answers := 0
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n") {
		var e published
		if err := json.Unmarshal([]byte(line), &e); err != nil {
			t.Fatal(err)
		}
		if _, done := read[e.File]; !done {
			read[e.File] = publishedSolution(t, filepath.Join(folder, e.File))
		}
		if s := read[e.File]; s != nil {
			e.compare(t, s)
			answers++
		}
	}
	if answers < 50 {
		t.Fatalf("only %d printed answers", answers)
	}
	files, err := filepath.Glob(folder + "/*.yaml")
	if err != nil || len(files) != len(read) {
		t.Errorf("%d files and answers for %d of them, %v", len(files), len(read), err)
	}
}

func publishedSolution(t *testing.T, name string) *solution {
	p, found := ReadFile(name)
	if p == nil {
		t.Error(found.Err())
		return nil
	}
	s, err := solve(p.System)
	if err != nil {
		t.Errorf("%s: %v", name, err)
	}
	return s
}

func (e published) compare(t *testing.T, s *solution) {
	unit := quantity.Unit{Factor: 1}
	if e.Unit != "" {
		known := false
		if unit, known = quantity.Find(e.Unit); !known {
			t.Errorf("%s: unknown unit %q", e.File, e.Unit)
			return
		}
	}
	reach, known := map[string]float64{"half": 0.5, "one": 1}[e.Tolerance]
	if !known {
		t.Errorf("%s: unknown tolerance %q", e.File, e.Tolerance)
	}
	got := s.value(e.Find) / unit.Factor
	if !(math.Abs(got-e.Value) <= reach*e.LastPlace*(1+1e-9)) {
		t.Errorf("%s: %s = %v %s, and %s is printed", e.File, e.Find, got, e.Unit, e.Printed)
	}
}
