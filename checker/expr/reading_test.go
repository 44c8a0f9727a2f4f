// Inside the package: it keeps to the bounds on the length and the depth of a line.

package expr

import (
	"math"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// letters is a vocabulary with everything that is hard: N, m, g and s are units
// as well, T is the beginning of T1, x and y end the components.
func letters() *Letters {
	l := &Letters{}
	for _, a := range []string{"alpha", "beta", "theta", "phi"} {
		l.Add(a, Angle)
	}
	l.Add("m", Mass)
	for _, a := range strings.Fields("mu g w T1 T2 T N P f k s T1x T1y T2x T2y A.T1x A.T2x") {
		l.Add(a, Plain)
	}
	return l
}

func TestReading(t *testing.T) {
	file, err := os.ReadFile("testdata/reading.txt")
	if err != nil {
		t.Fatal(err)
	}
	cases := 0
	for _, row := range strings.Split(string(file), "\n") {
		typed, want, found := strings.Cut(row, " | ")
		if !found || strings.HasPrefix(row, "#") {
			continue
		}
		cases++
		l := letters()
		reading, err := l.Read(typed)
		if err != nil {
			t.Errorf("%q: %v", typed, err)
			continue
		}
		if got := l.Print(reading.Lines[0]); got != strings.TrimSpace(want) {
			t.Errorf("%q is read as %q, want %q", typed, got, want)
		}
		again(t, l, reading.Lines[0])
	}
	if cases < 150 {
		t.Fatalf("only %d cases", cases)
	}
}

type fataler interface {
	Errorf(format string, args ...any)
}

// again checks that a printed line reads in as the same tree, at its first or at
// a later reading.
func again(t fataler, l *Letters, line Line) {
	text := l.Print(line)
	reading, err := l.Read(text)
	if err != nil {
		t.Errorf("printed %q does not read: %v", text, err)
		return
	}
	if !EqualLines(reading.Lines[0], line) {
		t.Errorf("printed %q reads as %q", text, l.Print(reading.Lines[0]))
	}
}

func TestTwoReadings(t *testing.T) {
	for _, c := range []struct{ typed, first, second string }{
		{"T = w/2 sin θ", "T = w/(2 sin θ)", "T = (w/2) sin θ"},
		{"T = mg/2k sin θ", "T = m g/(2 k sin θ)", "T = (m g/2) k sin θ"},
		{"T = 1,200 kN", "T = 1.200 kN", "T = 1200 kN"},
		{"f = 0.45 N", "f = 0.45 N", "f = 0.45·N"},
		{"w/(2 sin θ) cos φ", "(w/(2 sin θ)) cos φ", "w/(2 sin θ cos φ)"},
	} {
		l := letters()
		r, err := l.Read(c.typed)
		if err != nil || len(r.Lines) != 2 {
			t.Errorf("%q: %d readings, %v", c.typed, len(r.Lines), err)
			continue
		}
		if got := l.Print(r.Lines[0]); got != c.first {
			t.Errorf("%q is first read as %q, want %q", c.typed, got, c.first)
		}
		if got := l.Print(r.Lines[1]); got != c.second {
			t.Errorf("%q is then read as %q, want %q", c.typed, got, c.second)
		}
	}
}

func TestUnreadable(t *testing.T) {
	for _, c := range []struct {
		typed  string
		column int
	}{
		{"", 1}, {"T1 cos(", 8}, {"T1 cos 35 35 +", 11}, {"T1 +", 5}, {")T", 1},
		{"T1 = ", 6}, {"5 7", 3}, {"T # w", 3}, {"T, w", 2}, {"|T1", 1}, {"sin", 4}, {"N N/", 5},
		{strings.Repeat("(", 70) + "T" + strings.Repeat(")", 70), 0},
		{strings.Repeat("-", 200) + "T", 0},
		{strings.Repeat("sin ", 100) + "T", 0},
		{strings.Repeat("T^", 100) + "T", 0},
	} {
		_, err := letters().Read(c.typed)
		e, ok := err.(*ReadError)
		if !ok {
			t.Errorf("%q reads", c.typed)
			continue
		}
		if c.column > 0 && e.Pos+1 != c.column {
			t.Errorf("%q: column %d, want %d (%s)", c.typed, e.Pos+1, c.column, e.Message)
		}
	}
}

func TestUnknownLetters(t *testing.T) {
	for typed, want := range map[string]string{
		"T3 cos 35": "T3", "how do i do this": "how", "γ + α": "γ", "Q sin α": "Q", "T sin gamma": "γ",
	} {
		r, err := letters().Read(typed)
		if err != nil {
			t.Errorf("%q: %v", typed, err)
			continue
		}
		first := ""
		r.Lines[0].Sides[0].Walk(func(n *Node) {
			if n.Unknown && first == "" {
				first = Glyph(n.Name)
			}
		})
		if first != want {
			t.Errorf("%q: unknown %q, want %q", typed, first, want)
		}
	}
}

// tree generates what the reader can produce: no signed numbers, no degree
// marks but where an angle stands.
func tree(depth int) *rapid.Generator[*Node] {
	return rapid.Custom(func(t *rapid.T) *Node {
		if depth == 0 {
			return leaf(t)
		}
		sub := func() *Node { return tree(depth-1).Draw(t, "sub") }
		switch rapid.IntRange(0, 9).Draw(t, "op") {
		case 0:
			if n := sub(); n.Op != Neg {
				return Minus(n)
			}
		case 1, 2:
			return Join(Mul, sub(), sub())
		case 3:
			return Join(Div, sub(), sub())
		case 4:
			return Join(Add, sub(), sub())
		case 5:
			return Join(Sub, sub(), sub())
		case 6:
			return Join(Pow, sub(), leaf(t))
		case 7:
			f := rapid.SampledFrom([]string{"sin", "cos", "tan", "sqrt", "atan"}).Draw(t, "f")
			return Apply(f, sub())
		case 8:
			return &Node{Op: Size, Args: []*Node{sub()}}
		}
		return leaf(t)
	})
}

func leaf(t *rapid.T) *Node {
	if rapid.Bool().Draw(t, "number") {
		return Constant(rapid.SampledFrom([]float64{2, 0.5, 9.8, 31.36, 35, 1e-7, 0}).Draw(t, "value"))
	}
	return Letter(rapid.SampledFrom(strings.Fields("T1 T2 w m g N s alpha theta mu T1x T k")).Draw(t, "name"))
}

// Reading marks degrees, so the tree that is compared is the one that was read
// from the first print.
func TestPrintThenReadIsTheSameTree(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		l := letters()
		n := tree(rapid.IntRange(0, 4).Draw(rt, "depth")).Draw(rt, "tree")
		text := l.PrintNode(n)
		reading, err := l.Read(text)
		if err != nil {
			if len(text) > 400 {
				return
			}
			rt.Fatalf("%q does not read: %v", text, err)
		}
		if got := stripped(reading.Lines[0].Sides[0]); !Equal(got, stripped(n)) {
			rt.Fatalf("%q reads as %q", text, l.PrintNode(reading.Lines[0].Sides[0]))
		}
		again(rt, l, reading.Lines[0])
	})
}

