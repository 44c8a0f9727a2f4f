// Inside the package: it solves every copy as the draw does, and asks why one is thrown back.

package problems

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

func bank(t testing.TB) []*Problem {
	t.Helper()
	b := Embedded()
	var all []*Problem
	for _, h := range b.List() {
		p, err := b.Get(h.ID)
		if err != nil {
			t.Fatal(err)
		}
		if p.Heading != h {
			t.Errorf("the list says %+v, the file %+v", h, p.Heading)
		}
		all = append(all, p)
	}
	if len(all) < 20 {
		t.Fatalf("the bank has only %d problems", len(all))
	}
	return all
}

// Every file of the bank reads, solves and says all its numbers.
func TestBank(t *testing.T) {
	topics := map[string]bool{}
	for _, p := range bank(t) {
		topics[p.Topic] = true
		if strings.ContainsAny(p.Statement(), "{}") {
			t.Errorf("%s: %s", p.ID, p.Statement())
		}
		if p.File != p.ID+".yaml" {
			t.Errorf("%s stands in %s", p.ID, p.File)
		}
		if len(p.Vary) > 0 && p.Notes == "" && p.Source == "" && len(p.Text) < 40 {
			t.Errorf("%s does not say what it is for", p.ID)
		}
	}
	if len(topics) != len(Topics()) {
		t.Errorf("the bank has %d topics of %d", len(topics), len(Topics()))
	}
}

func TestListGrows(t *testing.T) {
	list := Embedded().List()
	for i := 1; i < len(list); i++ {
		a, b := list[i-1], list[i]
		if topicRank(a.Topic) > topicRank(b.Topic) || a.Topic == b.Topic && (a.Level > b.Level || a.Level == b.Level && a.ID >= b.ID) {
			t.Errorf("%s comes before %s", a.ID, b.ID)
		}
	}
}

