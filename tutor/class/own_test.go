// Inside the package: it uses the room of class_test.go.

package class

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/class/classfile"
)

const ownProblem = `id: quay-lantern
title: A lantern over the water
topic: two-strings
level: 1
text: >
  A lantern of mass {m} hangs from a small ring. One cord runs up to the left, {alpha} above the
  horizontal; the other up to the right, {beta} above the horizontal. Find the tension in each cord.
given:
  m: 3.4 kg
  alpha: 33 deg
  beta: 52 deg
forces:
  - {name: T1, kind: tension, points: up left,  angle: alpha, from: x}
  - {name: T2, kind: tension, points: up right, angle: beta,  from: x}
  - {name: w,  kind: weight,  points: down,     size: m*g}
find: [T1, T2]
vary:
  m: 1.5 to 5.0 step 0.1
  alpha: 20 to 70 step 1
  beta: 20 to 70 step 1
`

// classFolder is a folder with a class file and the files named.
func classFolder(t *testing.T, classText string, files map[string]string) (classFile string) {
	t.Helper()
	dir := t.TempDir()
	files["class.yaml"] = classText
	for name, text := range files {
		path := filepath.Join(dir, name)
		must(t, os.MkdirAll(filepath.Dir(path), 0o755))
		must(t, writeFile(path, []byte(text)))
	}
	return filepath.Join(dir, "class.yaml")
}

const ownClass = `
name: Physics 10b
number key: harbour-2
problems_from: [handouts]
students: list.csv
problems:
  - {problem: quay-lantern, due: 2030-03-09}
  - {problem: letter-scale}
`

// Own problems lie beside the class file or in it, and are the same either way.
func TestOwnProblemsTravelWithTheClass(t *testing.T) {
	bank := problems.Embedded()
	for name, text := range map[string]string{
		"plain":       ownProblem,
		"DOS lines":   strings.ReplaceAll(ownProblem, "\n", "\r\n"),
		"no last end": strings.TrimSuffix(ownProblem, "\n"),
		"blank ends":  ownProblem + "\n\n",
		"marks":       "# \u00a0\"own\" \\ \ufeff\n" + ownProblem,
	} {
		file := classFolder(t, ownClass, map[string]string{"handouts/quay.yaml": text, "handouts/broken.yaml": "id: x\n", "list.csv": "id,name\ns01,Ada Berg\ns02,Ben Roos\n"})
		c, found := classfile.ReadFile(file, bank)
		must(t, found.Err())
		if len(c.Broken) == 0 || filepath.Base(c.Broken[0].File) != "broken.yaml" {
			t.Errorf("%s: the broken file is not told: %v", name, c.Broken)
		}
		own, err := c.Bank.Get("quay-lantern")
		must(t, err)
		packed, err := c.Pack(bank)
		must(t, err)
		again, found := classfile.Read("elsewhere.yaml", packed, bank)
		if err := found.Err(); err != nil {
			t.Fatalf("%s: %v\n%s", name, err, packed)
		}
		other, err := again.Bank.Get("quay-lantern")
		must(t, err)
		if other.Hash != own.Hash || len(again.Students) != 2 || len(again.Work) != 2 || again.Broken != nil {
			t.Errorf("%s: the packed class differs:\n%s", name, packed)
		}
		twice, err := again.Pack(bank)
		must(t, err)
		want(t, name+": packed again", string(twice), string(packed))
	}
}

func TestProblemsWithTabsAreNotPacked(t *testing.T) {
	bank := problems.Embedded()
	file := classFolder(t, ownClass, map[string]string{"handouts/quay.yaml": "# a\n#\tb\n" + ownProblem, "list.csv": "id,name\ns01,Ada Berg\n"})
	c, found := classfile.ReadFile(file, bank)
	must(t, found.Err())
	if _, err := c.Pack(bank); err == nil || !strings.Contains(err.Error(), "quay.yaml contains a tab or another control character on line 2") {
		t.Error(err)
	}
}

func TestOwnProblemsThatAreNotThere(t *testing.T) {
	file := classFolder(t, ownClass, map[string]string{"list.csv": "id,name\ns01,Ada Berg\n"})
	_, found := classfile.ReadFile(file, problems.Embedded())
	if err := found.Err(); err == nil || !strings.Contains(err.Error(), "the folder handouts cannot be used") {
		t.Error(err)
	}
}

// A number within the class's tolerance is right wherever it is judged.
func TestToleranceReachesTheHandIn(t *testing.T) {
	r := newRoom(t)
	r.class.Tolerance = 0.05
	r.book = r.markbook()
	l := r.lesson("s01", "canal-lantern")
	v, _ := l.Ref.Value("T1")
	r.type_(l, "T1 up left; T2 up right; w down", "T1x = T1 cos α; T1y = T1 sin α; T2x = T2 cos β; T2y = T2 sin β; wx = 0; wy = w",
		"T1 cos α = T2 cos β", "T1 sin α + T2 sin β = w", "T1 = "+l.Ref.Unit("T1").In(1.03*v, 3))
	if last := l.Lines()[len(l.Lines())-1]; last.Verdict != "right" {
		t.Fatalf("in the lesson it is %s", last.Verdict)
	}
	data := r.handIn("s01")
	if strings.Contains(string(data), `"said":"wrong`) {
		t.Errorf("the hand-in says otherwise:\n%s", data)
	}
	r.collect(map[string][]byte{"ada": data})
	want(t, "the remarks", notices(r.report().Remarks), "")
}

// A problem file may be as large in a hand-in as anywhere else, also one whose every
// character takes more room in the hand-in.
func TestLargeProblemFilesAreCollected(t *testing.T) {
	for _, size := range []int{200 << 10, problems.LargestFile} {
		for _, pad := range []string{"x", `"`, "\u2028"} {
			text := ownProblem + "# " + strings.Repeat(pad, (size-len(ownProblem)-3)/len(pad)) + "\n"
			file := classFolder(t, ownClass, map[string]string{"handouts/quay.yaml": text, "list.csv": "id,name\ns01,Ada Berg\n"})
			r := newRoom(t)
			var found problems.Findings
			r.class, found = classfile.ReadFile(file, r.bank)
			must(t, found.Err())
			own, err := r.class.Bank.Get("quay-lantern")
			must(t, err)
			r.bank = r.class.Bank
			r.book = r.markbook()
			r.type_(r.lesson("s01", "quay-lantern"), "T1 up left; T2 up right; w down")
			sum := r.collect(map[string][]byte{"ada": r.handIn("s01")})
			if sum.Added != 2 || sum.Files[0].Unread != 0 {
				t.Errorf("%d bytes of %q: %d new, %d unread", len(text), pad, sum.Added, sum.Files[0].Unread)
			}
			if _, err := r.book.Record.Problem(own.Hash); err != nil {
				t.Errorf("%d bytes of %q: the problem is not saved: %v", len(text), pad, err)
			}
		}
	}
}
