// Inside the package: its sittings are those of guesser_test.go.

package tutor

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/tutor/record"
)

// TestThreeSittings goes with a new student through an afternoon, the next morning, and
// an hour a week after the first: the program is started anew each time.
func TestThreeSittings(t *testing.T) {
	c := &clock{at: theFirstDay}
	r, err := record.OpenMemory(record.Options{Now: c.now})
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	start := func(at time.Time) *Desk {
		c.at = at
		return seatOn(t, r)
	}
	next := func(d *Desk, id, why string) *Lesson {
		t.Helper()
		l, a := take(t, d)
		if a.ID != id || !strings.Contains(a.Why, why) {
			t.Errorf("%s comes next: %s; want %s: %s", a.ID, a.Why, id, why)
		}
		return l
	}

	// The first: worked lines beside the first page, a sine for a cosine, another, and a
	// second problem left behind.
	d := start(theFirstDay)
	l := next(d, "banner-ring", "the topic “Two strings”")
	if a, _ := l.Ask(); !strings.Contains(a.Sample, "(a ring with ropes") {
		t.Errorf("the first sample is %q", a.Sample)
	}
	hand(t, l, answer(l, checker.Diagram, ""))
	hand(t, l, "T1x = T1 sin θ")
	if again := hand(t, l, "T2x = -T2 sin θ"); len(again.Notes) != 1 || !strings.Contains(again.Notes[0], "as with T₁x. In the triangle for T₂") {
		t.Errorf("the second time it says %q", again.Notes)
	}
	work(t, l)
	wantIdea(t, d, FromHorizontal, NewIdea, "✗")
	l = next(d, "canal-lantern", "“Angles from the horizontal”")
	if a, _ := l.Ask(); strings.Contains(a.Sample, "(a ring with ropes") {
		t.Errorf("the second problem has the worked line %q", a.Sample)
	}
	hand(t, l, answer(l, checker.Diagram, ""))

	// The next morning the idea comes back, in the topic after; then the page left behind
	// is where it was.
	d = start(theFirstDay.Add(22 * time.Hour))
	l = next(d, "quay-lamp", "“Angles from the horizontal”, because you made a mistake in “A banner in the middle of a rope” yesterday.")
	work(t, l)
	if l = open(t, d, "canal-lantern"); !l.StageDone(checker.Diagram) {
		t.Error("the page left behind is empty")
	}
	wantInHand(t, l, checker.Components, "T1x")
	work(t, l)
	wantIdea(t, d, FromHorizontal, Learning, "✗✓✓")
	l = next(d, "picture-frame", "“Angles from the horizontal”")
	if l.CanPassOver() {
		t.Error("Components may be passed over too early")
	}
	work(t, l)
	wantIdea(t, d, FromHorizontal, Steady, "✗✓✓✓")

	// A week after, once more, and Components may be passed over; after it nothing is due.
	d = start(theFirstDay.Add(7*24*time.Hour + time.Hour))
	l = next(d, "quay-lamp", "“Angles from the horizontal”, because you made a mistake in “A banner in the middle of a rope” 7 days ago.")
	hand(t, l, answer(l, checker.Diagram, ""))
	if why, err := l.PassOver(); why != "" || err != nil {
		t.Errorf("Components cannot be passed over: %s, %v", why, err)
	}
	work(t, l)
	l, a := take(t, d)
	if a.Returns {
		t.Errorf("%s comes back: %s", a.ID, a.Why)
	}
	work(t, l)
	for _, id := range []string{"banner-ring", "canal-lantern", "quay-lamp", "picture-frame"} {
		if p := d.Progress(id); !p.Status.Done() {
			t.Errorf("%s is %s", id, p)
		}
	}
}

// wantIdea holds how far an idea has come against a state and the last chances.
func wantIdea(t *testing.T, d *Desk, idea Idea, state IdeaState, marks string) {
	t.Helper()
	all := d.Past().Ideas()
	held := all[slices.IndexFunc(all, func(h HeldIdea) bool { return h.Idea == idea })]
	if held.State != state || held.Marks() != marks {
		t.Errorf("%s is %s %s, want %s %s", idea, held.State, held.Marks(), state, marks)
	}
}
