// Inside the package: it asks the splitter whether a text is made of separators and labels.

package lines

import (
	"bufio"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"unicode"
)

// ring is the vocabulary of a problem with two strings, a weight and a normal force.
var ring = Vocabulary{
	Letter: func(text string) bool {
		return slices.Contains(strings.Fields("T1 T2 T_1 T_2 T₁ T₂ T1x T1y T2x T2y wx wy w m g N s α β alpha beta so"), text)
	},
	Component: func(text string) bool { return slices.Contains(strings.Fields("T1x T1y T2x T2y wx wy"), text) },
	Body:      func(text string) bool { return text == "block" },
	Heading:   func(text string) bool { return text == "ΣFx = 0" || text == "ΣFy = 0" },
}

// TestLines reads testdata/lines.txt: a text, and indented below it the lines that are in
// it, each as "text", with "body|" in front where a body is named and "=> " where it is a
// conclusion. In the text ⏎ is a new line.
func TestLines(t *testing.T) {
	file, err := os.Open("testdata/lines.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var text string
	var want []string
	cases := 0
	check := func() {
		if text == "" {
			return
		}
		cases++
		all, _ := Of(strings.ReplaceAll(text, "⏎", "\n"), ring)
		if got := shown(all); !slices.Equal(got, want) {
			t.Errorf("%s\n got  %q\n want %q", text, got, want)
		}
	}
	for in := bufio.NewScanner(file); in.Scan(); {
		switch line := in.Text(); {
		case strings.HasPrefix(line, "#") || strings.TrimSpace(line) == "":
		case strings.HasPrefix(line, "\t"):
			want = append(want, strings.TrimPrefix(line, "\t"))
		default:
			check()
			text, want = line, nil
		}
	}
	check()
	if cases < 60 {
		t.Fatalf("only %d cases were found", cases)
	}
}

func shown(all []Line) []string {
	var texts []string
	for _, l := range all {
		text := l.Text
		if l.Body != "" {
			text = l.Body + "|" + text
		}
		if l.Concludes {
			text = "=> " + text
		}
		texts = append(texts, text)
	}
	return texts
}

// TestSpans holds each line against the place in the text that it says it has.
func TestSpans(t *testing.T) {
	text := "a) T1x = -T1 cos α → T1x = 5; Answer: T2x = wx = 0"
	all, ok := Of(text, ring)
	if !ok || len(all) != 4 {
		t.Fatalf("%q", shown(all))
	}
	var spans []string
	for _, l := range all {
		from, to := l.Span()
		spans = append(spans, string([]rune(text)[from:to]))
	}
	want := []string{"T1x = -T1 cos α", "T1x = 5", "T2x = wx = 0", "wx = 0"}
	if !slices.Equal(spans, want) {
		t.Errorf("%q, want %q", spans, want)
	}
	if at := all[2].Place(strings.Index(all[2].Text, "0")); string([]rune(text)[at]) != "0" {
		t.Errorf("the zero is found at %d of %q", at, text)
	}
}

func TestManyLines(t *testing.T) {
	for n, want := range map[int]bool{1: true, 40: true, 41: false, 50_000: false} {
		if all, ok := Of(strings.Repeat("T1 = 5;", n), ring); ok != want || ok && len(all) != n {
			t.Errorf("of %d lines %d are found, %v", n, len(all), ok)
		}
	}
	if _, ok := Of(strings.Repeat("T1 = ", 300_000), ring); ok {
		t.Error("a text of a million characters is taken for a few lines")
	}
}

// fuzzed are pieces that texts are made of.
var fuzzed = []string{
	"T1x = -T1 cos α", "T2x = wx = 0", "T1 = 20.2 N  T2 = 25.8 N", "T1 => T2", "a) T1 = 5 N b) w = 3", "ΣFx = 0\nT1 = w", "ΣFx:\nT1 = w",
	"T1=20.2N,T2=25,8N", "so so T1 = 5", "block: T1 = 5", "2. T2 = 5. T1 = 6", "T1,x = 5,x = 3", "(T1, T2); [w; x)", "w &= 5 \\\\ T1 &= 3", "=", ":", "T1x = 0 T1y = 5",
	"1,200 N and 1.2", "\x1b[0;31mT1", "and", "T1x = T2x = wx = T1 = 5 N T2 = 3", "= => =", "Answer: 1) (2) T1 = 3", "T1:\n5 N",
}

// FuzzLines holds: the lines are in order and inside the text, nothing is lost but what
// separates and labels, a line alone is that line, and lines put together again are the
// same lines.
func FuzzLines(f *testing.F) {
	for i, a := range fuzzed {
		f.Add(a)
		f.Add(a + "; " + fuzzed[(i+5)%len(fuzzed)])
	}
	f.Fuzz(func(t *testing.T, text string) {
		all, ok := Of(text, ring)
		if !ok {
			return
		}
		clean := []rune(Clean(text))
		covered := make([]bool, len(clean))
		last := 0
		for _, l := range all {
			from, to := l.Span()
			if from < last || to <= from || to > len(clean) {
				t.Fatalf("%q: a line from %d to %d behind %d of %d", text, from, to, last, len(clean))
			}
			last = from
			for i := range []rune(l.Text) {
				if at := l.Place(i); at < from || at >= to {
					t.Fatalf("%q: rune %d of %q is said to be at %d", text, i, l.Text, at)
				}
			}
			for i := from; i < to; i++ {
				covered[i] = true
			}
			if again, _ := Of(l.Text, ring); len(again) != 1 || again[0].Text != l.Text {
				t.Fatalf("%q: the line %q alone is %q", text, l.Text, shown(again))
			}
		}
		lost := strings.Map(func(r rune) rune {
			if unicode.IsSpace(r) {
				return -1
			}
			return r
		}, uncovered(clean, covered))
		if len(all) == 0 && strings.Trim(lost, " .;,&") != "" && !onlySeparators(text) {
			t.Fatalf("%q: nothing is read of it", text)
		}
		var texts []string
		for _, l := range all {
			texts = append(texts, l.Text)
		}
		again, _ := Of(strings.Join(texts, "\n"), ring)
		var same []string
		for _, l := range again {
			same = append(same, l.Text)
		}
		if !slices.Equal(texts, same) {
			t.Fatalf("%q: %q put together again is %q", text, texts, same)
		}
	})
}

func uncovered(text []rune, covered []bool) string {
	var rest []rune
	for i, r := range text {
		if !covered[i] {
			rest = append(rest, r)
		}
	}
	return string(rest)
}

// onlySeparators reports whether a text is made of nothing but separators and labels.
func onlySeparators(text string) bool {
	s := newSplitter(text, ring)
	s.split()
	for _, p := range s.pieces {
		if !s.label(p.trimmed()).isEmpty() {
			return false
		}
	}
	return true
}

// forceful says that an entry names a force and a side.
func forceful(entry string) bool {
	fields := strings.Fields(strings.ToLower(entry))
	sides := []string{"up", "down", "left", "right", "to"}
	return len(fields) > 0 && !slices.Contains(sides, fields[0]) && slices.ContainsFunc(fields, func(w string) bool { return slices.Contains(sides[:4], w) })
}

func TestForces(t *testing.T) {
	for text, want := range map[string]string{
		"T1 up left; T2 up right; w down":                                        "[T1 up left|T2 up right|w down]",
		"tension up left. strut right. weight down.":                             "[tension up left|strut right|weight down]",
		"spring pulls up and gravity pulls down":                                 "[spring pulls up|gravity pulls down]",
		"T1 up and to the left\nw down":                                          "[T1 up and to the left|w down]",
		"weight pulls down and tension pulls up left and the strut pushes right": "[weight pulls down|tension pulls up left|the strut pushes right]",
		"T1 right and up, w down":                                                "[T1 right and up|w down]",
		"T1 and T2 up":                                                           "[T1 and T2 up]",
		" ; ":                                                                    "[]",
	} {
		var got []string
		for _, l := range Forces(text, forceful) {
			got = append(got, l.Text)
			if from, to := l.Span(); string([]rune(text)[from:to]) != l.Text {
				t.Errorf("%q is said to stand from %d to %d of %q", l.Text, from, to, text)
			}
		}
		if said := fmt.Sprint("[", strings.Join(got, "|"), "]"); said != want {
			t.Errorf("%q is %s, want %s", text, said, want)
		}
	}
}
