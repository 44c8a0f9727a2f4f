package checker_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
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

// namesEquations matches sentences that name equations or values, and state none.
var namesEquations = regexp.MustCompile(`^(Begin with|The equations have) `)

// equations cuts the equations out of a line of the worked solution.
func equations(line string) []string {
	if !strings.ContainsAny(line, "=≈") || namesEquations.MatchString(line) {
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

// comparison is a sentence about sizes: the forces on one side and the other, what is said of
// them, and the axis along which they balance or have components.
var (
	comparison  = regexp.MustCompile(`^Check the magnitudes(?: for (?:the )?(.+?))?: (.+?)(?: together)?(?: \(([\d.]+) \S+\))? (?:is|are) (larger than|equal to) (.+?)(?: together)?(?: \(([\d.]+) \S+\))?, as (?:it|they) must be, because (?:(.+) also ha(?:s|ve) (?:a component|components)|no other force acts) along the ([xy]) axis\.$`)
	dropped     = regexp.MustCompile(`^Check: (\S+) cancels, so the answer is the same for every value of (\S+)\.$`)
	sameAngle   = regexp.MustCompile(`^The (sine|cosine|tangent) has the same value at ([\d.]+)°\. (?:That angle is ruled out, because (\S+) must be between 0° and 90°|That direction is ruled out, because the magnitude of the force would be negative)\.$`)
	angleLine   = regexp.MustCompile(`^The angle: (\S+) = .* = ([\d.]+)°$`)
	secondOne   = regexp.MustCompile(`^The equations have a second solution, (\S+) = (\S+?)(?:°| N| kN) and (\S+) = (\S+?)(?:°| N| kN)\. It is ruled out, because (.+)\.$`)
	namesJoined = regexp.MustCompile(`, | and `)
)

// Whatever is said beside the equations is true by computation: the check of size, and the
// second solution.
func TestWorkedSensesAreTrue(t *testing.T) {
	compared, checked, angles, seconds := 0, 0, 0, 0
	for _, at := range append(slices.Clone(allTaught(t)), otherNumbers(t, 2)...) {
		steps := at.r.Worked()
		lines := steps[len(steps)-1].Lines
		has := false
		for i, line := range lines {
			switch {
			case strings.HasPrefix(line, "Check with ΣF"):
				has = true // TestWorkedEquationsAreTrue
			case strings.HasPrefix(line, "Check the magnitudes"), strings.HasPrefix(line, "Check: "):
				has = true
				compared++
				if !at.sizeHolds(line) {
					t.Errorf("%s: %q is not true", at.id, line)
				}
			case strings.HasPrefix(line, "The sine has"), strings.HasPrefix(line, "The cosine has"), strings.HasPrefix(line, "The tangent has"):
				angles++
				if !sameAt(lines[i-1], line) {
					t.Errorf("%s: %q is not true after %q", at.id, line, lines[i-1])
				}
			case strings.HasPrefix(line, "The equations have"):
				seconds++
				if !at.secondHolds(line) {
					t.Errorf("%s: %q is not true", at.id, line)
				}
			case strings.HasPrefix(line, "The angle: "):
				if i+1 == len(lines) || !sameAngle.MatchString(lines[i+1]) {
					t.Errorf("%s: no second angle after %q", at.id, line)
				}
			}
		}
		if has {
			checked++
		} else {
			t.Errorf("%s: no check", at.id)
		}
	}
	if compared < 300 || checked < 350 || angles < 50 || seconds < 6 {
		t.Errorf("only %d comparisons, %d checked, %d angles, %d second solutions", compared, checked, angles, seconds)
	}
}

// names turns "T₁ and T₂" into the letters of the problem.
func (at *taught) names(text string) []string {
	var names []string
	for _, shown := range namesJoined.Split(text, -1) {
		for name := range at.values {
			if expr.Set(name) == shown {
				names = append(names, name)
			}
		}
	}
	return names
}

func (at *taught) sizeHolds(line string) bool {
	if m := dropped.FindStringSubmatch(line); m != nil {
		g, ok := at.r.Given(m[1])
		return ok && g.Any && m[1] == m[2]
	}
	m := comparison.FindStringSubmatch(line)
	if m == nil {
		return false
	}
	along, across := m[8], map[string]string{"x": "y", "y": "x"}[m[8]]
	for b, body := range at.r.Bodies {
		if name := body.Name; m[1] != "" && m[1] != name {
			continue
		}
		parts := at.bodies[b]
		one, other := at.names(m[2]), at.names(m[5])
		slanted := at.names(m[7])
		axis := along
		if m[4] == "larger than" {
			axis = across
		}
		ok := at.oneWay(one, parts, axis) != 0 && at.oneWay(one, parts, axis) == -at.oneWay(other, parts, axis)
		acting := 0
		for _, f := range body.Forces {
			if math.Abs(parts[f.Name+axis]) > 1e-9 {
				acting++
			}
		}
		ok = ok && acting == len(one)+len(other)
		for _, name := range slanted {
			ok = ok && slices.Contains(one, name) && math.Abs(parts[name+along]) > 1e-9
		}
		left, right := at.together(one), at.together(other)
		if m[4] == "larger than" {
			ok = ok && len(slanted) > 0 && left > right
		} else {
			ok = ok && math.Abs(left-right) <= 0.005*left
		}
		if ok {
			return true
		}
	}
	return false
}

func (at *taught) together(names []string) float64 {
	sum := 0.0
	for _, name := range names {
		sum += at.values[name]
	}
	return sum
}

// oneWay is the sign that the components of all the forces share, or 0.
func (at *taught) oneWay(names []string, parts map[string]float64, axis string) float64 {
	sign := 0.0
	for i, name := range names {
		s := math.Copysign(1, parts[name+axis])
		if i > 0 && s != sign {
			return 0
		}
		sign = s
	}
	return sign
}

func sameAt(before, line string) bool {
	a, m := angleLine.FindStringSubmatch(before), sameAngle.FindStringSubmatch(line)
	if a == nil || m == nil {
		return false
	}
	is, other := inRadians(a[2]), inRadians(m[2])
	f := map[string]func(float64) float64{"sine": math.Sin, "cosine": math.Cos, "tangent": math.Tan}[m[1]]
	inside := m[3] == "" || a[1] == m[3] && is < math.Pi/2 && other > math.Pi/2
	return inside && math.Abs(is-other) > 0.01 && math.Abs(f(is)-f(other)) < 0.01*math.Max(1, math.Abs(f(is)))*math.Max(1, math.Abs(f(is)))
}

func inRadians(text string) float64 { return printed(text) * math.Pi / 180 }

func printed(text string) float64 {
	v, err := strconv.ParseFloat(strings.Replace(text, "−", "-", 1), 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

func (at *taught) secondHolds(line string) bool {
	m := secondOne.FindStringSubmatch(line)
	if m == nil {
		return false
	}
	values := map[string]float64{}
	for name, v := range at.values {
		values[name] = v
	}
	outside := strings.Contains(m[5], "must be between") || strings.Contains(m[5], "cannot be negative")
	for i := 1; i < 5; i += 2 {
		name := at.names(m[i])
		if len(name) != 1 {
			return false
		}
		values[name[0]] = printed(m[i+1])
		angles, _, _ := strings.Cut(m[5], " must be between 0° and 90°")
		said := slices.Contains(at.names(angles), name[0])
		if strings.Contains(line, m[i+1]+"°") {
			values[name[0]] = inRadians(m[i+1])
			in := values[name[0]] >= 0 && values[name[0]] <= math.Pi/2
			outside = outside && !(said && in)
		}
	}
	for _, body := range at.r.Bodies {
		for _, axis := range []statics.Axis{statics.X, statics.Y} {
			sum, largest := 0.0, 0.0
			for _, f := range body.Forces {
				v, err := f.Component(axis).Value(values)
				if err != nil {
					return false
				}
				sum, largest = sum+v, math.Max(largest, math.Abs(v))
			}
			if math.Abs(sum) > 0.01*largest {
				return false
			}
		}
	}
	return outside
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
