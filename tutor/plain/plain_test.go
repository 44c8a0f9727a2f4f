package plain_test

import (
	"context"
	"io"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/plain"
	"example.org/standstill/tutor/record"
)

// hold runs a lesson on a record in memory and returns all that was said.
func hold(t testing.TB, in io.Reader) string { return holdAt(t, in, 0) }

// holdAt does that on a terminal of a width.
func holdAt(t testing.TB, in io.Reader, cols int) string {
	t.Helper()
	r, err := record.OpenMemory(record.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	var out strings.Builder
	o := plain.Options{Tutor: tutor.New(tutor.Options{Bank: problems.Embedded(), Record: r}), In: in, Out: &out, Echo: true, SavedIn: "record.db", Cols: cols}
	if err := plain.Run(context.Background(), o); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

const seeds = "Nele\nproblems\ncanal-lantern\nT1 up left; T2 up right; w down\nT1 cos α\nhint\nkeep\nback\nsolution\nangles\nalpha = 20\nalpha = 1e9\n\nagain\nstudent\n\x1b[2J\nJoris\npage\ntext\ndrawing\nnext\nhelp\nleave\n"

// FuzzLesson types anything at all: the lesson becomes its end, and nothing that
// acts on a terminal comes out again.
func FuzzLesson(f *testing.F) {
	f.Add(seeds)
	f.Add("\x00\x1b]0;title\x07\nNele\n1\n\n\xff\xfe\n" + strings.Repeat("(", 5000) + "\nkeep\n")
	f.Add("Nele\nproblems\n1\n1\n" + strings.Repeat("T1x; ", 400) + "\nT2x\nkeep\nkeep\nsolution\nangles\nm 2,5 kg\nnext\nnext")
	f.Fuzz(func(t *testing.T, typed string) {
		said := hold(t, strings.NewReader(typed))
		if !strings.Contains(said, "End: ") {
			t.Fatalf("it does not end: %q", said)
		}
		for _, r := range said {
			// A typed tab is shown as it is: package door takes it for harmless.
			if r != '\n' && r != '\t' && unicode.IsControl(r) || unicode.Is(unicode.Cf, r) {
				t.Fatalf("it says %q", r)
			}
		}
	})
}

// TestNoLineBreaksInsideAWord: on a terminal of 40 columns every line fits, and the words
// are those of one without an end to its lines.
func TestNoLineBreaksInsideAWord(t *testing.T) {
	script := "Nele\nproblems\ncanal-lantern\nT1 up; w down\ntext\ndrawing\nhelp\nsolution\nyes\nleave\n"
	whole, narrow := holdAt(t, strings.NewReader(script), 0), holdAt(t, strings.NewReader(script), 40)
	if strings.Join(strings.Fields(whole), " ") != strings.Join(strings.Fields(narrow), " ") {
		t.Error("the words differ")
	}
	for _, line := range strings.Split(narrow, "\n") {
		if utf8.RuneCountInString(line) > 40 && strings.Contains(line, " ") {
			t.Errorf("too long: %s", line)
		}
	}
	if !strings.Contains(whole, "Wrong: ") || len(whole) < 2000 {
		t.Errorf("nothing was said:\n%s", whole)
	}
}

// endless is an input without a line end.
type endless struct{ left int }

func (e *endless) Read(b []byte) (int, error) {
	n := min(len(b), e.left)
	for i := range b[:n] {
		b[i] = '('
	}
	if e.left -= n; n == 0 {
		return 0, io.EOF
	}
	return n, nil
}

func TestEndlessLineIsCut(t *testing.T) {
	said := hold(t, io.MultiReader(strings.NewReader("Nele\n"), &endless{64 << 20}, strings.NewReader("\nwords\nhelp\n")))
	if !strings.Contains(said, "Not understood: ") || !strings.Contains(said, "Words that you can type") || !strings.Contains(said, "Now: ") || len(said) > 200<<10 {
		t.Fatalf("%d bytes were said", len(said))
	}
}

func TestEndsWhenTheContextDoes(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	r, err := record.OpenMemory(record.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	in, typed := io.Pipe()
	defer typed.Close()
	stop()
	var out strings.Builder
	o := plain.Options{Tutor: tutor.New(tutor.Options{Bank: problems.Embedded(), Record: r}), In: in, Out: &out}
	if err := plain.Run(ctx, o); err != nil || !strings.Contains(out.String(), "End: ") {
		t.Fatalf("%v, %s", err, out.String())
	}
}

// On a slope the axes of one body are not those of the next, and are said anew.
func TestAxesAreThoseOfTheBody(t *testing.T) {
	said := hold(t, strings.NewReader(`Nele
problems
keg-counterweight
T up the slope; N away from the slope; w1 down
T up; w2 down
A.Tx = T; A.Ty = 0; A.Nx = 0; A.Ny = N; A.w1x = -w1 sin alpha; A.w1y = -w1 cos alpha
leave
`))
	slope := strings.Index(said, "Axes: positive x: up the slope")
	level := strings.Index(said, "Axes: positive x: right; positive y: up")
	if slope < 0 || level < slope {
		t.Errorf("the axes of B are not said after those of A:\n%s", said)
	}
}

// Where several students use a machine it asks who is there, and goes on with none of
// them by itself.
func TestASharedMachineAsksWhoIsThere(t *testing.T) {
	r, err := record.OpenMemory(record.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	lesson := func(typed string) string {
		var out strings.Builder
		o := plain.Options{Tutor: tutor.New(tutor.Options{Bank: problems.Embedded(), Record: r}), In: strings.NewReader(typed), Out: &out, SavedIn: "record.db"}
		if err := plain.Run(context.Background(), o); err != nil {
			t.Fatal(err)
		}
		return out.String()
	}
	lesson("Nele\nleave\n")
	if said := lesson("leave\n"); strings.Contains(said, "Nele?") || !strings.Contains(said, "Student: Nele.") {
		t.Errorf("one student is asked for: %s", said)
	}
	lesson("student\nJoris\nleave\n")
	if said := lesson("\nleave\n"); !strings.Contains(said, "are you Joris?") || !strings.Contains(said, "Problem: ") {
		t.Errorf("the student of the last time does not go on: %s", said)
	}
	if said := lesson("Nele\nideas\nleave\n"); !strings.Contains(said, "are you Joris?") || !strings.Contains(said, "Ideas: this list is empty") {
		t.Errorf("another name is not taken: %s", said)
	}
	if said := lesson("leave\n"); !strings.Contains(said, "are you Nele?") || strings.Contains(said, "Problem: ") {
		t.Errorf("it cannot be left: %s", said)
	}
	if said := lesson("?\n\nleave\n"); strings.Contains(said, "Student: ?") || !strings.Contains(said, "Problem: ") {
		t.Errorf("? is taken for a name: %s", said)
	}
}