// howMany is how many copies of each problem the property tests look at; more with
// STANDSTILL_DRAWS in the environment.
func howMany(t *testing.T) int {
	t.Helper()
	text := os.Getenv("STANDSTILL_DRAWS")
	if text == "" {
		return 3
	}
	n, err := strconv.Atoi(text)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// A student's copy is solved, physical, within its bounds, and tells every mistake
// apart.
func TestEveryCopyOfTheBankIsSound(t *testing.T) {
	n := howMany(t)
	for _, p := range bank(t) {
		if len(p.Vary) == 0 {
			continue
		}
		for i := range n {
			own, err := p.Draw(Seed{Class: "bank", Student: fmt.Sprint("student ", i)})
			if err != nil {
				t.Errorf("%s: %v", p.ID, err)
				break
			}
			sound(t, p, own)
		}
	}
}

func sound(t *testing.T, p, own *Problem) {
	t.Helper()
	s, err := solve(own.System)
	if err != nil {
		t.Errorf("%s with %s: %v", p.ID, own.Copy, err)
		return
	}
	if said := s.unphysical(); said != "" {
		t.Errorf("%s with %s: %s", p.ID, own.Copy, said)
	}
	for _, r := range s.Residuals(s.env, nil) {
		if math.Abs(r) > 1e-9*s.largestForce() {
			t.Errorf("%s with %s: a sum is %v", p.ID, own.Copy, r)
		}
	}
	for _, v := range p.Vary {
		g, _ := own.System.Given(v.Name)
		low, high := float64(v.Low)/math.Pow10(v.Places), float64(v.High)/math.Pow10(v.Places)
		_, decimals, _ := strings.Cut(g.Number.Text, ".")
		if g.Number.Value < low || g.Number.Value > high || len(decimals) != v.Places {
			t.Errorf("%s: %s is %s", p.ID, v.Name, g.Number.Text)
		}
	}
	for _, name := range p.System.Find {
		if x := s.value(name); math.IsNaN(x) || x == 0 {
			t.Errorf("%s with %s: %s is %v", p.ID, own.Copy, name, x)
		}
	}
	if why := own.thrownBack(); why != "" {
		t.Errorf("%s with %s: %s", p.ID, own.Copy, why)
	}
}

// write makes a folder of problem files: the lantern, with another id in each, and
// then the files given.
func write(t testing.TB, lanterns int, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	data, err := os.ReadFile("testdata/drawn/lantern.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for i := range lanterns {
		id := fmt.Sprintf("lantern-%04d", i)
		put(t, filepath.Join(dir, id+".yaml"), strings.Replace(string(data), "harbour-lantern", id, 1))
	}
	for name, text := range files {
		put(t, filepath.Join(dir, name), text)
	}
	return dir
}

func put(t testing.TB, name, text string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func TestFolderWithBrokenFilesLoadsTheRest(t *testing.T) {
	again, err := os.ReadFile("testdata/drawn/four.yaml")
	if err != nil {
		t.Fatal(err)
	}
	dir := write(t, 5, map[string]string{
		"a.yaml":      string(again),
		"b.yml":       string(again),
		"binary.yaml": "id: x\x00\x01",
		"empty.yaml":  "",
		"huge.yaml":   strings.Repeat("# nothing\n", 1<<20),
		"utf16.yaml":  "\xff\xfei\x00d\x00",
		"latin.yaml":  "title: caf\xe9\n",
		"bomb.yaml":   "a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n",
		"deep.yaml":   "find: " + strings.Repeat("[", 100_000),
		"notes.txt":   "not a problem",
		".hidden.yml": "not: a problem",
	})
	b, found := OpenFolder(dir)
	var said []string
	for _, f := range found {
		said = append(said, strings.TrimPrefix(f.String(), dir+string(filepath.Separator)))
	}
	want := []string{
		`b.yml:1:5: the id two-buckets is also in a.yaml; expected a different id for each problem in a folder`,
		`binary.yaml: the file is not a text file; expected text, written in YAML`,
		`bomb.yaml:1:4: &a marks a part of the file for use elsewhere; expected every value written out in full`,
		`deep.yaml:1:10007: there are too many brackets inside other brackets; expected at most three levels of brackets`,
		`empty.yaml: the file is empty; expected a problem`,
		`huge.yaml: the file has 10485760 bytes; a problem file can have at most 262144; expected a problem file that can be read`,
		`latin.yaml: the file is not written in UTF-8; expected text in UTF-8`,
		`utf16.yaml: the file is written in UTF-16; expected text in UTF-8`,
	}
	if !slices.Equal(said, want) {
		t.Errorf("said\n%s\nwant\n%s", strings.Join(said, "\n"), strings.Join(want, "\n"))
	}
	if len(b.List()) != 6 {
		t.Errorf("%d problems are loaded", len(b.List()))
	}
}

func TestFoldersThatHoldNothing(t *testing.T) {
	empty := t.TempDir()
	for dir, want := range map[string]string{
		empty:                        "there are no problem files in the folder; expected files that end in .yaml",
		filepath.Join(empty, "none"): "there is no such folder; expected a folder of problem files that can be read",
	} {
		b, found := OpenFolder(dir)
		if b == nil || len(b.List()) != 0 || len(found) != 1 || found[0].String() != dir+": "+want {
			t.Errorf("%v", found)
		}
	}
	if p, found := ReadFile(empty); p != nil || found[0].What != "this is a folder" {
		t.Errorf("%v", found)
	}
}

func TestOneBankStandsInTheOthersPlace(t *testing.T) {
	own, found := OpenFolder(write(t, 2, map[string]string{"mine.yaml": strings.Replace(lantern(t), "harbour-lantern", "canal-lantern", 1)}))
	if found != nil {
		t.Fatal(found.Err())
	}
	both := Embedded().With(own)
	if n := len(Embedded().List()) + 2; len(both.List()) != n {
		t.Errorf("%d problems, want %d", len(both.List()), n)
	}
	p, err := both.Get("canal-lantern")
	if err != nil || p.Title != "A lantern at the harbour mouth" {
		t.Errorf("%v, %v", p, err)
	}
	if _, err := both.Get("canal-latern"); err == nil || err.Error() != `there is no problem "canal-latern"; did you mean "canal-lantern"?` {
		t.Errorf("%v", err)
	}
}

func lantern(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile("testdata/drawn/lantern.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func TestLineEndsDoNotChangeAProblem(t *testing.T) {
	unix := lantern(t)
	p, _ := Read("a", []byte(unix))
	for _, end := range []string{"\r\n", "\r"} {
		q, found := Read("a", []byte(strings.ReplaceAll(unix, "\n", end)))
		if q == nil || q.Hash != p.Hash || q.Statement() != p.Statement() {
			t.Errorf("%q: %v", end, found)
		}
	}
	if q, found := Read("a", []byte("\ufeff"+unix)); q == nil || q.Statement() != p.Statement() {
		t.Errorf("with a byte order mark: %v", found)
	}
}

// What the file says in words that YAML could take for something else.
func TestTextStaysAsTyped(t *testing.T) {
	p, found := Read("a", []byte(`id: gate
title: 7.60
topic: one-line
level: 1
text: "A gate N is held by a push of {y}."
given: {y: 7.60 N, on: 1.50 N}
meaning: {on: push of the wind}
forces:
  - {name: N, kind: normal, points: up}
  - {name: y, kind: push, points: down, size: y}
  - {name: on, kind: push, points: down, size: on}
find: [N]
`))
	if p == nil {
		t.Fatal(found.Err())
	}
	if p.Title != "7.60" || p.Statement() != "A gate N is held by a push of 7.60 N." || p.System.Answer["N"].Symbol != "N" {
		t.Errorf("%q, %q, %v", p.Title, p.Statement(), p.System.Answer)
	}
}

func TestUnitsOfAnswers(t *testing.T) {
	for name, want := range map[string]string{"hawser.yaml": "lb deg", "board.yaml": "none", "lantern.yaml": "N N"} {
		p := file(t, "testdata/drawn/"+name)
		var units []string
		for _, f := range p.System.Find {
			units = append(units, p.System.Answer[f].Symbol)
		}
		if got := strings.Join(units, " "); got != want {
			t.Errorf("%s is asked in %s, want %s", name, got, want)
		}
	}
}

func BenchmarkEmbedded(b *testing.B) {
	for b.Loop() {
		Embedded()
	}
}

func BenchmarkEmbeddedSolved(b *testing.B) {
	n := 0
	for b.Loop() {
		n = len(bank(b))
	}
	b.ReportMetric(float64(b.Elapsed().Milliseconds())/float64(b.N)/float64(n)*60, "ms/60problems")
}

func BenchmarkOpenFolder(b *testing.B) {
	for _, files := range []int{500, 5000} {
		dir := write(b, files, nil)
		b.Run(strconv.Itoa(files), func(b *testing.B) {
			for b.Loop() {
				if _, found := OpenFolder(dir); found != nil {
					b.Fatal(found.Err())
				}
			}
		})
	}
}

func BenchmarkDraw(b *testing.B) {
	for _, name := range []string{"lantern", "hawser", "board"} {
		p, found := ReadFile("testdata/drawn/" + name + ".yaml")
		if p == nil {
			b.Fatal(found.Err())
		}
		b.Run(name, func(b *testing.B) {
			for i := 0; b.Loop(); i++ {
				if _, err := p.Draw(Seed{Class: "bench", Repeat: i}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
