// Inside the package: it compares what the checker is asked with what the lesson asks.

package tutor

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// joints stand between the lines of generated texts.
var joints = []string{"; ", "\n", ", ", " and ", " & ", " => ", " -> ", " → ", " ⇒ ", " ∴ ", ", so ", " therefore ", ". Hence ", "  ", ";\n", "\nb) "}

// spoilings make a line wrong, or something else than a line.
var spoilings = []func(string) string{
	func(s string) string { return strings.NewReplacer("sin", "cos", "cos", "sin").Replace(s) },
	func(s string) string { return strings.Replace(s, "= ", "= -", 1) },
	func(s string) string { return strings.Replace(s, "= ", "= 2 ", 1) },
	func(s string) string { return s + " + 1" },
	func(s string) string { _, right, _ := strings.Cut(s, "= "); return right },
	func(s string) string { return "Z9 = 4" },
	func(s string) string { return "(" + s },
	func(s string) string { return "ΣFx = 0" },
	func(s string) string { return "1 = 1" },
}

// generator writes texts of several lines for a lesson.
type generator struct {
	*rand.Rand
	l *Lesson
}

// text is a text for what is in hand: the right lines of some items, some of them
// spoiled, some from a later stage.
func (g generator) text() string {
	stage, item, _ := g.l.InHand()
	if stage == checker.Diagram {
		return answer(g.l, stage, item)
	}
	var parts []string
	open := g.l.open(stage)
	for range 1 + g.IntN(4) {
		at, name := stage, open[g.IntN(len(open))]
		if g.IntN(5) == 0 {
			at = checker.Stages[1+g.IntN(4)]
			if asked := g.l.asked(at); len(asked) > 0 {
				name = asked[g.IntN(len(asked))]
			}
		}
		if asked := g.l.asked(at); len(asked) == 0 {
			continue
		}
		line := answer(g.l, at, name)
		if g.IntN(3) == 0 {
			line = spoilings[g.IntN(len(spoilings))](line)
		}
		parts = append(parts, line)
	}
	var b strings.Builder
	for i, p := range parts {
		if i > 0 {
			b.WriteString(joints[g.IntN(len(joints))])
		}
		b.WriteString(p)
	}
	return b.String()
}

// call is one question to the checker with its answer.
type call struct {
	a      checker.Answer
	before []checker.Answer
	report checker.Report
}

// TestLessonAndMarkAgree hands in generated texts of several lines on every problem of
// the bank, with a hint after each, and holds what the lesson says of each line against
// what a fresh checker says of the same line, given the stage, the item and the earlier
// answers that the lesson chose; and the whole text against the lesson where the lesson
// chose the stage and the item that were asked.
func TestLessonAndMarkAgree(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	d := seat(t, "")
	texts, statements, several, whole, hints := 0, 0, 0, 0, 0
	for n, h := range problems.Embedded().List() {
		var calls []call
		d.tutor.Class.Judge = func(r *checker.Reference, a checker.Answer, before []checker.Answer) checker.Report {
			report := r.Mark(a, before)
			calls = append(calls, call{a, append([]checker.Answer(nil), before...), report})
			return report
		}
		l := open(t, d, h.ID)
		fresh, err := checker.New(l.Problem.System)
		if err != nil {
			t.Fatal(err)
		}
		g := generator{rand.New(rand.NewPCG(11, uint64(n))), l}
		for range 14 {
			stage, item, isOpen := l.InHand()
			if !isOpen {
				break
			}
			text, before := g.text(), l.before()
			calls = nil
			echo := l.Echo(text)
			r, err := l.Check(text)
			if err != nil {
				t.Fatal(err)
			}
			if r.Line == nil {
				continue
			}
			texts++
			name := fmt.Sprintf("%s, %s %q: %q", h.ID, stage, item, r.Line.AsTyped)
			if r.Line.Fault != nil {
				t.Fatalf("%s: %v", name, r.Line.Fault)
			}
			all := r.Line.Statements()
			if len(all) > 1 {
				several++
			}
			chosen := make([]call, len(all))
			for i, one := range all {
				statements++
				chosen[i] = checkStatement(t, name, fresh, calls, r.Line.AsTyped, one)
			}
			checkEcho(t, name, stage, echo, all)
			together := fresh.Mark(checker.Answer{Stage: stage, Item: item, Text: r.Line.AsTyped}, before)
			whole += checkWhole(t, name, stage, item, together, all, chosen)
			checkReplay(t, name, l)
			if hint, err := l.Hint(); err != nil || hint != nil && (hint.Fault != nil || hint.Message == "") {
				t.Fatalf("%s: the hint is %+v, %v", name, hint, err)
			} else if hint != nil {
				hints++
			}
			if l.StageDone(stage) || g.IntN(3) > 0 {
				continue
			}
			for _, name := range l.open(stage) { // go on, so that later stages are seen
				if _, err := l.Check(answer(l, stage, name)); err != nil {
					t.Fatal(err)
				}
			}
		}
	}
	t.Logf("%d texts, %d of them with several lines, %d lines, %d judged alike in the whole text, %d hints", texts, several, statements, whole, hints)
	if texts < 700 || several < 400 || whole < 400 || hints < 500 {
		t.Error("these are too few")
	}
}

