package checker_test

import (
	"flag"
	"hash/fnv"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
)

// The long run: go test ./checker -run Soundness -soundness 1000 -v
var (
	soundness     = flag.Int("soundness", sampled, "right and wrong lines for each problem of the bank")
	soundnessLog  = flag.String("soundness-log", "", "file for every wrong judgement that the search finds")
	soundnessSeed = flag.Uint64("soundness-seed", 1, "seed of the search for wrong judgements")
	soundnessOnly = flag.String("soundness-only", "", "search this problem alone")
	soundnessDraw = flag.String("soundness-class", "", "search the numbers that this class code draws")
)

// slow is how long one answer may take a student to wait for. The search counts
// what is slower; it does not fail, because the machine may be busy.
const slow = 10 * time.Millisecond

// everyProblem returns every problem of the bank, of the published examples, and of
// the labels.
func everyProblem(t testing.TB) []*problems.Problem {
	t.Helper()
	published, found := problems.OpenFolder("../testdata/published")
	if err := found.Err(); err != nil {
		t.Fatal(err)
	}
	known, err := others()
	if err != nil {
		t.Fatal(err)
	}
	var all []*problems.Problem
	for _, bank := range []*problems.Bank{known, published} {
		for _, h := range bank.List() {
			p, err := bank.Get(h.ID)
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, p)
		}
	}
	if len(all) < 100 {
		t.Fatalf("only %d problems", len(all))
	}
	return all
}

// searched is what the search looks through: the problem as written, or one
// student's copy.
func searched(t testing.TB) []*problems.Problem {
	t.Helper()
	var all []*problems.Problem
	for _, p := range everyProblem(t) {
		if *soundnessOnly != "" && *soundnessOnly != p.ID {
			continue
		}
		if *soundnessDraw != "" {
			drawn, err := p.Draw(problems.Seed{Class: *soundnessDraw, Student: "search"})
			if err != nil {
				t.Fatal(err)
			}
			p = drawn
		}
		all = append(all, p)
	}
	return all
}

// TestSoundness searches for a right line that is refused and a wrong line that is
// accepted.
func TestSoundness(t *testing.T) {
	y := &tally{confusion: map[string]map[checker.Code]int{}}
	all := searched(t)
	for _, p := range all {
		newSearch(t, p, y).run(*soundness)
	}
	t.Logf("%d right lines, %d refused, %d called almost; %d wrong lines, %d accepted; %d settle the wrong unknowns; %d panics, %d slower than %v",
		y.right, y.rejects, y.almost, y.wrong, y.accepts, y.unsettled, y.panics, y.slow, slow)
	t.Log(y.table())
	if *soundnessLog != "" {
		if err := os.WriteFile(*soundnessLog, []byte(strings.Join(y.found, "\n")+"\n"), 0o600); err != nil {
			t.Error(err)
		}
	}
	if len(all) == 0 || y.right < *soundness*len(all) || y.wrong < *soundness*len(all) {
		t.Error("the search wrote hardly any lines")
	}
	if y.rejects+y.accepts+y.almost+y.unsettled+y.panics > 0 {
		y.found = slices.DeleteFunc(y.found, func(s string) bool { return strings.HasPrefix(s, "code") || strings.HasPrefix(s, "slow") })
		t.Errorf("wrong judgements, of which the first are:\n%s", strings.Join(y.found[:min(len(y.found), 40)], "\n"))
	}
}

// search writes lines for one problem.
type search struct {
	*bench
	*rand.Rand
	tally  *tally
	before []checker.Answer
	worlds []env
	wrong  []wrongNumber
}

func newSearch(t testing.TB, p *problems.Problem, y *tally) *search {
	h := fnv.New64a()
	h.Write([]byte(p.ID))
	s := &search{bench: newBench(t, p), Rand: rand.New(rand.NewPCG(h.Sum64(), *soundnessSeed)), tally: y}
	w := s.newWriter(s.Rand, "")
	for range 4 {
		s.worlds = append(s.worlds, w.open())
	}
	for i := range s.sums {
		for j := range s.sums[i].terms {
			s.sums[i].terms[j].letter = s.sums[i].terms[j].force.Name + s.sums[i].axis.String()
		}
	}
	s.wrong = s.wrongNumbers()
	return s
}

func (s *search) run(n int) {
	for want := s.tally.right + n; s.tally.right < want; {
		s.oneRight()
	}
	for want := s.tally.wrong + n; s.tally.wrong < want; {
		s.oneWrong()
	}
}

// mark judges a text, and counts panics and delays.
func (s *search) mark(stage checker.Stage, item, text string) (report checker.Report, ok bool) {
	defer func() {
		if r := recover(); r != nil {
			s.tally.panics++
			s.tally.note("panic %s %s %s %q: %v", s.id, stage, item, text, r)
			ok = false
		}
	}()
	start := time.Now()
	report = s.ref.Mark(checker.Answer{Stage: stage, Item: item, Text: text}, s.before)
	if d := time.Since(start); d > slow {
		s.tally.slow++
		s.tally.note("slow %s %s %s %q: %v", s.id, stage, item, text, d)
	}
	return report, true
}

