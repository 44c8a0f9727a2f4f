package tutor

import (
	"slices"
	"time"

	"example.org/standstill/checker"
)

// Past is what one student did, as far as ideas and the next problem depend on it:
// the attempts in the order in which they were begun, and the sittings.
type Past struct {
	Pages    []PastPage
	Sittings []Sitting
}

// PastPage is one attempt at a problem. Last is the time of the last entry; Chances
// are in the order of the ideas.
type PastPage struct {
	Problem, Topic string
	Level          int
	Measured       bool // on the numbers of a bench run
	Status         Status
	Stage          checker.Stage // in hand, "" once it is over
	Over           bool
	Begun, Last    time.Time
	Chances        []Chance
}

// PastOf sums up one attempt, whose page is g.
func PastOf(a *Attempt, g *Page) PastPage {
	p := PastPage{Problem: a.Problem, Topic: g.Problem.Topic, Level: g.Problem.Level, Measured: a.Measured(),
		Status: g.status(), Over: g.Over(), Chances: g.Chances()}
	if !p.Over {
		p.Stage, _, _ = g.InHand()
	}
	for i, e := range a.Entries {
		if i == 0 {
			p.Begun, p.Last = e.Time, e.Time
		}
		if !OfTeacher(e) && e.Time.After(p.Last) {
			p.Last = e.Time
		}
	}
	return p
}

// sittingGap is the longest pause within a sitting.
const sittingGap = 30 * time.Minute

// Sitting is a time in which a student worked without a long pause.
type Sitting struct{ Begun, Ended time.Time }

// SittingsOf finds the sittings in the times at which something was done. A pause of
// more than half an hour ends one.
func SittingsOf(times []time.Time) []Sitting {
	var all []Sitting
	for _, at := range slices.SortedFunc(slices.Values(times), time.Time.Compare) {
		if n := len(all); n > 0 && at.Sub(all[n-1].Ended) <= sittingGap {
			all[n-1].Ended = at
			continue
		}
		all = append(all, Sitting{at, at})
	}
	return all
}

// sitting is the number of the sitting that a time belongs to, from 0. A time after
// the last one begins the next.
func (p *Past) sitting(at time.Time) int {
	n := len(p.Sittings)
	for n > 0 && p.Sittings[n-1].Begun.After(at) {
		n--
	}
	// Within the longest pause after its end, a time still belongs to the sitting.
	if n > 0 && at.Sub(p.Sittings[n-1].Ended) <= sittingGap {
		n--
	}
	return n
}

// byIdea lists the chances of each idea in order of time.
func (p *Past) byIdea() map[Idea][]Chance {
	all := map[Idea][]Chance{}
	for _, page := range p.Pages {
		for _, c := range page.Chances {
			all[c.Idea] = append(all[c.Idea], c)
		}
	}
	for _, chances := range all {
		// Pages come in the order in which they were begun, and several may have been open at a time.
		slices.SortStableFunc(chances, func(a, b Chance) int { return a.Time.Compare(b.Time) })
	}
	return all
}

// until returns the chances up to a time.
func until(chances []Chance, at time.Time) []Chance {
	n := len(chances)
	for n > 0 && chances[n-1].Time.After(at) {
		n--
	}
	return chances[:n]
}

// IdeaState is how far a student has come with an idea.
type IdeaState string

// The states. New is before the second chance; Steady is the last three chances
// right, on two problems or more; Slipping is the last chance not right; Learning is
// everything else.
const (
	NewIdea  IdeaState = "new"
	Learning IdeaState = "learning"
	Slipping IdeaState = "slipping"
	Steady   IdeaState = "steady"
)

// steadyAfter is how many right chances in a row make an idea steady.
const steadyAfter = 3

// stateOf is the state after these chances of one idea, which are in order of time.
func stateOf(chances []Chance) IdeaState {
	n := len(chances)
	switch {
	case n < 2:
		return NewIdea
	case !chances[n-1].Right:
		return Slipping
	case n < steadyAfter:
		return Learning
	}
	problems := map[string]bool{}
	for _, c := range chances[n-steadyAfter:] {
		if !c.Right {
			return Learning
		}
		problems[c.Problem] = true
	}
	// The same problem three times may be remembered without being understood.
	if len(problems) < 2 {
		return Learning
	}
	return Steady
}

// HeldIdea is an idea with how a student has done with it: every chance in order of
// time.
type HeldIdea struct {
	Idea
	State   IdeaState
	Chances []Chance
}

// Slipped returns the last chance that was not right; ok is false where none was.
func (h HeldIdea) Slipped() (c Chance, ok bool) {
	for i := len(h.Chances) - 1; i >= 0; i-- {
		if !h.Chances[i].Right {
			return h.Chances[i], true
		}
	}
	return Chance{}, false
}

// Ideas lists every idea of the table with how the student has done with it.
func (p *Past) Ideas() []HeldIdea {
	byIdea := p.byIdea()
	held := make([]HeldIdea, len(ideas))
	for i, row := range ideas {
		chances := byIdea[row.Idea]
		held[i] = HeldIdea{row.Idea, stateOf(chances), chances}
	}
	return held
}

// shownChances is how many chances are shown of an idea.
const shownChances = 5

// SaidIdeas says of each idea that the student has had a chance at how far it has
// come: a word, the last chances with the latest at the end, and where it went wrong
// last.
func (d *Desk) SaidIdeas() []string {
	var said []string
	for _, held := range d.Past().Ideas() {
		if len(held.Chances) > 0 {
			said = append(said, saidIdea(held, d.SlippedIn(held)))
		}
	}
	return said
}

// Marks are the last chances of an idea as signs, the latest at the end: ✓ for right
// first time, ✗ for not.
func (h HeldIdea) Marks() string {
	marks := ""
	for _, c := range h.Chances[max(0, len(h.Chances)-shownChances):] {
		if c.Right {
			marks += "✓"
		} else {
			marks += "✗"
		}
	}
	return marks
}

// SlippedIn says where an idea went wrong last: the problem's title, and the place in
// it; "" where it never did.
func (d *Desk) SlippedIn(h HeldIdea) string {
	c, ok := h.Slipped()
	if !ok {
		return ""
	}
	title := c.Problem
	if known, ok := d.heading(c.Problem); ok {
		title = known.Title
	}
	return quote(title) + ", " + saidPlace(Place{c.Stage, c.Item})
}
