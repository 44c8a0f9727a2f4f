package checker_test

import (
	"bufio"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
)

// labelled is one answer with what should be said of it.
type labelled struct {
	Problem string           `json:"problem"`
	Stage   checker.Stage    `json:"stage"`
	Item    string           `json:"item"`
	Answer  string           `json:"answer"`
	Before  []checker.Answer `json:"before"`
	Want    struct {
		Verdict checker.Verdict `json:"verdict"`
		Code    []checker.Code  `json:"code"`
		About   string          `json:"about"`
		Settles []string        `json:"settles"`
	} `json:"want"`
}

var references = map[string]*checker.Reference{}

// others are the problems of the bank and those that only labels are about.
var others = sync.OnceValues(func() (*problems.Bank, error) {
	own, found := problems.OpenFolder("../testdata/marking/problems")
	return problems.Embedded().With(own), found.Err()
})

func reference(t testing.TB, id string) *checker.Reference {
	t.Helper()
	if r, ok := references[id]; ok {
		return r
	}
	bank, err := others()
	if err != nil {
		t.Fatal(err)
	}
	p, err := bank.Get(id)
	if err != nil {
		t.Fatal(err)
	}
	r, err := checker.New(p.System)
	if err != nil {
		t.Fatalf("%s: %v", id, err)
	}
	references[id] = r
	return r
}

func readCases(t testing.TB, path string) []labelled {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var all []labelled
	for lines := bufio.NewScanner(file); lines.Scan(); {
		var l labelled
		if err := json.Unmarshal(lines.Bytes(), &l); err != nil {
			t.Fatalf("%s: %v: %s", path, err, lines.Text())
		}
		all = append(all, l)
	}
	return all
}

func TestLabelledAnswers(t *testing.T) {
	paths, err := filepath.Glob("../testdata/marking/*.jsonl")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no labelled answers: %v", err)
	}
	for _, path := range paths {
		all := readCases(t, path)
		if len(all) < 10 {
			t.Fatalf("%s: only %d cases", path, len(all))
		}
		var verdicts, codes, abouts, settles int
		for _, c := range all {
			got := reference(t, c.Problem).Mark(checker.Answer{Stage: c.Stage, Item: c.Item, Text: c.Answer}, c.Before)
			what := fmt.Sprintf("%s %s %s %q: %s %s %q %v (read %q)", c.Problem, c.Stage, c.Item, c.Answer, got.Verdict, got.Code, got.About, got.Settles, got.Read)
			if got.Verdict != c.Want.Verdict {
				t.Errorf("%s, want %s %v", what, c.Want.Verdict, c.Want.Code)
				continue
			}
			verdicts++
			if len(c.Want.Code) > 0 && !slices.Contains(c.Want.Code, got.Code) {
				t.Errorf("%s, want %v", what, c.Want.Code)
				continue
			}
			codes++
			if c.Want.About != "" && got.About != c.Want.About {
				t.Errorf("%s, want about %q", what, c.Want.About)
			} else {
				abouts++
			}
			if c.Want.Settles != nil && !slices.Equal(c.Want.Settles, got.Settles) {
				t.Errorf("%s, want settles %q", what, c.Want.Settles)
			} else {
				settles++
			}
		}
		t.Logf("%s: %d cases, right in verdict %d, code %d, about %d, settles %d", filepath.Base(path), len(all), verdicts, codes, abouts, settles)
	}
}