func stageOf(axis statics.Axis) checker.Stage {
	return [...]checker.Stage{checker.XSum, checker.YSum}[axis]
}

func (s *search) someSum() *sum {
	for {
		if u := &s.sums[s.IntN(len(s.sums))]; len(u.terms) > 0 {
			return u
		}
	}
}

func (s *search) oneRight() {
	switch k := s.IntN(20); {
	case k < 1:
		s.bound(false)
	case k < 7:
		u := s.someSum()
		s.rightSum(s.newWriter(s.Rand, u.body), u)
	case k < 11:
		all := s.components()
		c := all[s.IntN(len(all))]
		w := s.newWriter(s.Rand, c.body.Name)
		if text, ok := w.rightComponent(c); ok {
			s.expectRight(checker.Components, c.item, text, nil)
		}
	case k < 13:
		body := s.sys.Bodies[s.IntN(len(s.sys.Bodies))]
		w := s.newWriter(s.Rand, body.Name)
		s.expectRight(checker.Diagram, body.Name, w.diagram(w.entries(body)), nil)
	default:
		s.rightSolve(s.newWriter(s.Rand, s.onlyBody()))
	}
}

func (s *search) onlyBody() string {
	if len(s.sys.Bodies) == 1 {
		return s.sys.Bodies[0].Name
	}
	return "none of them"
}

func (s *search) rightSum(w *writer, u *sum) {
	if l := w.arrange(u.terms); w.isTrue(l, u) {
		s.expectRight(stageOf(u.axis), u.body, w.text(l, u.axis.String()), nil)
	}
}

// rightSolve writes a line of working.
func (s *search) rightSolve(w *writer) {
	if w.parts != "" && len(s.sys.Bodies) > 1 {
		w.parts = ""
	}
	var l line
	var ok bool
	switch s.IntN(6) {
	case 0, 1:
		text, settles := w.settling()
		s.expectRight(checker.Solve, "", text, settles)
		return
	case 2:
		l, ok = w.formula(s.unknowns[s.IntN(len(s.unknowns))])
	case 3:
		l, ok = w.substituted()
	case 4:
		l, ok = w.triangle()
	default:
		u := s.someSum()
		l, ok = w.arrange(u.terms), !w.nothing(u.terms)
	}
	if ok && w.isTrue(l, nil) && !w.cancels(s.sums[0].terms) && !s.bare(l) && !w.empty(l) {
		s.expectRight(checker.Solve, "", w.text(l, "x"), nil)
	}
}

// bare reports whether a line says what an unknown is without a unit.
func (s *search) bare(l line) bool {
	for i, side := range l.sides {
		other := l.sides[1-i]
		if side.op == 'v' && !s.isKnown(side) && s.isKnown(other) {
			return len(other.letters()) == 0
		}
	}
	return false
}

func (s *search) oneWrong() {
	switch k := s.IntN(20); {
	case k < 1:
		s.bound(true)
	case k < 3:
		u := s.someSum()
		if chance(s.Rand, 0.7) {
			s.spoil(u, stageOf(u.axis), u.body, u.body)
		} else {
			s.spoil(u, checker.Solve, "", s.onlyBody())
		}
	case k < 8:
		u := s.someSum()
		s.wrongSum(s.newWriter(s.Rand, u.body), u, stageOf(u.axis), u.body)
	case k < 11:
		all := s.components()
		c := all[s.IntN(len(all))]
		w := s.newWriter(s.Rand, c.body.Name)
		if text, m, ok := w.wrongComponent(c); ok {
			s.expectWrong(checker.Components, c.item, text, m)
		}
	case k < 13:
		body := s.sys.Bodies[s.IntN(len(s.sys.Bodies))]
		w := s.newWriter(s.Rand, body.Name)
		text, m := w.wrongDiagram(body)
		s.expectWrong(checker.Diagram, body.Name, text, m)
	case k < 15:
		s.wrongSum(s.newWriter(s.Rand, s.onlyBody()), s.someSum(), checker.Solve, "")
	case k < 16:
		w := s.newWriter(s.Rand, s.onlyBody())
		if l, ok := w.falseFact(); ok {
			s.expectWrong(checker.Solve, "", w.text(l, ""), mistake{})
		}
	default:
		w := s.newWriter(s.Rand, s.onlyBody())
		if text, m, ok := w.wrongAnswer(s.wrong); ok {
			s.expectWrong(checker.Solve, "", text, m)
		}
	}
}

// wrongSum writes a sum with a mistake in it that is false at rest by more than
// three parts in a hundred of its largest term.
func (s *search) wrongSum(w *writer, u *sum, stage checker.Stage, item string) {
	all := s.mistakes(*u)
	if len(all) == 0 {
		return
	}
	m := all[s.IntN(len(all))]
	w.parts, w.equal = "", false
	l := w.arrange(m.terms)
	if !(l.miss(s.at) > 0.03) || !(share(m.terms, s.at) > 0.03) || stage == checker.Solve && s.bare(l) {
		return
	}
	for _, other := range all {
		if s.alike(m.terms, other.terms, s.worlds) {
			m.codes = append(m.codes, other.codes...)
		}
	}
	s.expectWrong(stage, item, w.text(l, u.axis.String()), m)
}
