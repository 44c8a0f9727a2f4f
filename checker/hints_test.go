package checker_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
)

var rewriteWords = flag.Bool("words", false, "rewrite the golden texts of messages, hints and worked solutions")

// chosen are the problems whose texts are proof-read as a page.
func chosen(t testing.TB) []*taught {
	t.Helper()
	var all []*taught
	for _, id := range []string{"canal-lantern", "boat-fender", "crate-ramp", "depot-trolley", "slate-drag", "chart-board", "fish-tray",
		"any-trunk", "sail-bag", "lab-table-four", "steep-tie", "two-lanterns", "pear-line", "sash-window", "three-tugs"} {
		p, err := problems.Embedded().Get(id)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, teach(t, p))
	}
	return all
}

func compareGolden(t *testing.T, path, got string) {
	t.Helper()
	if *rewriteWords {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	gotLines, wantLines := strings.Split(got, "\n"), strings.Split(string(want), "\n")
	for i := range max(len(gotLines), len(wantLines)) {
		if i >= len(gotLines) || i >= len(wantLines) || gotLines[i] != wantLines[i] {
			t.Fatalf("%s:%d differs:\n got %q\nwant %q\nrewrite with -words and read the difference", path, i+1, lineAt(gotLines, i), lineAt(wantLines, i))
		}
	}
}

func lineAt(lines []string, i int) string {
	if i < len(lines) {
		return lines[i]
	}
	return "the end"
}

func TestMessages(t *testing.T) {
	holdAnswers(t, "testdata/words/messages.txt", 80, func(r *checker.Reference, a checker.Answer, before []checker.Answer) []string {
		got := r.Mark(a, before)
		checkSentence(t, a.Text, got.Message, 260)
		return []string{strings.TrimSpace(fmt.Sprintf("%s %s %s", got.Verdict, got.Code, got.About)), got.Message}
	})
}

// Hints speak of the mistake in the line itself, which the code alone does not tell.
func TestHintsOfALine(t *testing.T) {
	holdAnswers(t, "testdata/words/linehints.txt", 10, func(r *checker.Reference, a checker.Answer, _ []checker.Answer) []string {
		report := r.Mark(a, nil)
		return []string{r.Hint(a, report, 1), r.Hint(a, report, 2)}
	})
}

// holdAnswers holds a file against what is said. The file has, under "== problem stage item",
// answers as students type them; below each, what is said of it. "< item: text" is an earlier
// component of the same student.
func holdAnswers(t *testing.T, path string, least int, said func(*checker.Reference, checker.Answer, []checker.Answer) []string) {
	t.Helper()
	file, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	var r *checker.Reference
	var a checker.Answer
	var before []checker.Answer
	answers := 0
	for line := range strings.Lines(string(file)) {
		line = strings.TrimSuffix(line, "\n")
		head, isHead := strings.CutPrefix(line, "== ")
		earlier, isEarlier := strings.CutPrefix(line, "< ")
		switch {
		case strings.HasPrefix(line, "    "):
			continue
		case line == "" || line[0] == '#':
		case isHead:
			r, a, before = reading(t, head)
		case isEarlier:
			item, text, _ := strings.Cut(earlier, ": ")
			before = append(before, checker.Answer{Stage: checker.Components, Item: item, Text: text})
		default:
			answers++
			a.Text = line
			b.WriteString(line + "\n    " + strings.Join(said(r, a, before), "\n    ") + "\n")
			continue
		}
		b.WriteString(line + "\n")
	}
	if answers < least {
		t.Errorf("only %d answers", answers)
	}
	compareGolden(t, path, b.String())
}

func reading(t *testing.T, head string) (*checker.Reference, checker.Answer, []checker.Answer) {
	t.Helper()
	fields := append(strings.Fields(head), "", "")
	p, err := problems.Embedded().Get(fields[0])
	if err != nil {
		t.Fatal(err)
	}
	return teach(t, p).r, checker.Answer{Stage: checker.Stage(fields[1]), Item: fields[2]}, nil
}

// checkSentence holds a text against the voice of the program.
func checkSentence(t *testing.T, what, text string, most int) {
	t.Helper()
	for _, word := range []string{"!", "{", "}", "%", "nil", "Invalid", "invalid", "error", "Error", "token", "parse", "syntax", "string index", "  ", " .", " ,", "..", "map["} {
		if strings.Contains(text, word) {
			t.Errorf("%s: %q holds %q", what, text, word)
		}
	}
	if len([]rune(text)) > most {
		t.Errorf("%s: %d characters: %q", what, len([]rune(text)), text)
	}
}

// asked lists what a hint may be wanted for in a problem: every stage, item and
// code, about every force or none.
func (at *taught) asked(f func(a checker.Answer, report checker.Report)) {
	for _, stage := range checker.Stages {
		items := at.r.Items(stage)
		if stage == checker.Solve {
			items = append(items, "")
		}
		for _, item := range items {
			f(checker.Answer{Stage: stage, Item: item}, checker.Report{})
			for _, code := range everyCode {
				for _, about := range at.abouts(stage, item) {
					for _, text := range at.typed(stage, item) {
						f(checker.Answer{Stage: stage, Item: item, Text: text}, checker.Report{Verdict: checker.Wrong, Code: code, About: about, Item: item})
					}
				}
			}
		}
	}
}

// typed gives texts of the kinds that hints tell apart: a line, and a value.
func (at *taught) typed(stage checker.Stage, item string) []string {
	texts := []string{"1 = 2"}
	if stage == checker.Solve && item != "" {
		texts = append(texts, item+" = 1")
	}
	return texts
}

// abouts lists what evidence may name: nothing, or a force; in components the
// force of the item alone.
func (at *taught) abouts(stage checker.Stage, item string) []string {
	if stage == checker.Components {
		return []string{""}
	}
	forces := at.r.Bodies[0].Forces
	return []string{"", forces[0].Name, forces[len(forces)-1].Name}
}

var everyCode = []checker.Code{checker.Sign, checker.SineCosine, checker.Tangent, checker.NotResolved, checker.MissingForce,
	checker.ExtraForce, checker.WrongAxis, checker.OtherAngle, checker.NormalEqualsWeight, checker.MassForWeight, checker.EqualTensions,
	checker.SharedWeight, checker.WholeFactor, checker.Inverted, checker.Radians, checker.OtherG, checker.WrongSide, checker.OtherBody,
	checker.OtherUnknown, checker.Pythagoras, checker.TwiceCounted, checker.Slip, checker.PowerOfTen, checker.DoesNotFollow,
	checker.Unexplained, checker.NoUnit, checker.WrongUnit, checker.Coarse, checker.NoEquation, checker.HoldsAlways, checker.StillUnknown,
	checker.TrueNotAsked, checker.UnknownName, checker.Unreadable}

func TestEveryHintIsThere(t *testing.T) {
	for i, at := range allTaught(t) {
		if i%everyNth != 0 {
			continue
		}
		said := map[string]bool{}
		at.asked(func(a checker.Answer, report checker.Report) {
			for level := 1; level <= 3; level++ {
				text := at.r.Hint(a, report, level)
				if said[text] {
					continue
				}
				said[text] = true
				what := fmt.Sprintf("%s %s %s %s %s level %d", at.id, a.Stage, a.Item, report.Code, report.About, level)
				if len(text) < 6 || !strings.ContainsAny(text[len(text)-1:], ".?") {
					t.Errorf("%s: %q", what, text)
				}
				most := 220
				if level == 3 {
					most = 400
				}
				checkSentence(t, what, text, most)
			}
		})
	}
}

// No question and no rule holds an expression that is the answer or a part of it:
// every run of words that reads as mathematics with an operator or a function in
// it is compared with all components, terms and sides at two sets of values.
func TestHintsHoldNothingToCopy(t *testing.T) {
	seen := 0
	for i, at := range allTaught(t) {
		if i%everyNth != 0 {
			continue
		}
		parts := at.parts(t)
		texts := map[string]string{}
		at.asked(func(a checker.Answer, report checker.Report) {
			for level := 1; level <= 2; level++ {
				texts[at.r.Hint(a, report, level)] = fmt.Sprintf("%s %s %s %s", at.id, a.Stage, a.Item, report.Code)
			}
		})
		for text, what := range texts {
			for _, n := range at.mathematics(text) {
				seen++
				if name := parts.equal(n); name != "" {
					t.Errorf("%s: %q holds %s, which is %s", what, text, at.letters.PrintNode(n), name)
				}
			}
		}
	}
	t.Logf("%d expressions in all", seen)
}

// The test must be able to fail.
func TestCopiesAreFound(t *testing.T) {
	at := chosen(t)[0]
	parts := at.parts(t)
	for _, text := range []string{"Look at T₁ cos α here.", "It is T1cosα, of course.", "Is m g the weight?", "The sum T₁ sin α + T₂ sin β is what w is.", "Try sin 55° T1."} {
		found := ""
		for _, n := range at.mathematics(text) {
			found += parts.equal(n)
		}
		if found == "" {
			t.Errorf("nothing found in %q", text)
		}
	}
}

// copyable holds the values of everything that could be copied, in two worlds.
type copyable struct {
	worlds []map[string]float64
	values map[string][]float64
}

func (at *taught) parts(t testing.TB) *copyable {
	t.Helper()
	c := &copyable{values: map[string][]float64{}}
	for k := range 2 {
		world := map[string]float64{}
		for i, v := range at.r.Variables() {
			world[v.Name] = at.values[v.Name]
			if v.Role == statics.IsUnknown {
				world[v.Name] *= 0.7 + 0.1*float64(k) + 0.013*float64(i)
			}
		}
		for _, v := range at.r.Variables() {
			if v.Role == statics.IsDerived {
				world[v.Name], _ = v.Size.Value(world)
			}
		}
		c.worlds = append(c.worlds, world)
	}
	for _, b := range at.r.Bodies {
		for _, axis := range []statics.Axis{statics.X, statics.Y} {
			for _, f := range b.Forces {
				c.add(f.Name+axis.String(), f.Component(axis))
				c.add(f.Name, expr.Letter(f.Name))
			}
			if sum := b.Sum(axis); sum != nil {
				c.add("the sum", sum)
				for _, f := range b.Forces {
					c.add("the sum without "+f.Name, expr.Join(expr.Sub, sum, f.Component(axis)))
				}
			}
		}
	}
	for _, name := range at.r.Find {
		c.add(name, expr.Letter(name))
		solved := math.Abs(at.values[name])
		c.values["the value of "+name] = []float64{solved, solved}
	}
	return c
}

func (c *copyable) add(name string, n *expr.Node) {
	var values []float64
	for _, world := range c.worlds {
		v, err := n.Value(world)
		if err != nil || v == 0 {
			return
		}
		values = append(values, math.Abs(v))
	}
	c.values[name] = values
}

// equal names the part that an expression is, "" for none.
func (c *copyable) equal(n *expr.Node) string {
	for name, want := range c.values {
		same := true
		for k, world := range c.worlds {
			v, err := n.Value(world)
			same = same && err == nil && math.Abs(math.Abs(v)-want[k]) <= 1e-6*want[k]
		}
		if same {
			return name
		}
	}
	return ""
}

// mathematics lists what reads as mathematics in a text, with an operator or a
// function in it: every run of words that could be part of a formula, whole and in
// pieces.
func (at *taught) mathematics(text string) []*expr.Node {
	var found []*expr.Node
	words := strings.Fields(text)
	for start := 0; start < len(words); start++ {
		end := start
		for end < len(words) && at.couldBeFormula(words[end]) {
			end++
		}
		for i := start; i < end; i++ {
			for j := i + 1; j <= end; j++ {
				found = append(found, at.compound(strings.Trim(strings.Join(words[i:j], " "), ".,;:?"))...)
			}
		}
		start = end
	}
	return found
}

// couldBeFormula reports whether a word is an operator, a function, or reads with
// the problem's letters alone.
func (at *taught) couldBeFormula(word string) bool {
	word = strings.Trim(word, ".,;:?()")
	if slices.Contains([]string{"", "+", "−", "-", "=", "·", "/", "sin", "cos", "tan", "asin", "acos", "atan"}, word) {
		return true
	}
	reading, err := at.letters.Read(word)
	return err == nil && !slices.ContainsFunc(reading.Lines[0].Sides, hasUnknown)
}

// compound lists the nodes of a formula that are more than a letter or a number.
func (at *taught) compound(run string) []*expr.Node {
	reading, err := at.letters.Read(run)
	if err != nil {
		return nil
	}
	var found []*expr.Node
	for _, line := range reading.Lines {
		for _, side := range line.Sides {
			side.Walk(func(n *expr.Node) {
				if n.Op != expr.Number && n.Op != expr.Name && !hasUnknown(n) {
					found = append(found, n)
				}
			})
		}
	}
	return found
}

func hasUnknown(n *expr.Node) bool {
	unknown := false
	n.Walk(func(m *expr.Node) { unknown = unknown || m.Unknown })
	return unknown
}

// The third hint of a component, a sum and a force diagram is right when it is
// typed.
func TestStepsAreMarkedRight(t *testing.T) {
	for _, at := range allTaught(t) {
		for _, stage := range []checker.Stage{checker.Diagram, checker.Components, checker.XSum, checker.YSum} {
			for _, item := range at.r.Items(stage) {
				hint := at.r.Hint(checker.Answer{Stage: stage, Item: item}, checker.Report{}, 3)
				text := strings.TrimSuffix(hint, ".")
				if stage == checker.Components {
					text, _, _ = strings.Cut(text, ", or ")
				} else {
					_, text, _ = strings.Cut(text, ": ")
				}
				got := at.r.Mark(checker.Answer{Stage: stage, Item: item, Text: text}, nil)
				nothing := text == "0 = 0" && got.Code == checker.HoldsAlways
				if got.Verdict != checker.Right && !nothing {
					t.Errorf("%s %s %s: %q is %s %s: %s", at.id, stage, item, text, got.Verdict, got.Code, got.Message)
				}
			}
		}
	}
}

func TestHintsOfStrangeAnswers(t *testing.T) {
	for _, at := range chosen(t)[9:12] {
		for _, stage := range append(slices.Clone(checker.Stages), "", "nonsense") {
			for _, item := range []string{"", "A", "A.T1x", "Z", "T1x", "T1", "beta", "{lie}"} {
				for _, text := range []string{"", "  ", "T1 = ", "((((", "= =", "T1 = T2 = 3 N", "{stranger}", strings.Repeat("T1+", 400), "\x1b[2J", "λ"} {
					a := checker.Answer{Stage: stage, Item: item, Text: text}
					for level := -1; level <= 5; level++ {
						at.r.Hint(a, checker.Report{}, level)
						at.r.Hint(a, checker.Report{Code: "nonsense", About: "nobody", Item: item}, level)
						at.r.Hint(a, at.r.Mark(a, nil), level)
					}
				}
			}
		}
	}
}

// TestHints keeps the texts as a page to be proof-read: each stage with its step,
// then the question and the rule for every code that has its own.
func TestHints(t *testing.T) {
	var b strings.Builder
	for _, at := range chosen(t) {
		if !slices.Contains([]string{"canal-lantern", "depot-trolley", "two-lanterns"}, at.id) {
			continue
		}
		said := map[string]bool{}
		spot := ""
		at.asked(func(a checker.Answer, report checker.Report) {
			if a.Stage == checker.Solve && a.Item == "" || a.Stage == checker.Components && !at.firstOfItsLie(a.Item) ||
				report.About != "" && report.About != at.r.Bodies[0].Forces[0].Name || at.id == "two-lanterns" && a.Stage != checker.Solve {
				return
			}
			question, rule, step := at.r.Hint(a, report, 1), at.r.Hint(a, report, 2), at.r.Hint(a, report, 3)
			if here := strings.TrimSpace(fmt.Sprint(at.id, " ", a.Stage, " ", a.Item)); here != spot {
				spot = here
				fmt.Fprintf(&b, "== %s\n   %s\n", spot, step)
			}
			if !said[question+rule] {
				said[question+rule] = true
				fmt.Fprintf(&b, "%s\n      %s\n      %s\n", strings.TrimSpace(fmt.Sprint("   ", report.Code, " ", report.About)), question, rule)
			}
		})
	}
	compareGolden(t, "testdata/words/hints.txt", b.String())
}

// firstOfItsLie picks one component for each way in which a force can lie to an
// axis.
func (at *taught) firstOfItsLie(item string) bool {
	for _, name := range at.r.Items(checker.Components) {
		if at.lie(name) == at.lie(item) {
			return name == item
		}
	}
	return false
}

func (at *taught) lie(item string) string {
	_, name, found := strings.Cut(item, ".")
	if !found {
		name = item
	}
	f, _ := at.r.Force(name[:len(name)-1])
	factor := f.Factor(map[byte]statics.Axis{'x': statics.X, 'y': statics.Y}[name[len(name)-1]])
	return fmt.Sprint(factor.Sign == 0, factor.Function)
}