// stripped takes the degree marks off that the reader put on.
func stripped(n *Node) *Node {
	c := n.Copy()
	if c.Op == Measured && c.Assumed {
		return stripped(c.Args[0])
	}
	if c.Assumed {
		c.Unit = ""
	}
	for i, a := range c.Args {
		c.Args[i] = stripped(a)
	}
	return c
}

func TestProgramAgreesWithGovaluate(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := tree(rapid.IntRange(0, 5).Draw(rt, "depth")).Draw(rt, "tree")
		env := map[string]float64{}
		var values []float64
		slots := map[string]int{}
		for i, name := range strings.Fields("T1 T2 w m g N s alpha theta mu T1x T k") {
			env[name] = rapid.Float64Range(-3, 3).Draw(rt, name)
			values = append(values, env[name])
			slots[name] = i
		}
		fast := Compile(n, func(s string) (int, bool) { i, ok := slots[s]; return i, ok }).Run(values)
		slow, err := n.Value(env)
		none := math.IsNaN(fast) || math.IsInf(fast, 0)
		if none != (err == ErrNoValue) || err == nil && fast != slow {
			rt.Fatalf("%s: own %v, govaluate %v (%v)", letters().PrintNode(n), fast, slow, err)
		}
	})
}

func FuzzRead(f *testing.F) {
	file, err := os.ReadFile("testdata/reading.txt")
	if err != nil {
		f.Fatal(err)
	}
	for _, row := range strings.Split(string(file), "\n") {
		typed, _, _ := strings.Cut(row, " | ")
		f.Add(typed)
	}
	f.Fuzz(func(t *testing.T, typed string) {
		l := letters()
		reading, err := l.Read(typed)
		if err != nil {
			if _, ok := err.(*ReadError); !ok {
				t.Fatalf("%T", err)
			}
			return
		}
		for _, line := range reading.Lines {
			if text := l.Print(line); len([]rune(text)) <= maxLength && !hasUnknown(line) && height(line.Sides...) < maxDepth/4 {
				again(t, l, line)
			}
		}
	})
}

// height is how deep the trees are; print may add brackets, of which only so many
// may stand inside one another.
func height(nodes ...*Node) int {
	most := 0
	for _, n := range nodes {
		most = max(most, 1+height(n.Args...))
	}
	return most
}

func hasUnknown(line Line) bool {
	found := false
	for _, s := range line.Sides {
		s.Walk(func(n *Node) { found = found || n.Unknown })
	}
	return found
}
