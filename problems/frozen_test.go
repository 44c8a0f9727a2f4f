// Inside the package: it solves every frozen draw as the draw does.

package problems

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"slices"
	"testing"

	"example.org/standstill/problems/draw"
)

// The files that hold what students' numbers come from, one JSON line for each
// problem of the bank. A line that is there is never rewritten; a problem with other
// numbers gets a new one with -update.
const (
	pathsFile = "testdata/paths.jsonl"
	bankFile  = "testdata/bankdraws.jsonl"
)

// keyOfLine is how a line is found: a problem with the numbers that it has now.
type keyOfLine struct {
	ID      string `json:"id"`
	Numbers string `json:"numbers"`
}

func keyFor(p *Problem) keyOfLine { return keyOfLine{p.ID, p.Numbers[:16]} }

// pathsOf is what the wrong paths of one problem come to on a hundred sets of its
// numbers. Keys is a hash of their names in order; Sum weighs every value, so that
// one that moves by a part in ten thousand everywhere is noticed, and computers that
// round differently agree.
type pathsOf struct {
	keyOfLine
	Solved int     `json:"solved"`
	Paths  int     `json:"paths"`
	Keys   string  `json:"keys"`
	Sum    float64 `json:"sum"`
}

func TestWrongPathsAreFrozen(t *testing.T) {
	hold(t, pathsFile, wrongPathsOf, func(got, want pathsOf) bool {
		return got.Keys == want.Keys && got.Solved == want.Solved && got.Paths == want.Paths && math.Abs(got.Sum-want.Sum) <= 1e-3
	})
}

// drawsOf is the numbers of a few students.
type drawsOf struct {
	keyOfLine
	Copies []string `json:"copies"`
}

func TestDrawsOfTheBankAreFrozen(t *testing.T) {
	hold(t, bankFile, func(t *testing.T, p *Problem) drawsOf {
		g := drawsOf{keyOfLine: keyFor(p)}
		for i := range 6 {
			own, err := p.Draw(Seed{Class: "held", Student: fmt.Sprint("student ", i%4), Repeat: i / 4})
			if err != nil {
				t.Errorf("%s: %v", p.ID, err)
				break
			}
			g.Copies = append(g.Copies, own.Copy)
		}
		return g
	}, func(got, want drawsOf) bool { return slices.Equal(got.Copies, want.Copies) })
}

// hold compares what is computed for each problem of the bank with the line of the
// file that is about it.
func hold[T any](t *testing.T, name string, compute func(*testing.T, *Problem) T, same func(got, want T) bool) {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil && !*update {
		t.Fatal(err)
	}
	held := map[keyOfLine]T{}
	for line := range bytes.Lines(data) {
		var key keyOfLine
		var want T
		if err := errors.Join(json.Unmarshal(line, &key), json.Unmarshal(line, &want)); err != nil {
			t.Fatal(err)
		}
		held[key] = want
	}
	var into bytes.Buffer
	for _, p := range bank(t) {
		got := compute(t, p)
		want, ok := held[keyFor(p)]
		switch {
		case !ok && !*update:
			t.Errorf("%s has numbers that are not in %s; -update adds them", p.ID, name)
		case !ok:
			want = got
		case !same(got, want):
			t.Errorf("%s: %+v, no longer %+v", p.ID, got, want)
		}
		line, err := json.Marshal(want)
		if err != nil {
			t.Fatal(err)
		}
		into.Write(append(line, '\n'))
	}
	if *update {
		put(t, name, into.String())
	}
}

func wrongPathsOf(t *testing.T, p *Problem) pathsOf {
	t.Helper()
	g := pathsOf{keyOfLine: keyFor(p)}
	keys := sha256.New()
	d := draw.NewDice("paths", p.ID)
	copies := []*Problem{p}
	for i := 0; i < 100 && len(p.Vary) > 0; i++ {
		values := make([]int, len(p.Vary))
		for k, v := range p.Vary {
			values[k] = d.Pick(v.Count())
		}
		copies = append(copies, p.pickedOut(values))
	}
	for _, own := range copies {
		s, err := solve(own.System)
		if err != nil {
			continue
		}
		g.Solved++
		for i, w := range draw.Paths(s.Model, s.env) {
			g.Paths++
			keys.Write([]byte(w.Key + "|" + w.Unknown + "\n"))
			name := sha256.Sum256([]byte(fmt.Sprint(w.Code, i)))
			right := s.value(w.Unknown)
			if share := w.Value / (math.Abs(w.Value) + math.Abs(right)); !math.IsNaN(share) {
				g.Sum += share * (0.5 + float64(binary.BigEndian.Uint16(name[:]))/(1<<16))
			}
		}
	}
	g.Keys = hex.EncodeToString(keys.Sum(nil)[:8])
	g.Sum = math.Round(g.Sum*1e9) / 1e9
	return g
}