// checkStatement wants a statement to be what the checker says of its line alone.
func checkStatement(t *testing.T, name string, fresh *checker.Reference, calls []call, text string, one checker.Report) call {
	t.Helper()
	for _, c := range calls {
		if c.a.Text != one.Text || c.a.Stage != one.Stage || c.report.Verdict != one.Verdict || c.report.Code != one.Code || c.report.Item != one.Item || c.report.Read != one.Read {
			continue
		}
		again := fresh.Mark(c.a, c.before)
		if len(again.Each) > 0 {
			t.Errorf("%s: the line %q alone is %d lines", name, one.Text, len(again.Each))
		}
		if again.Verdict != one.Verdict || again.Code != one.Code || again.About != one.About || again.Read != one.Read ||
			one.Void == nil && !reflect.DeepEqual(again.Settles, one.Settles) {
			t.Errorf("%s: of %q the lesson says %s %s %q %v, the checker %s %s %q %v", name, one.Text,
				one.Verdict, one.Code, one.About, one.Settles, again.Verdict, again.Code, again.About, again.Settles)
		}
		runes := []rune(text)
		if one.From < 0 || one.To > len(runes) || one.From > one.To || one.Pos < 0 || one.End > len(runes) {
			t.Errorf("%s: %q is said to stand from %d to %d, its place is %d to %d", name, one.Text, one.From, one.To, one.Pos, one.End)
		}
		return c
	}
	t.Errorf("%s: nobody asked about %q, %s %s", name, one.Text, one.Verdict, one.Code)
	return call{}
}

// checkEcho wants the read-back of a half-typed text to be what was judged.
func checkEcho(t *testing.T, name string, stage checker.Stage, echo string, all []checker.Report) {
	t.Helper()
	var read []string
	for _, one := range all {
		if one.Read == "" || one.Stage != stage || one.Verdict != checker.Right {
			return
		}
		read = append(read, one.Read)
	}
	if said := strings.Join(read, "; "); said != echo && !strings.Contains(said, "/") {
		t.Errorf("%s: is read back as %q and judged as %q", name, echo, said)
	}
}

// checkWhole compares the judgement of the whole text; it returns how many lines could be
// compared.
func checkWhole(t *testing.T, name string, stage checker.Stage, item string, together checker.Report, all []checker.Report, chosen []call) int {
	t.Helper()
	each := together.Each
	if each == nil {
		each = []checker.Report{together}
	}
	if len(each) != len(all) {
		t.Errorf("%s: the lesson finds %d lines, the checker %d", name, len(all), len(each))
		return 0
	}
	same := 0
	for i, one := range all {
		if each[i].Text != one.Text || each[i].From != one.From || each[i].To != one.To {
			t.Errorf("%s: line %d is %q for the lesson, %q for the checker", name, i, one.Text, each[i].Text)
		}
		if one.Stage != stage || chosen[i].a.Item != item && !(stage == checker.Components && one.Item == each[i].Item) {
			break // from here on the lesson took something for said that the checker did not
		}
		if each[i].Verdict != one.Verdict || each[i].Code != one.Code {
			t.Errorf("%s: of line %d, %q, the lesson says %s %s, the checker %s %s", name, i, one.Text, one.Verdict, one.Code, each[i].Verdict, each[i].Code)
		}
		same++
	}
	return same
}

