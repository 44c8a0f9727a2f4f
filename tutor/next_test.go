// Inside the package: it makes the state on which a choice depends, without the lessons that lead there.

package tutor

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
)

// nextCase is one case of testdata/next.txt.
type nextCase struct {
	name string
	bank []Offer
	past Past
	work []Set
	now  time.Time
}

var theFirstDay = time.Date(2026, 3, 2, 10, 0, 0, 0, time.UTC)

// moment reads "3d40": minutes after three days, or minutes alone.
func moment(t *testing.T, text string) time.Time {
	t.Helper()
	days, minutes, found := strings.Cut(text, "d")
	if !found {
		days, minutes = "0", text
	}
	d, err := strconv.Atoi(days)
	m, bad := strconv.Atoi(minutes)
	if err != nil || bad != nil {
		t.Fatalf("%q is no time", text)
	}
	return theFirstDay.Add(time.Duration(d*24*60+m) * time.Minute)
}

func offerOf(f []string) Offer {
	level, _ := strconv.Atoi(f[2])
	var exercised []Idea
	for _, i := range f[3:] {
		exercised = append(exercised, Idea(i))
	}
	return Offer{problems.Heading{ID: f[0], Title: strings.ToUpper(f[0]), Topic: f[1], Level: level}, func() []Idea { return exercised }}
}

// did adds a page to the past.
func (c *nextCase) did(t *testing.T, f []string) {
	t.Helper()
	i := slices.IndexFunc(c.bank, func(o Offer) bool { return o.ID == f[0] })
	if i < 0 {
		t.Fatalf("%s is not in the bank", f[0])
	}
	p := PastPage{Problem: f[0], Topic: c.bank[i].Topic, Level: c.bank[i].Level, Over: true, Begun: moment(t, f[1]), Last: moment(t, f[2])}
	names := map[string]Status{"at-first-go": RightFirst, "worked-out": WorkedOut, "by-trying": ByTrying, "shown": Shown}
	standing, ok := names[f[3]]
	if !ok {
		t.Fatalf("%q is no standing", f[3])
	}
	p.Status = standing
	for _, one := range f[4:] {
		mark := one[len(one)-1]
		p.Chances = append(p.Chances, Chance{Idea: Idea(one[:len(one)-1]), Problem: f[0], Right: mark == '+', Shown: mark == '?', Time: p.Last.Add(-time.Minute)})
	}
	c.past.Pages = append(c.past.Pages, p)
}

func TestNextCases(t *testing.T) {
	file, err := os.Open("testdata/next.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var bank []Offer
	var c *nextCase
	cases := 0
	for in := bufio.NewScanner(file); in.Scan(); {
		text := strings.TrimSpace(in.Text())
		word, rest, _ := strings.Cut(text, " ")
		switch {
		case text == "" || text[0] == '#':
		case word == "bank":
			bank = append(bank, offerOf(strings.Fields(rest)))
		case word == "case":
			c = &nextCase{name: rest, bank: bank}
		case word == "set":
			c.work = append(c.work, Set{Heading: problems.Heading{ID: rest}})
		case word == "did":
			c.did(t, strings.Fields(rest))
		case word == "at":
			c.now = moment(t, rest)
		case word == "next":
			cases++
			c.want(t, rest)
		default:
			t.Fatalf("%q cannot be read", text)
		}
	}
	if cases < 20 {
		t.Fatalf("only %d cases were found", cases)
	}
}

// want compares what comes next with "ID again : REASON".
func (c *nextCase) want(t *testing.T, text string) {
	t.Helper()
	what, why, _ := strings.Cut(text, " : ")
	id, again, _ := strings.Cut(what, " ")
	var times []time.Time
	for _, p := range c.past.Pages {
		for at := p.Begun; !at.After(p.Last); at = at.Add(time.Minute) {
			times = append(times, at)
		}
	}
	c.past.Sittings = SittingsOf(times)
	a, ok := Next(&c.past, c.bank, c.work, c.now)
	if !ok || a.ID != id || a.Again != (again == "again") || !strings.Contains(a.Why, why) {
		t.Errorf("%s: next is %s, again %v: %s; want %s", c.name, a.ID, a.Again, a.Why, text)
	}
	if a.Idea != "" {
		i := slices.IndexFunc(c.bank, func(o Offer) bool { return o.ID == a.ID })
		if !slices.Contains(c.bank[i].Ideas(), a.Idea) || !strings.Contains(a.Why, a.Idea.Title()) {
			t.Errorf("%s: %s is said to be for %s: %s", c.name, a.ID, a.Idea, a.Why)
		}
	}
}

func TestNextOfASmallBank(t *testing.T) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "lantern.yaml"), problemOf(t, "canal-lantern").Raw, 0o600); err != nil {
		t.Fatal(err)
	}
	d := seat(t, "")
	d.tutor.Bank, _ = problems.OpenFolder(folder)
	l, a := take(t, d)
	if a.ID != "canal-lantern" || a.Again {
		t.Fatalf("next is %+v", a)
	}
	handIn(t, l, "T1 up left; T2 up right; w down")
	if a, _ := d.Next(); a.Again || !strings.Contains(a.Why, "stopped at the stage “Components”") {
		t.Fatalf("what was left behind: %+v", a)
	}
	work(t, l)
	if a, _ := d.Next(); !a.Again || !strings.Contains(a.Why, "all the problems") {
		t.Fatalf("the last of all: %+v", a)
	}
	d.tutor.Bank, _ = problems.OpenFolder(t.TempDir())
	if _, ok := d.Next(); ok {
		t.Fatal("something comes next out of nothing")
	}
}

