// Inside the package: it solves a problem as the draw does.

package problems

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/checker/statics"
)

func valueIn(t *testing.T, p *Problem, name string) float64 {
	t.Helper()
	s, err := solve(p.System)
	if err != nil {
		t.Fatal(err)
	}
	return s.value(name)
}

// An angle that follows from lengths, sizes made equal, what letters mean, a mistake
// to watch for, and directions as students write them.
func TestFormulasEqualSizesAndWords(t *testing.T) {
	p := file(t, "testdata/read/lane-sign.yaml")
	if want := 12 * 9.8 / 2 / math.Sin(math.Atan(0.9/1.3)); math.Abs(valueIn(t, p, "T")-want) > 1e-9 {
		t.Errorf("T is %v, want %v", valueIn(t, p, "T"), want)
	}
	w := p.System.Words
	if w.Meaning["alpha"] != "angle of each cable above the horizontal" || w.ByOn("", "T1") != "left cable" {
		t.Errorf("%+v", w)
	}
	ref, err := p.Reference()
	if err != nil || len(ref.Watched) != 1 || ref.Watched[0].Stage != checker.YSum {
		t.Errorf("%v, %v", ref.Watched, err)
	}
	for _, line := range []string{"2 T sin alpha = w", "2 T h/sqrt(h^2 + a^2) = m g"} {
		if report := ref.Mark(checker.Answer{Stage: checker.YSum, Text: line}, nil); report.Verdict != checker.Right {
			t.Errorf("%s: %+v", line, report)
		}
	}
}

// Of several mistakes that a line can be, the first in the list is told; its hints come
// before ours.
func TestFirstWatchedMistakeIsTold(t *testing.T) {
	ref, err := file(t, "testdata/read/lane-sign.yaml").Reference()
	if err != nil {
		t.Fatal(err)
	}
	ref = ref.Watching([]checker.Own{
		{Stage: checker.YSum, Typed: "T = w", Say: "Two cables pull up here.", Hints: []string{"Look at the ring."}},
		{Stage: checker.YSum, Typed: "T = m g", Say: "Each cable has a component."},
	})
	line := checker.Answer{Stage: checker.YSum, Text: "T = w"}
	report := ref.Mark(line, nil)
	if report.Message != "Two cables pull up here." {
		t.Errorf("%+v", report)
	}
	if first, second := ref.Hint(line, report, 1), ref.Hint(line, report, 2); first != "Look at the ring." || second == first || second == "" {
		t.Errorf("%q, then %q", first, second)
	}
}

// One tilt for all: the body that hangs beside the slope has level axes, and weights
// point straight down by themselves.
func TestHangingBodyHasLevelAxes(t *testing.T) {
	p := file(t, "testdata/read/crate-and-pail.yaml")
	if want := 12 * math.Sin(25*math.Pi/180); math.Abs(valueIn(t, p, "M")-want) > 1e-9 {
		t.Errorf("M is %v, want %v", valueIn(t, p, "M"), want)
	}
	if pail, _ := p.System.Body("pail"); pail.Tilt != nil {
		t.Error("the pail has turned axes")
	}
}

// With x to the left the components along x change their sign and nothing else does.
func TestXToTheLeft(t *testing.T) {
	p := file(t, "testdata/read/box-to-the-left.yaml")
	cos, sin := math.Cos(25*math.Pi/180), math.Sin(25*math.Pi/180)
	if want := 0.4 * 12 * 9.8 / (cos + 0.4*sin); math.Abs(valueIn(t, p, "T")-want) > 1e-9 {
		t.Errorf("T is %v, want %v", valueIn(t, p, "T"), want)
	}
	pull, _ := p.System.Force("T")
	if x, y := pull.Factor(statics.X).Sign, pull.Factor(statics.Y).Sign; x != 1 || y != 1 || pull.Points != (statics.Side{-1, 1}) {
		t.Errorf("%d, %d, %v", x, y, pull.Points)
	}
}