// checkReplay wants the same page of the same entries.
func checkReplay(t *testing.T, name string, l *Lesson) {
	t.Helper()
	page, err := l.desk.tutor.Review(l.attempt.Entries)
	if err != nil {
		t.Fatal(err)
	}
	s, i, o := l.InHand()
	if s2, i2, o2 := page.InHand(); s != s2 || i != i2 || o != o2 {
		t.Errorf("%s: in hand is %s %q, after coming back %s %q", name, s, i, s2, i2)
	}
}

// TestHintAfterAnArrow asks for a hint after a refused conclusion, which once took another
// part of the text for it than there was.
func TestHintAfterAnArrow(t *testing.T) {
	for _, joint := range joints {
		l := open(t, seat(t, ""), "canal-lantern")
		handIn(t, l, lantern[:4]...)
		r, err := l.Check("T1 cos α = T2 cos β" + joint + "T1 = T2 sin β/cos α")
		if err != nil || r.Line.Fault != nil || len(r.Line.Statements()) != 2 {
			t.Fatalf("%q: %+v, %v", joint, r.Line, err)
		}
		if h, err := l.Hint(); err != nil || h == nil || h.Fault != nil || h.Message == "" {
			t.Errorf("%q: the hint is %+v, %v", joint, h, err)
		}
		wantStage := checker.YSum // the next sum, but a conclusion is about what it is drawn from
		if r.Line.Statements()[1].Concludes {
			wantStage = checker.XSum
		}
		if got := r.Line.Statements()[1].Stage; got != wantStage || strings.Contains(joint, "=>") && got != checker.XSum {
			t.Errorf("%q: the second line is judged for %s", joint, got)
		}
	}
}

// TestFaultSpoilsOneLine lets the checker fail on one text: the lesson says so, keeps the
// line, and goes on, also when it is opened again.
func TestFaultSpoilsOneLine(t *testing.T) {
	d := seat(t, "")
	d.tutor.Class.Judge = func(r *checker.Reference, a checker.Answer, before []checker.Answer) checker.Report {
		if strings.Contains(a.Text, "T1 sin 35 = T2") {
			panic("on purpose")
		}
		return r.Mark(a, before)
	}
	l := open(t, d, "canal-lantern")
	handIn(t, l, lantern[:4]...)
	r, err := l.Check("T1 sin 35 = T2 sin 50")
	if err != nil || r.Line == nil || r.Line.Fault == nil || r.Line.Verdict != checker.Unread || r.Line.Message != saidFault {
		t.Fatalf("%+v, %v", r.Line, err)
	}
	if h, err := l.Hint(); err != nil || h == nil || h.Message == "" || h.Fault != nil {
		t.Errorf("the hint after it is %+v, %v", h, err)
	}
	page, err := d.tutor.Review(l.attempt.Entries)
	if err != nil || len(page.Lines()) != 6 {
		t.Fatalf("coming back fails: %v", err)
	}
	handIn(t, l, lantern[4:]...)
	if !l.Solved() {
		t.Error("the lesson does not go on")
	}
	var kept []string
	for e, err := range d.Record().Entries(record.Filter{}) {
		if err != nil {
			t.Fatal(err)
		}
		if e.Kind == record.Answer {
			kept = append(kept, e.Text)
		}
	}
	if len(kept) != len(lantern)+1 || kept[4] != "T1 sin 35 = T2 sin 50" {
		t.Errorf("kept is %q", kept)
	}
}
