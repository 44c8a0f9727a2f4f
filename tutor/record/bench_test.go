// Inside the package: it uses the records of record_test.go.

package record

import (
	"fmt"
	"iter"
	"path/filepath"
	"runtime"
	"sync/atomic"
	"testing"
)

func BenchmarkOpen(b *testing.B) {
	path := filepath.Join(b.TempDir(), "record.db")
	r := mustOpen(b, path)
	if _, err := r.Merge(made(3_000, 1)); err != nil {
		b.Fatal(err)
	}
	r.Close()
	for b.Loop() {
		r, err := Open(path, Options{})
		if err != nil {
			b.Fatal(err)
		}
		r.Close()
	}
}

func BenchmarkOpenForeign(b *testing.B) {
	path := filepath.Join(b.TempDir(), "record.db")
	r := mustOpen(b, path)
	if _, err := r.Merge(made(3_000, 1)); err != nil {
		b.Fatal(err)
	}
	r.Close()
	for b.Loop() {
		r, err := OpenForeign(path)
		if err != nil {
			b.Fatal(err)
		}
		r.Close()
	}
}

// One commit is one synchronised write: what is measured is the disk.
func BenchmarkAppend(b *testing.B) {
	r := mustOpen(b, filepath.Join(b.TempDir(), "record.db"))
	for b.Loop() {
		mustAppend(b, r, Entry{Student: "k7", Kind: Answer, Problem: "pier-sign", Stage: "x-sum", Text: "T1 cos 35 = T2 cos 50"})
	}
}

// Two hundred students write at once, through one host and through two.
func BenchmarkAppendAtOnce(b *testing.B) {
	for _, hosts := range []int{1, 2} {
		b.Run(fmt.Sprint("file, hosts=", hosts), func(b *testing.B) {
			path := filepath.Join(b.TempDir(), "record.db")
			appendAtOnce(b, hosts, path, "")
		})
		b.Run(fmt.Sprint("database, hosts=", hosts), func(b *testing.B) {
			location, book := bookOf(b)
			appendAtOnce(b, hosts, location, book)
		})
	}
}

func appendAtOnce(b *testing.B, hosts int, location, book string) {
	var open []*Record
	for i := range hosts {
		r, err := Open(location, Options{Book: book, Host: fmt.Sprint("host ", i)})
		must(b, err)
		defer r.Close()
		open = append(open, r)
	}
	var writers atomic.Int64
	b.SetParallelism(200 / runtime.GOMAXPROCS(0))
	b.RunParallel(func(more *testing.PB) {
		n := int(writers.Add(1))
		for more.Next() {
			mustAppend(b, open[n%hosts], Entry{Student: fmt.Sprint("s", n), Kind: Answer, Problem: "pier-sign", Stage: "x-sum", Text: "T1 cos 35 = T2 cos 50"})
		}
	})
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "entries/s")
}

const many = 100_000

func BenchmarkMerge(b *testing.B) {
	for b.Loop() {
		r := mustOpen(b, filepath.Join(b.TempDir(), "record.db"))
		if sum, err := r.Merge(made(many, 140)); err != nil || sum.Added != many {
			b.Fatal(sum, err)
		}
		r.Close()
	}
	b.ReportMetric(float64(b.N*many)/b.Elapsed().Seconds(), "entries/s")
}

func BenchmarkEntries(b *testing.B) {
	r := mustOpen(b, filepath.Join(b.TempDir(), "record.db"))
	if _, err := r.Merge(made(many, 140)); err != nil {
		b.Fatal(err)
	}
	for name, f := range map[string]Filter{
		"all":     {},
		"student": {Student: "s7"},
		"place":   {Student: "s7", Problem: "problem-7", Kinds: []string{Answer}},
		"kind":    {Kinds: []string{Accepted}},
	} {
		b.Run(name, func(b *testing.B) {
			n := 0
			for b.Loop() {
				n += count(b, r.Entries(f))
			}
			b.ReportMetric(float64(n)/float64(b.N), "entries/op")
		})
	}
}

func count(b *testing.B, entries iter.Seq2[Entry, error]) (n int) {
	for _, err := range entries {
		if err != nil {
			b.Fatal(err)
		}
		n++
	}
	return n
}
