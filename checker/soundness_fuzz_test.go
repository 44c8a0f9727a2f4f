package checker_test

import (
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/problems"
)

// seeded adds every labelled answer to a fuzz target's corpus.
func seeded(f *testing.F, add func(l labelled)) {
	f.Helper()
	paths, err := filepath.Glob("../testdata/marking/*.jsonl")
	if err != nil || len(paths) == 0 {
		f.Fatalf("no labelled answers: %v", err)
	}
	for _, path := range paths {
		for i, l := range readCases(f, path) {
			if i%everyNth == 0 {
				add(l)
			}
		}
	}
}

// place finds the problem, the stage and the item that a fuzzed number means.
func place(t *testing.T, problem string, stage, item uint8) (*checker.Reference, checker.Stage, string) {
	t.Helper()
	all := problems.Embedded().List()
	if !slices.ContainsFunc(all, func(h problems.Heading) bool { return h.ID == problem }) {
		problem = all[(len(problem)*31+int(stage)*7+int(item))%len(all)].ID
	}
	ref := reference(t, problem)
	s := checker.Stages[int(stage)%len(checker.Stages)]
	items := append(ref.Items(s), "", "nothing")
	return ref, s, items[int(item)%len(items)]
}

// FuzzMark wants a verdict for any text, without panic, in bounded memory.
func FuzzMark(f *testing.F) {
	seeded(f, func(l labelled) {
		f.Add(l.Problem, uint8(slices.Index(checker.Stages, l.Stage)), uint8(len(l.Item)), l.Answer, l.Item)
	})
	for _, text := range []string{"((((((((((", strings.Repeat("(", 2000), strings.Repeat("T1+", 600), "2^9^9^9^9", "1e308*1e308", "1/0 = T1", "\x1b[2J", "0x10", "=====", ";;;;", "T1=T2=w=0=1", strings.Repeat("sin ", 400), strings.Repeat("-", 1999), "|||||", "w/2/2/2/2 sin sin sin", "1,200,300,4 N", "ΣFx ΣFy = =", "√√√√√", "T1 up left up left; w down", strings.Repeat("1,234 ", 300),
		strings.Repeat("and ", 500), strings.Repeat("T1 up and ", 200), strings.Repeat("T1 up ", 333), strings.Repeat("tension ", 250), strings.Repeat("w down, ", 250)} {
		for stage := range uint8(5) {
			f.Add("canal-lantern", stage, uint8(0), text, text)
		}
	}
	f.Fuzz(func(t *testing.T, problem string, stage, item uint8, text, before string) {
		if utf8.RuneCountInString(text) > 2000 || utf8.RuneCountInString(before) > 2000 {
			return
		}
		ref, s, it := place(t, problem, stage, item)
		earlier := []checker.Answer{{Stage: checker.Components, Item: it, Text: before}}
		answer := checker.Answer{Stage: s, Item: it, Text: text}
		first := ref.Mark(answer, earlier)
		if !slices.Contains([]checker.Verdict{checker.Right, checker.Almost, checker.Wrong, checker.Unread}, first.Verdict) {
			t.Errorf("no verdict: %+v", first)
		}
		if (first.Code == "") != (first.Verdict == checker.Right) {
			t.Errorf("%s with the code %q", first.Verdict, first.Code)
		}
		var again checker.Report
		took := uint64(enough + 1)
		// What is counted is the whole program's, and the search takes memory beside the judgement.
		for try := 0; try < 3 && took > enough; try++ {
			var was, is runtime.MemStats
			runtime.ReadMemStats(&was)
			again = ref.Mark(answer, earlier)
			runtime.ReadMemStats(&is)
			took = is.TotalAlloc - was.TotalAlloc
		}
		if took > enough {
			t.Errorf("%s %q took %d bytes", s, text, took)
		}
		if again.Verdict != first.Verdict || again.Code != first.Code {
			t.Errorf("%q: %s %s at first, then %s %s", text, first.Verdict, first.Code, again.Verdict, again.Code)
		}
	})
}

// spaceOrGroups matches a number in groups of three figures, and any other space.
var spaceOrGroups = regexp.MustCompile(`\d{1,3}(?: \d{3})+| `)