func TestStandingsInWords(t *testing.T) {
	for p, want := range map[Progress]string{
		{}:                                    "not started",
		{Status: Begun, Stage: checker.XSum}:  "in progress, at sum along x",
		{Status: RightFirst}:                  "right first time",
		{Status: WorkedOut}:                   "worked out",
		{Status: ByTrying}:                    "by trial and error",
		{Status: WithSteps}:                   "with steps shown",
		{Status: Disputed}:                    "disputed",
		{Status: Shown, Stage: checker.Solve}: "solution shown; again in progress, at solve",
	} {
		if p.String() != want {
			t.Errorf("%+v is %q, want %q", p, p, want)
		}
	}
}

// TestIdeasBecomeSteadyAndSlip walks one idea through its states.
func TestIdeasBecomeSteadyAndSlip(t *testing.T) {
	for text, want := range map[string]IdeaState{
		"": NewIdea, "a+": NewIdea, "a-": NewIdea, "a+ a+": Learning, "a+ b-": Slipping, "a- b+": Learning,
		"a+ a+ a+": Learning, "a+ a+ b+": Steady, "a- a+ b+": Learning, "a- a+ b+ b+": Steady, "a+ b+ c+ a-": Slipping, "a+ b+ c+ a- b+": Learning,
	} {
		var chances []Chance
		for _, one := range strings.Fields(text) {
			chances = append(chances, Chance{Problem: one[:1], Right: one[1] == '+'})
		}
		if got := stateOf(chances); got != want {
			t.Errorf("%q is %s, want %s", text, got, want)
		}
	}
}

// BenchmarkNext measures what comes next for a student with 1,440 entries.
func BenchmarkNext(b *testing.B) {
	d := seatOfMany(b, 1440)
	d.Next()
	for b.Loop() {
		d.Next()
	}
}

// seatOfMany seats a student with so many entries, on as many problems as they
// reach.
func seatOfMany(tb testing.TB, entries int) *Desk {
	tb.Helper()
	d := seatIn(tb, "")
	n := 0
	for n < entries {
		a, _ := d.Next()
		open := d.Open
		if a.Again {
			open = d.Again
		}
		l, err := open(a.ID)
		if err != nil {
			tb.Fatal(err)
		}
		n++
		for range 30 {
			stage, item, open := l.InHand()
			if !open {
				break
			}
			text := answer(l, stage, item)
			if stage == checker.Components && n%7 == 0 {
				text = fmt.Sprintf("%s tan 40", text)
			}
			if _, err := l.Check(text); err != nil {
				tb.Fatal(err)
			}
			n++
		}
	}
	return d
}

// TestReturnsOfABeginnerStayNear lets each idea of a beginner's first problems go wrong,
// at each of them: what comes back is of a topic begun or the next one of the bank, and
// not hard.
func TestReturnsOfABeginnerStayNear(t *testing.T) {
	d := seat(t, "")
	c := nextCase{bank: d.offers()}
	near := []string{"two-strings", "one-level-string", "one-line", "pulleys"} // begun, and the next of the bank
	returns := 0
	for _, first := range [][]string{{"banner-ring"}, {"shop-sign"}, {"sack-scale"}, {"banner-ring", "canal-lantern"}, {"banner-ring", "canal-lantern", "boat-fender"}} {
		for wrong := range first {
			for _, idea := range c.offer(first[wrong]).Ideas() {
				for _, days := range []int{0, 1, 7} {
					c.past = c.beginner(first, wrong, idea)
					c.now = theFirstDay.Add(time.Duration(len(first)*10+days*24*60) * time.Minute)
					a, _ := Next(&c.past, c.bank, nil, c.now)
					if a.Returns {
						returns++
					}
					if a.Level > 2 || !slices.Contains(near, a.Topic) {
						t.Errorf("%s wrong in %s of %s, %d days later: %s of %s, level %d: %s", idea, first[wrong], first, days, a.ID, a.Topic, a.Level, a.Why)
					}
				}
			}
		}
	}
	if returns < 40 {
		t.Errorf("only %d came back", returns)
	}
}

func (c *nextCase) offer(id string) Offer {
	return c.bank[slices.IndexFunc(c.bank, func(o Offer) bool { return o.ID == id })]
}

// beginner has done these problems, ten minutes each, with one idea wrong in one of them
// and not exercised in the others.
func (c *nextCase) beginner(done []string, wrong int, idea Idea) (past Past) {
	at := theFirstDay
	for i, id := range done {
		o := c.offer(id)
		p := PastPage{Problem: id, Topic: o.Topic, Level: o.Level, Over: true, Status: WorkedOut, Begun: at, Last: at.Add(10 * time.Minute)}
		for _, other := range o.Ideas() {
			if other != idea || i == wrong {
				p.Chances = append(p.Chances, Chance{Idea: other, Problem: id, Right: other != idea, Time: p.Last})
			}
		}
		past.Pages, at = append(past.Pages, p), p.Last
	}
	past.Sittings = []Sitting{{theFirstDay, at}}
	return past
}
