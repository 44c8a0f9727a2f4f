// Inside the package: its guesser reads the axis of an item as the grading does.

package tutor

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// clock is a clock that goes on by a second with every look, and can be put on.
type clock struct{ at time.Time }

func (c *clock) now() time.Time {
	c.at = c.at.Add(time.Second)
	return c.at
}

// seatAt seats a student whose lessons go by a clock.
func seatAt(t *testing.T, c *clock) *Desk {
	t.Helper()
	r, err := record.OpenMemory(record.Options{Now: c.now})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	return seatOn(t, r)
}

// seatOn starts the tutor on a record and seats a student.
func seatOn(t *testing.T, r *record.Record) *Desk {
	t.Helper()
	tutor := New(Options{Bank: problems.Embedded(), Record: r})
	s, _, err := tutor.Enrol("Nele")
	if err != nil {
		t.Fatal(err)
	}
	d, err := tutor.Seat(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// guesser reads nothing: sine for x first, cosine for y, every sign plus, and then
// whatever is left. Both types all answers in one text; wait is how long it waits
// between two of them.
type guesser struct {
	both bool
	wait time.Duration
}

// guesses lists what the guesser would type for an item, in order. Forces and
// values it has from a neighbour.
func (s guesser) guesses(l *Lesson, stage checker.Stage, item string) []string {
	switch stage {
	case checker.Components:
		f, axis, _ := componentOf(l.Problem.System, item)
		return l.guessedComponents(item, f, axis)
	case checker.XSum, checker.YSum:
		body, _ := l.Problem.System.Body(item)
		return l.guessedSums(body, axisOf(stage))
	}
	return []string{answer(l, stage, item)}
}

func (l *Lesson) guessedComponents(item string, f *statics.Force, axis statics.Axis) []string {
	if !f.Slanted() {
		return []string{answer(l, checker.Components, item)}
	}
	functions := []string{"sin", "cos"}
	if axis == statics.Y {
		functions = []string{"cos", "sin"}
	}
	angle := f.Angle
	if f.Direction != nil {
		angle = f.Direction
	}
	var all []string
	for _, sign := range []string{"", "-"} {
		for _, function := range functions {
			all = append(all, fmt.Sprintf("%s%s %s(%s)", sign, expr.Glyph(f.Name), function, l.Ref.Print(angle)))
		}
	}
	return all
}

// guessedSums writes the sizes of the components with every choice of signs.
func (l *Lesson) guessedSums(body *statics.Body, axis statics.Axis) []string {
	var terms []string
	for i := range body.Forces {
		f := &body.Forces[i]
		if f.Factor(axis).Sign != 0 {
			term := strings.TrimPrefix(l.Ref.Print(f.Component(axis)), "−")
			terms = append(terms, strings.TrimPrefix(term, "-"))
		}
	}
	var all []string
	for signs := range 1 << (len(terms) - 1) {
		text := terms[0]
		for i, term := range terms[1:] {
			sign := " + "
			if signs>>i&1 == 1 {
				sign = " - "
			}
			text += sign + term
		}
		all = append(all, text+" = 0")
	}
	return all
}

// work guesses through a lesson.
func (s guesser) work(t *testing.T, l *Lesson, c *clock) {
	t.Helper()
	for range 200 {
		stage, item, open := l.InHand()
		if !open {
			return
		}
		all := s.guesses(l, stage, item)
		if s.both && stage != checker.Diagram && stage != checker.Solve {
			if stage == checker.Components {
				for i := range all {
					all[i] = item + " = " + all[i]
				}
			}
			hand(t, l, strings.Join(all, "; "))
		}
		for _, text := range all {
			if now, same, _ := l.InHand(); now != stage || same != item {
				break
			}
			c.at = c.at.Add(s.wait)
			hand(t, l, text)
		}
		if now, same, _ := l.InHand(); now == stage && same == item {
			hand(t, l, answer(l, stage, item))
		}
		if now, same, _ := l.InHand(); now == stage && same == item {
			t.Fatalf("%s: %s %s cannot be guessed with %q", l.Problem.ID, stage, item, all)
		}
	}
}

func hand(t *testing.T, l *Lesson, text string) *Line {
	t.Helper()
	r, err := l.Check(text)
	if err != nil {
		t.Fatal(err)
	}
	return r.Line
}

// take opens what comes next.
func take(t *testing.T, d *Desk) (*Lesson, Advice) {
	t.Helper()
	a, ok := d.Next()
	if !ok {
		t.Fatal("nothing comes next")
	}
	open := d.Open
	if a.Again {
		open = d.Again
	}
	l, err := open(a.ID)
	if err != nil {
		t.Fatal(err)
	}
	return l, a
}

// TestGuessingIsNoMastery lets guessers through eight problems, as they come.
func TestGuessingIsNoMastery(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	for name, s := range map[string]guesser{"toggling": {}, "both at once": {both: true}, "waiting": {wait: 40 * time.Second}} {
		t.Run(name, func(t *testing.T) {
			c := &clock{at: time.Date(2026, 3, 2, 10, 0, 0, 0, time.UTC)}
			d := seatAt(t, c)
			for range 8 {
				l, a := take(t, d)
				s.work(t, l, c)
				p := l.Progress()
				t.Logf("%-22s level %d  %-12s %2d of %2d right first time, refused %2d  %s", a.ID, a.Level, p.Status, p.RightFirst, p.Items, p.Refused, a.Why)
				if p.Status == RightFirst {
					t.Errorf("%s is right first time", a.ID)
				}
				if a.Level > 1 {
					t.Errorf("%s is of level %d: %s", a.ID, a.Level, a.Why)
				}
			}
		})
	}
}

// TestCareIsSeen lets a careful student, who asks for one hint in each problem after
// a wrong try, through eight problems.
func TestCareIsSeen(t *testing.T) {
	c := &clock{at: time.Date(2026, 3, 2, 10, 0, 0, 0, time.UTC)}
	d := seatAt(t, c)
	highest := 0
	for range 8 {
		l, a := take(t, d)
		highest = max(highest, a.Level)
		if _, err := l.Hint(); err != nil {
			t.Fatal(err)
		}
		work(t, l)
		p := l.Progress()
		t.Logf("%-22s level %d  %-12s %2d of %2d right first time, hints %d  %s", a.ID, a.Level, p.Status, p.RightFirst, p.Items, p.Hints, a.Why)
		if p.Status != RightFirst {
			t.Errorf("%s is %s", a.ID, p.Status)
		}
	}
	if highest < 2 {
		t.Errorf("the level stays at %d", highest)
	}
}

// TestGuessingIsNoMasteryAnywhere guesses through the whole bank.
func TestGuessingIsNoMasteryAnywhere(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	c := &clock{at: time.Date(2026, 3, 2, 10, 0, 0, 0, time.UTC)}
	d := seatAt(t, c)
	list := d.tutor.Bank.List()
	if len(list) < 50 {
		t.Fatalf("the bank has %d problems", len(list))
	}
	for _, h := range list {
		l := open(t, d, h.ID)
		guesser{}.work(t, l, c)
		if p := l.Progress(); p.Status == RightFirst {
			t.Errorf("%s is right first time: %d of %d, refused %d", h.ID, p.RightFirst, p.Items, p.Refused)
		}
	}
	for _, held := range d.Past().Ideas() {
		t.Logf("%-32s %s", held.Title(), held.State)
	}
}
