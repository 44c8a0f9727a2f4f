package checker_test

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
)

// taught is a problem with its reference, the letters a student may type in it and
// the value of each at the solution, in SI.
type taught struct {
	id      string
	r       *checker.Reference
	letters *expr.Letters
	values  map[string]float64
	bodies  []map[string]float64 // components by their short names, for each body
}

// allTaught returns the bank and the published examples.
func allTaught(t testing.TB) []*taught {
	t.Helper()
	if taughtOnce != nil {
		return taughtOnce
	}
	published, findings := problems.OpenFolder("../testdata/published")
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	var all []*taught
	for _, bank := range []*problems.Bank{problems.Embedded(), published} {
		for _, h := range bank.List() {
			p, err := bank.Get(h.ID)
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, teach(t, p))
		}
	}
	if len(all) < 120 {
		t.Fatalf("only %d problems", len(all))
	}
	taughtOnce = all
	return all
}

// taughtOnce keeps the problems from one test to the next.
var taughtOnce []*taught

// otherNumbers draws copies of every problem of the bank.
func otherNumbers(t testing.TB, copies int) []*taught {
	t.Helper()
	var all []*taught
	for _, h := range problems.Embedded().List() {
		p, err := problems.Embedded().Get(h.ID)
		if err != nil {
			t.Fatal(err)
		}
		for k := range copies {
			if drawn, err := p.Draw(problems.Seed{Class: "a class", Student: string(rune('a' + k))}); err == nil {
				all = append(all, teach(t, drawn))
			}
		}
	}
	if len(all) < 80*copies {
		t.Fatalf("only %d drawn problems", len(all))
	}
	return all
}

func teach(t testing.TB, p *problems.Problem) *taught {
	t.Helper()
	r, err := checker.New(p.System)
	if err != nil {
		t.Fatalf("%s: %v", p.ID, err)
	}
	at := &taught{id: p.ID, r: r, letters: &expr.Letters{}, values: map[string]float64{}}
	for _, v := range r.Variables() {
		at.letters.Add(v.Name, map[quantity.Dimension]expr.Kind{quantity.Angle: expr.Angle, quantity.Mass: expr.Mass}[v.Dim])
		at.values[v.Name], _ = r.Value(v.Name)
	}
	for _, b := range p.System.Bodies {
		parts := map[string]float64{}
		for _, f := range b.Forces {
			for _, axis := range []statics.Axis{statics.X, statics.Y} {
				name := f.Name + axis.String()
				at.letters.Add(name, expr.Plain)
				parts[name], err = f.Component(axis).Value(at.values)
				if err != nil {
					t.Fatalf("%s: %s: %v", p.ID, name, err)
				}
			}
		}
		at.bodies = append(at.bodies, parts)
	}
	return at
}

// value evaluates a tree with the components of one body.
func (at *taught) value(n *expr.Node, body int) (float64, error) {
	all := map[string]float64{}
	for name, v := range at.values {
		all[name] = v
	}
	for name, v := range at.bodies[body] {
		all[name] = v
	}
	return n.Value(all)
}

// holds reports whether every link of a chain is true within one part in a
// hundred of its largest term, as rounded numbers are.
func (at *taught) holds(line expr.Line) bool {
	for body := range at.bodies {
		true := 0
		for i := 1; i < len(line.Sides); i++ {
			left, err1 := at.value(line.Sides[i-1], body)
			right, err2 := at.value(line.Sides[i], body)
			if err1 == nil && err2 == nil && math.Abs(left-right) <= 0.01*at.largest(line.Sides[i-1:i+1], body) {
				true++
			}
		}
		if true == len(line.Sides)-1 {
			return true > 0
		}
	}
	return false
}

func (at *taught) largest(sides []*expr.Node, body int) float64 {
	largest := 0.0
	for _, side := range sides {
		for _, term := range terms(side) {
			if v, err := at.value(term, body); err == nil {
				largest = math.Max(largest, math.Abs(v))
			}
		}
	}
	return largest
}

// terms cuts a side into what is added up in it.
func terms(n *expr.Node) []*expr.Node {
	switch n.Op {
	case expr.Add, expr.Sub:
		return append(terms(n.Args[0]), terms(n.Args[1])...)
	case expr.Neg:
		return terms(n.Args[0])
	}
	return []*expr.Node{n}
}

// equations cuts the equations out of a line of the worked solution.
func equations(line string) []string {
	if !strings.ContainsAny(line, "=≈") {
		return nil
	}
	if i := strings.LastIndex(line, ": "); i >= 0 {
		line = line[i+2:]
	}
	return strings.Split(line, "; ")
}

func TestWorkedEquationsAreTrue(t *testing.T) {
	checked := 0
	for _, at := range append(slices.Clone(allTaught(t)), otherNumbers(t, 2)...) {
		for _, step := range at.r.Worked() {
			for _, line := range step.Lines {
				for _, text := range equations(line) {
					reading, err := at.letters.Read(text)
					if err != nil {
						t.Errorf("%s: %q: %v", at.id, text, err)
						continue
					}
					checked++
					if !at.anyHolds(reading) {
						t.Errorf("%s: %q is not true (in %q)", at.id, text, line)
					}
				}
			}
		}
	}
	if checked < 4000 {
		t.Errorf("only %d equations", checked)
	}
}

func (at *taught) anyHolds(reading expr.Reading) bool {
	for _, line := range reading.Lines {
		if at.holds(line) {
			return true
		}
	}
	return false
}

// The solution ends with every answer, in the unit asked, and has every stage.
func TestWorkedIsWhole(t *testing.T) {
	for _, at := range allTaught(t) {
		steps := at.r.Worked()
		for _, stage := range checker.Stages {
			found := false
			for _, s := range steps {
				found = found || s.Stage == stage && s.Title != "" && len(s.Lines) > 0
			}
			if !found {
				t.Errorf("%s: no %s", at.id, stage)
			}
		}
		last := steps[len(steps)-1].Lines
		answer := last[len(last)-1]
		for _, name := range at.r.Find {
			if !strings.Contains(answer, expr.Set(name)+" = ") {
				t.Errorf("%s: no answer for %s in %q", at.id, name, answer)
			}
		}
		for _, s := range steps {
			for _, line := range s.Lines {
				if strings.ContainsAny(line, "{}%!") || regexp.MustCompile(`NaN|Inf|no number|\(\)|  `).MatchString(line) {
					t.Errorf("%s: %q", at.id, line)
				}
			}
		}
	}
}

// What the solution says is right when a student types it: the sums and the
// answers.
func TestWorkedIsMarkedRight(t *testing.T) {
	for _, at := range allTaught(t) {
		steps := at.r.Worked()
		last := steps[len(steps)-1].Lines
		for _, text := range equations(last[len(last)-1]) {
			if got := at.r.Mark(checker.Answer{Stage: checker.Solve, Text: text}, nil); got.Verdict != checker.Right {
				t.Errorf("%s: %q is %s %s: %s", at.id, text, got.Verdict, got.Code, got.Message)
			}
		}
	}
}

func TestWorkedSolutions(t *testing.T) {
	var b strings.Builder
	for _, at := range chosen(t) {
		b.WriteString("== " + at.id + "\n")
		for _, step := range at.r.Worked() {
			b.WriteString("   " + string(step.Stage) + ": " + step.Title + "\n")
			for _, line := range step.Lines {
				b.WriteString("      " + line + "\n")
			}
		}
	}
	compareGolden(t, "testdata/words/worked.txt", b.String())
}
