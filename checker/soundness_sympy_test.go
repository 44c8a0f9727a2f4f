package checker_test

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"example.org/standstill/checker"
)

//go:embed testdata/soundness/compare.py
var compare string

// question asks sympy whether a line holds wherever a sum is zero.
type question struct {
	Sides []string `json:"sides"`
	Sum   string   `json:"sum"`
	Solve string   `json:"solve"`
	text  string
	got   checker.Report
	what  string
}

// TestLinesAgreeWithSympy is an optional check: a sample of lines in letters is
// given to sympy too, which knows algebra and nothing of this package. It says so
// when it is not run.
func TestLinesAgreeWithSympy(t *testing.T) {
	python := pythonWithSympy()
	if python == "" {
		t.Log("not run: python3 with sympy is not here")
		return
	}
	asked := sympyQuestions(t)
	answers := askSympy(t, python, asked)
	holds := 0
	for i, q := range asked {
		if answers[i] {
			holds++
		}
		// A true line that is not the sum's own form is "almost".
		if right := q.got.Verdict == checker.Right; right != answers[i] {
			t.Errorf("%s %q: %s %s, sympy says that it holds: %v", q.what, q.text, q.got.Verdict, q.got.Code, answers[i])
		}
	}
	t.Logf("%d lines, of which %d hold", len(asked), holds)
	if holds < len(asked)/4 || holds > len(asked)*3/4 {
		t.Errorf("%d of %d lines hold; the sample is lopsided", holds, len(asked))
	}
}

// pythonWithSympy finds a python3 that has sympy: the first of the path, or the
// system's, which is where Debian's python3-sympy goes. It is "" where there is none.
func pythonWithSympy() string {
	for _, python := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(python, "-c", "import sympy").Run() == nil {
			return python
		}
	}
	return ""
}

// sympyQuestions writes lines in letters, right ones and wrong ones.
func sympyQuestions(t *testing.T) []question {
	t.Helper()
	var asked []question
	y := &tally{confusion: map[string]map[checker.Code]int{}}
	every := sympyEveryNth
	if *soundness > sampled {
		every = 1
	}
	for i, p := range everyProblem(t) {
		if i%every != 0 {
			continue
		}
		s := newSearch(t, p, y)
		for range 40 {
			if q, ok := s.question(len(asked)%2 == 0); ok {
				asked = append(asked, q)
				break
			}
		}
	}
	return asked
}

// question writes one line of a sum that has an unknown size to solve for.
func (s *search) question(right bool) (question, bool) {
	u := s.someSum()
	w := s.newWriter(s.Rand, u.body)
	w.numbers, w.decimals, w.parts, w.equal, w.usual = 0, 0, "", false, false
	terms := u.terms
	if !right {
		all := s.mistakes(*u)
		terms = all[s.IntN(len(all))].terms
	}
	l := w.arrange(terms)
	free := s.freeSize(*u)
	if free == "" || w.nothing(u.terms) || !right && !(l.miss(s.at) > 0.03) {
		return question{}, false
	}
	q := question{Sum: s.python(sumTree(*u)), Solve: "v_" + free, text: w.text(l, u.axis.String()), what: s.id + " " + string(stageOf(u.axis)) + " " + u.body}
	for _, side := range l.sides {
		q.Sides = append(q.Sides, s.python(side))
	}
	q.got = s.ref.Mark(checker.Answer{Stage: stageOf(u.axis), Item: u.body, Text: q.text}, nil)
	return q, true
}

func sumTree(u sum) *tree {
	var terms []*tree
	for _, t := range u.terms {
		terms = append(terms, t.signed())
	}
	return plus(terms...)
}

// freeSize finds an unknown size that stands in one term of the sum.
func (s *search) freeSize(u sum) string {
	for _, t := range u.terms {
		if name := t.force.Name; slices.Contains(s.unknowns, name) {
			return name
		}
	}
	return ""
}

// python prints a tree in Python's notation, sized forces written out.
func (s *search) python(t *tree) string {
	switch t.op {
	case 'n':
		if t.deg {
			return "(Rational('" + t.text + "')*pi/180)"
		}
		return "Rational('" + t.text + "')"
	case 'v':
		if t.means != nil {
			return s.python(t.means)
		}
		if size := s.sizes[t.name]; size != nil {
			return s.python(size)
		}
		return "v_" + t.name
	case 'f':
		return t.name + "(" + s.python(t.args[0]) + ")"
	case '-':
		return "(-" + s.python(t.args[0]) + ")"
	}
	var parts []string
	for _, a := range t.args {
		parts = append(parts, s.python(a))
	}
	op := string(t.op)
	if t.op == '^' {
		op = "**"
	}
	return "(" + strings.Join(parts, op) + ")"
}

func askSympy(t *testing.T, python string, asked []question) []bool {
	t.Helper()
	input, err := json.Marshal(asked)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(python, "-c", compare)
	cmd.Stdin = bytes.NewReader(input)
	var trouble bytes.Buffer
	cmd.Stderr = &trouble
	output, err := cmd.Output()
	if err != nil {
		t.Fatalf("sympy: %v: %s", err, trouble.String())
	}
	var answers []bool
	if err := json.Unmarshal(output, &answers); err != nil || len(answers) != len(asked) {
		t.Fatalf("sympy answered %d of %d questions: %v", len(answers), len(asked), fmt.Sprint(err))
	}
	return answers
}