// equalsBehind and equalsBefore match an equals sign with no space in front of it, or behind it.
var (
	equalsBehind = regexp.MustCompile(`([^ ])=`)
	equalsBefore = regexp.MustCompile(`=([^ ])`)
	isLongSign   = regexp.MustCompile(`=[=<:~]|[!~:]=`)
)

// rewritings change how a text looks and not what it says.
var rewritings = []struct {
	name string
	with func(string) string
}{
	{"wider spaces", func(s string) string {
		// Inside 5 000 one space holds the number together, and two would part it.
		return "  " + spaceOrGroups.ReplaceAllStringFunc(s, func(found string) string {
			if found == " " {
				return "  "
			}
			return found
		}) + " "
	}},
	{"no-break spaces", func(s string) string { return strings.ReplaceAll(s, " ", "\u00a0") }},
	{"a true minus", func(s string) string { return strings.ReplaceAll(s, "-", "−") }},
	{"a raised dot", func(s string) string {
		if strings.Contains(s, "**") {
			return s
		}
		return strings.ReplaceAll(s, "*", "·")
	}},
	{"spaces around equals", func(s string) string {
		// A space inside a sign of two characters would make two signs of it.
		if isLongSign.MatchString(s) {
			return s
		}
		// A space more where there is one would set equations apart that stand one behind the other.
		return equalsBefore.ReplaceAllString(equalsBehind.ReplaceAllString(s, "$1 ="), "= $1")
	}},
	{"square brackets", func(s string) string { return strings.NewReplacer("(", "[", ")", "]").Replace(s) }},
	{"a direction mark", func(s string) string { return "\u200e" + s }},
}

// FuzzRewritten wants the same judgement of a text and of the same text written
// with other characters.
func FuzzRewritten(f *testing.F) {
	seeded(f, func(l labelled) {
		f.Add(l.Problem, uint8(slices.Index(checker.Stages, l.Stage)), uint8(0), l.Answer)
	})
	f.Fuzz(func(t *testing.T, problem string, stage, item uint8, text string) {
		if utf8.RuneCountInString(text) > 200 || !utf8.ValidString(text) {
			return
		}
		text = expr.Clean(text) // what is dropped unread would hide from the rewriting what stands together
		ref, s, it := place(t, problem, stage, item)
		plain := ref.Mark(checker.Answer{Stage: s, Item: it, Text: text}, nil)
		if plain.Verdict == checker.Unread {
			return
		}
		for _, r := range rewritings {
			if s == checker.Diagram && r.name == "a true minus" {
				continue // there it is a hyphen
			}
			got := ref.Mark(checker.Answer{Stage: s, Item: it, Text: r.with(text)}, nil)
			if got.Verdict != plain.Verdict || got.Code != plain.Code || got.About != plain.About || !slices.Equal(got.Settles, plain.Settles) {
				t.Errorf("%s %s %q: %s %s %q %v; with %s %q: %s %s %q %v", ref.Items(s), s, text, plain.Verdict, plain.Code, plain.About, plain.Settles,
					r.name, r.with(text), got.Verdict, got.Code, got.About, got.Settles)
			}
		}
	})
}

// TestReadBackIsJudgedAlike types what the tutor shows instead of what the student
// typed.
func TestReadBackIsJudgedAlike(t *testing.T) {
	paths, err := filepath.Glob("../testdata/marking/*.jsonl")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no labelled answers: %v", err)
	}
	for _, path := range paths {
		for _, c := range readCases(t, path) {
			ref := reference(t, c.Problem)
			got := ref.Mark(checker.Answer{Stage: c.Stage, Item: c.Item, Text: c.Answer}, c.Before)
			// What lacks its unit is shown with the unit that is asked for.
			if got.Verdict == checker.Unread || len(got.Each) > 0 || got.Code == checker.NoUnit {
				continue
			}
			again := ref.Mark(checker.Answer{Stage: c.Stage, Item: c.Item, Text: got.Read}, c.Before)
			if again.Verdict != got.Verdict || again.Code != got.Code || !slices.Equal(again.Settles, got.Settles) {
				t.Errorf("%s %s %s %q: %s %s %v; its read-back %q: %s %s %v", c.Problem, c.Stage, c.Item, c.Answer,
					got.Verdict, got.Code, got.Settles, got.Read, again.Verdict, again.Code, again.Settles)
			}
		}
	}
}
