package tutor

import (
	"cmp"
	"slices"

	"example.org/standstill/problems"
)

// Advice is a problem to take next with the reason in one sentence. Again says
// that it is a problem to be begun anew, with Desk.Again.
type Advice struct {
	problems.Heading
	Why   string
	Again bool
}

const (
	enough  = 2 // problems without help that lead a level up
	aWhile  = 3 // other problems before one that went wrong comes back
	hardest = 3
)

// Next says which problem comes next: what is set for the class, until it is done.
// Then, within a topic new problems come before old
// ones; what went wrong comes back after a while; two problems without help lead
// a level up, and past the last level to the next topic. The student may always
// choose otherwise. ok is false for a bank without problems.
func (d *Desk) Next() (a Advice, ok bool) {
	for _, choose := range []func() (Advice, bool){d.nextSet, d.wrongBefore, d.newOnes, d.leftBehind, d.longestAgo} {
		if a, ok := choose(); ok {
			return a, true
		}
	}
	return Advice{}, false
}

// wrongBefore finds the oldest problem that went wrong, if enough others were
// begun since and the last problem was not such a return itself.
func (d *Desk) wrongBefore() (Advice, bool) {
	if n := len(d.history.Attempts); n == 0 || d.history.Attempts[n-1].Copy > 0 {
		return Advice{}, false
	}
	for i, a := range d.history.Attempts {
		others := map[string]bool{}
		for _, later := range d.history.Attempts[i+1:] {
			others[later.Problem] = true
		}
		p := d.Progress(a.Problem)
		wentWrong := p.Stage == "" && (p.Standing == Shown || p.Standing == WithHints || p.Standing == Contested)
		if !others[a.Problem] && len(others) >= aWhile && wentWrong {
			if h, ok := d.heading(a.Problem); ok {
				return Advice{h, saidReturn(h, p.Standing), true}, true
			}
		}
	}
	return Advice{}, false
}

func (d *Desk) heading(id string) (problems.Heading, bool) {
	for _, h := range d.tutor.Bank.List() {
		if h.ID == id {
			return h, true
		}
	}
	return problems.Heading{}, false
}

// newOnes finds a problem that was not begun: in the topic in hand at the level
// that the student has reached, then in the topics after it, then before it.
func (d *Desk) newOnes() (Advice, bool) {
	shelves := d.topics()
	at := d.shelfInHand(shelves)
	for i := range shelves {
		s := shelves[(at+i)%len(shelves)]
		level := s.level()
		if level > hardest && i == 0 {
			continue
		}
		if h, ok := s.fresh(level); ok {
			return Advice{Heading: h, Why: saidNew(h, s, i == 0, level)}, true
		}
	}
	for _, s := range shelves {
		if h, ok := s.fresh(hardest); ok {
			return Advice{Heading: h, Why: saidNew(h, s, false, hardest)}, true
		}
	}
	return Advice{}, false
}

// shelfInHand is the topic of the problem begun last, else the first.
func (d *Desk) shelfInHand(shelves []Shelf) int {
	if len(d.history.Attempts) == 0 {
		return 0
	}
	last := d.history.Attempts[len(d.history.Attempts)-1].Problem
	return max(0, slices.IndexFunc(shelves, func(s Shelf) bool {
		return slices.ContainsFunc(s.Problems, func(l Listed) bool { return l.ID == last })
	}))
}

// level is the level that the student has reached in a topic: one above the
// highest with enough problems done unaided, levels without problems passed over;
// beyond the hardest once nothing is above.
func (s Shelf) level() int {
	level := 1
	for at := 1; at <= hardest; at++ {
		unaided, all := 0, 0
		for _, l := range s.Problems {
			if l.Level == at {
				all++
				if l.Standing == Unaided {
					unaided++
				}
			}
		}
		if unaided >= min(enough, all) && level == at {
			level = at + 1
		}
	}
	return level
}

// fresh finds a problem not begun at that level, else the nearest below, else the
// nearest above.
func (s Shelf) fresh(level int) (problems.Heading, bool) {
	var list []Listed
	for _, l := range s.Problems {
		if l.Standing == NotBegun {
			list = append(list, l)
		}
	}
	if list == nil {
		return problems.Heading{}, false
	}
	away := func(l Listed) int {
		if l.Level > level {
			return hardest + l.Level - level
		}
		return level - l.Level
	}
	return slices.MinFunc(list, func(a, b Listed) int { return cmp.Compare(away(a), away(b)) }).Heading, true
}

// leftBehind finds an attempt that was never finished.
func (d *Desk) leftBehind() (Advice, bool) {
	for _, h := range d.tutor.Bank.List() {
		if p := d.Progress(h.ID); p.Stage != "" && p.Standing == Begun {
			return Advice{Heading: h, Why: saidLeftBehind(p.Stage)}, true
		}
	}
	return Advice{}, false
}

// longestAgo finds the problem done longest ago, those not done unaided first.
func (d *Desk) longestAgo() (Advice, bool) {
	rank := func(id string) int {
		if d.Progress(id).Standing == Unaided {
			return 1
		}
		return 0
	}
	list := d.tutor.Bank.List()
	if len(list) == 0 {
		return Advice{}, false
	}
	h := slices.MinFunc(list, func(a, b problems.Heading) int {
		return cmp.Or(cmp.Compare(rank(a.ID), rank(b.ID)), cmp.Compare(d.lastTouched(a.ID), d.lastTouched(b.ID)))
	})
	return Advice{h, saidAllDone, true}, true
}

func (d *Desk) lastTouched(id string) (last int) {
	for _, a := range d.history.Of(id) {
		last = max(last, a.touched)
	}
	return last
}
