package problems

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"testing"

	"example.org/standstill/problems/draw"
)

// pathsOf is one line of testdata/paths.jsonl: what the wrong paths of one problem
// of the bank come to on a hundred sets of its numbers. Keys is a hash of their
// names in order; Sum weighs every value, so that one that moves by a part in ten
// thousand everywhere is noticed, and computers that round differently agree.
type pathsOf struct {
	ID      string  `json:"id"`
	Numbers string  `json:"numbers"`
	Solved  int     `json:"solved"`
	Paths   int     `json:"paths"`
	Keys    string  `json:"keys"`
	Sum     float64 `json:"sum"`
}

const pathsFile = "testdata/paths.jsonl"

// TestWrongPathsAreFrozen holds what the draws depend on. A problem whose numbers
// are new gets its line with -update; a line that is there is never rewritten.
func TestWrongPathsAreFrozen(t *testing.T) {
	data, err := os.ReadFile(pathsFile)
	if err != nil && !*update {
		t.Fatal(err)
	}
	held := map[[2]string]pathsOf{}
	for line := range bytes.Lines(data) {
		var g pathsOf
		if err := json.Unmarshal(line, &g); err != nil {
			t.Fatal(err)
		}
		held[[2]string{g.ID, g.Numbers}] = g
	}
	var into bytes.Buffer
	for _, p := range bank(t) {
		got := wrongPathsOf(t, p)
		want, ok := held[[2]string{p.ID, got.Numbers}]
		switch {
		case !ok && !*update:
			t.Errorf("%s has numbers that are not in %s", p.ID, pathsFile)
		case !ok:
			want = got
		case got.Keys != want.Keys || got.Solved != want.Solved || got.Paths != want.Paths || math.Abs(got.Sum-want.Sum) > 1e-3:
			t.Errorf("%s: the wrong paths are %+v, no longer %+v", p.ID, got, want)
		}
		line, err := json.Marshal(want)
		if err != nil {
			t.Fatal(err)
		}
		into.Write(append(line, '\n'))
	}
	if *update {
		put(t, pathsFile, into.String())
	}
}

func wrongPathsOf(t *testing.T, p *Problem) pathsOf {
	t.Helper()
	g := pathsOf{ID: p.ID, Numbers: numbersOf(p)}
	keys := sha256.New()
	d := newDice("paths", p.ID)
	copies := []*Problem{p}
	for i := 0; i < 100 && len(p.Vary) > 0; i++ {
		copies = append(copies, p.roll(d))
	}
	for _, own := range copies {
		ref, err := own.Reference()
		if err != nil {
			continue
		}
		g.Solved++
		s, _ := solve(own.System)
		for i, w := range draw.Paths(s.Model, s.env) {
			g.Paths++
			keys.Write([]byte(w.Key + "|" + w.Unknown + "\n"))
			name := sha256.Sum256([]byte(fmt.Sprint(w.Code, i)))
			right, _ := ref.Value(w.Unknown)
			if share := w.Value / (math.Abs(w.Value) + math.Abs(right)); !math.IsNaN(share) {
				g.Sum += share * (0.5 + float64(binary.BigEndian.Uint16(name[:]))/(1<<16))
			}
		}
	}
	g.Keys = hex.EncodeToString(keys.Sum(nil)[:8])
	g.Sum = math.Round(g.Sum*1e9) / 1e9
	return g
}

// numbersOf tells the versions of a problem apart by what its numbers come from.
func numbersOf(p *Problem) string {
	h := sha256.New()
	for _, g := range p.System.Givens {
		h.Write([]byte(g.Name + printGiven(g) + ";"))
	}
	for _, v := range p.Vary {
		h.Write([]byte(v.Name + v.Text(0) + " " + v.Text(v.Count()-1) + ";"))
	}
	for _, name := range slices.Sorted(slices.Values(p.System.Find)) {
		h.Write([]byte(name + ";"))
	}
	return hex.EncodeToString(h.Sum(nil)[:6])
}