// A kept file was accepted by the rules of its time.
func TestKeptFilesAreHeldToOldRulesOnly(t *testing.T) {
	data := []byte(`id: quay-bell
title: A bell over the quay
topic: two-strings
level: 1
text: A bell hangs on two cords, {alpha} and {beta} above the horizontal.
given: {m: 3.2 kg, alpha: 35 deg, beta: 50 deg, k: 40 N/m}
forces:
  - {name: T1, kind: tension, points: up left,  angle: alpha, from: x}
  - {name: T2, kind: tension, points: up right, angle: beta,  from: x}
  - {name: w,  kind: weight,  points: down, size: m*g}
find: [T1, T2]
`)
	if p, found := Read("a", data); p != nil || len(found) != 2 {
		t.Errorf("%v", found)
	}
	negative := bytes.Replace(data, []byte("k: 40 N/m"), []byte("k: -4 kg"), 1)
	command := bytes.Replace(data, []byte("k: 40 N/m"), []byte("quit: 4 kg"), 1)
	for _, kept := range [][]byte{data, negative, command} {
		if p, found := ReadSaved("a", kept); p == nil {
			t.Error(found)
		}
	}
}

// Words can be mended without changing anybody's numbers.
func TestNumbersDoNotDependOnWords(t *testing.T) {
	const one = `id: quay-bell
title: A bell over the quay
topic: two-strings
level: 1
text: A bell of mass {m} hangs on two cords, {alpha} and {beta} above the horizontal.
given: {m: 3.2 kg, alpha: 35 deg, beta: 50 deg}
forces:
  - {name: T1, kind: tension, points: up left,  angle: alpha, from: x}
  - {name: T2, kind: tension, points: up right, angle: beta,  from: x}
  - {name: w,  kind: weight,  points: down, size: m*g}
find: [T1, T2]
vary: {m: 1.5 to 5.0 step 0.1, alpha: 20 to 70 step 1, beta: 20 to 70 step 1}
`
	const same = `id: quay-bell
title: The bell
topic: one-line
level: 3
notes: something else
text: Two cords, at {beta} and {alpha}, carry {m}.
meaning: {m: mass of the bell}
vary: {beta: 20 to 70 step 1, m: 1.5 to 5.0 step 0.1, alpha: 20 to 70 step 1}
body: bell
find: [T2, T1]
given: {beta: 50 deg, m: 3.2 kg, alpha: 35 deg, g: 9.8 m/s^2}
figure: {T1: post}
forces:
  - {name: w,  kind: weight, size: m * g}
  - {name: T2, kind: tension, by: right cord, points: up right, angle: beta,  from: x}
  - {name: T1, kind: tension, points: up-left, angle: alpha, from: x}
watch: [{stage: x-sum, typed: T1 = T2, say: Look at the angles.}]
`
	read := func(text string) *Problem {
		p, found := Read("a", []byte(text))
		if p == nil {
			t.Fatal(found.Err())
		}
		return p
	}
	p, q := read(one), read(same)
	if p.Numbers != q.Numbers {
		t.Error("other words give other numbers")
	}
	a, _ := p.Draw(Seed{Class: "3b", Student: "ada"})
	b, _ := q.Draw(Seed{Class: "3b", Student: "ada"})
	if a.Copy != b.Copy || a.Copy == "" {
		t.Errorf("%q and %q", a.Copy, b.Copy)
	}
	for _, change := range [][2]string{{"35 deg", "36 deg"}, {"step 0.1", "step 0.2"}, {"find: [T1, T2]", "find: [T1]"}, {"from: x}\n  - {name: w", "from: y}\n  - {name: w"}} {
		other := strings.Replace(one, change[0], change[1], 1)
		if r := read(other); r.Numbers == p.Numbers {
			t.Errorf("%v does not change the numbers", change)
		}
	}
}
