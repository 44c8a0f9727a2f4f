package checker_test

import (
	"slices"
	"strconv"
	"testing"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/problems"
)

// BenchmarkMark marks every given answer with its problem warm, stage by stage.
// Wrong answers include the search for the mistake.
func BenchmarkMark(b *testing.B) {
	all := readCases(b, "../testdata/marking/given.jsonl")
	for _, stage := range checker.Stages {
		var here []labelled
		for _, c := range all {
			if c.Stage == stage {
				here = append(here, c)
				reference(b, c.Problem).Mark(checker.Answer{Stage: c.Stage, Item: c.Item, Text: c.Answer}, c.Before)
			}
		}
		if len(here) == 0 {
			continue
		}
		for _, right := range []bool{true, false} {
			name := string(stage) + "/wrong"
			if right {
				name = string(stage) + "/right"
			}
			cases := slices.DeleteFunc(slices.Clone(here), func(c labelled) bool { return (c.Want.Verdict == checker.Right) != right })
			b.Run(name, func(b *testing.B) { markAll(b, cases) })
		}
	}
}

// markAll reports the mean through the benchmark and the median and the worst of
// the cases as extra figures.
func markAll(b *testing.B, cases []labelled) {
	b.ReportAllocs()
	var times []float64
	for i := 0; b.Loop(); i++ {
		c := cases[i%len(cases)]
		start := time.Now()
		reference(b, c.Problem).Mark(checker.Answer{Stage: c.Stage, Item: c.Item, Text: c.Answer}, c.Before)
		times = append(times, float64(time.Since(start).Microseconds()))
	}
	slices.Sort(times)
	b.ReportMetric(times[len(times)/2], "µs/median")
	b.ReportMetric(times[len(times)*99/100], "µs/p99")
}

// BenchmarkWorst marks lines that no mistake explains, so that every pair of
// changes is tried, with the problem warm.
func BenchmarkWorst(b *testing.B) {
	for _, c := range []struct{ name, problem, item, line string }{
		{"one body", "canal-lantern", "", "T1 sin α + T2 sin β = w + 3 T1 cos α"},
		{"two bodies", "two-knots", "A", "T1 sin α = m g + 3 T3"},
		{"bent", "three-pulls", "", "E sin φ = 3 F2 + F1"},
		{"friction", "stage-block", "", "N + P sin φ = 3 w + μ P"},
	} {
		b.Run(c.name, func(b *testing.B) {
			r := reference(b, c.problem)
			r.Mark(checker.Answer{Stage: checker.YSum, Item: c.item, Text: c.line}, nil)
			b.ReportAllocs()
			for b.Loop() {
				if got := r.Mark(checker.Answer{Stage: checker.YSum, Item: c.item, Text: c.line}, nil); got.Code != checker.Unexplained {
					b.Fatal(got)
				}
			}
		})
	}
}

// BenchmarkFirst solves a fresh problem and marks its first answer.
func BenchmarkFirst(b *testing.B) {
	p, err := problems.Embedded().Get("three-pulls")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		r, err := checker.New(p.System)
		if err != nil {
			b.Fatal(err)
		}
		r.Mark(checker.Answer{Stage: checker.XSum, Text: "F1 = F2 sin β + E cos φ"}, nil)
	}
}

// BenchmarkGovaluate evaluates the sides of every given answer once with govaluate,
// and sixteen times, for comparison with BenchmarkMark.
func BenchmarkGovaluate(b *testing.B) {
	var sides []*expr.Node
	letters := &expr.Letters{}
	values := map[string]float64{}
	for i, name := range []string{"T1", "T2", "w", "m", "g", "P", "N", "f", "mu", "T", "F1", "F2", "E", "M", "T3"} {
		letters.Add(name, expr.Plain)
		values[name] = float64(i) + 1.5
	}
	for _, name := range []string{"alpha", "beta", "theta", "phi"} {
		letters.Add(name, expr.Angle)
		values[name] = 0.6
	}
	for _, c := range readCases(b, "../testdata/marking/given.jsonl") {
		if reading, err := letters.Read(c.Answer); err == nil {
			sides = append(sides, reading.Lines[0].Sides...)
		}
	}
	for _, times := range []int{1, 16} {
		b.Run(strconv.Itoa(times), func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				for range times {
					_, _ = sides[i%len(sides)].Value(values)
				}
			}
		})
	}
}
