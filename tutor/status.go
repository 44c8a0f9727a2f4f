package tutor

import (
	"slices"
	"strings"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/statics"
)

// Status is what a student's work on a problem comes to. It is found from what
// was answered, in which order; no clock decides anything.
type Status uint8

// Each status is better than the one before. Disputed: a line that was
// refused counts because the student went on with it, and no teacher has accepted
// it. WithSteps: a third hint showed a step. ByTrying: one answer after the other
// was tried without asking. WorkedOut is everything else that is done.
const (
	NotBegun Status = iota
	Begun
	Shown
	Disputed
	WithSteps
	ByTrying
	WorkedOut
	RightFirst
)

// Done reports whether the problem counts as done.
func (s Status) Done() bool { return s > Shown }

// itemGo is one item of the page and how it was answered. Its first answer is the first
// one that was understood and was more than almost right.
type itemGo struct {
	Place
	answered bool
	first    bool // right at its first answer
	code     checker.Code
	about    string
	at       time.Time // of the first answer

	formal   []formal // answers before it that were almost right
	hinted   int      // the highest hint before it
	unsigned bool     // a component without its sign, which was taken as a size
}

// formal is a mistake of form alone.
type formal struct {
	code checker.Code
	at   time.Time
}

// try is what one statement of a line says about one item; Item is "" for a line of
// working.
type try struct {
	at Place
	checker.Report
	unsigned bool // a component without its sign, which was taken as a size
	void     bool // right, and answered otherwise in the same text
}

// triesOf lists what a line says about each item that it is an answer to; lines of
// working are about none.
func (g *Page) triesOf(l *Line) []try {
	var tries []try
	for _, r := range l.Statements() {
		if r.Verdict == checker.Unread {
			continue
		}
		items := r.Answers
		for _, item := range r.Settles {
			if !slices.Contains(items, item) {
				// A copy: the list belongs to the report.
				items = append(slices.Clone(items), item)
			}
		}
		for _, item := range items {
			t := try{at: Place{r.Stage, item}, Report: r, void: slices.Contains(r.Void, item)}
			t.unsigned = r.Stage == checker.Components && r.Verdict == checker.Right && g.isAgainst(item) && !hasMinus(r.Read)
			tries = append(tries, t)
		}
	}
	return tries
}

// wrongAt returns the codes that a line was refused with, one for each item. A line
// that a teacher accepted is refused nowhere.
func (l *Line) wrongAt() map[Place]checker.Code {
	wrong := map[Place]checker.Code{}
	for _, t := range l.tries {
		if _, known := wrong[t.at]; t.Verdict == checker.Wrong && !known && !l.Accepted {
			wrong[t.at] = t.Code
		}
	}
	return wrong
}

// isAgainst reports whether a component points against its axis.
func (g *Page) isAgainst(item string) bool {
	f, axis, ok := componentOf(g.Problem.System, item)
	return ok && g.Ref.Negative(f, axis)
}

// componentOf finds the force and axis of an item of Components: "T1x", "A.T1x".
func componentOf(s *statics.System, item string) (f *statics.Force, axis statics.Axis, ok bool) {
	if item == "" {
		return nil, 0, false
	}
	name := item[:len(item)-1]
	if item[len(item)-1] == 'y' {
		axis = statics.Y
	}
	on, force, dotted := strings.Cut(name, ".")
	if !dotted {
		on, force = "", name
	}
	body, ok := s.Body(on)
	if !ok {
		return nil, axis, false
	}
	f, ok = body.Force(force)
	return f, axis, ok
}

// inAngle is the argument of a function, whose minus is no sign of the whole.
var inAngle = pattern.Of(`(sin|cos|tan)\s*\([^()]*\)`)

// hasMinus reports whether the right side of a line as it is read has a sign.
func hasMinus(read string) bool {
	right := read[strings.LastIndex(read, "=")+1:]
	return strings.ContainsAny(inAngle().ReplaceAllString(right, ""), "−-")
}

// places lists every item that the problem asks for, those of Components left out
// where the student passed them over.
func (g *Page) places() []Place {
	var all []Place
	for _, stage := range checker.Stages {
		if stage == checker.Components && g.passed {
			continue
		}
		for _, item := range g.asked(stage) {
			all = append(all, Place{stage, item})
		}
	}
	return all
}

// goes says of every item how it was answered, in the order of the stages.
func (g *Page) goes() []itemGo {
	places := g.places()
	goes := make([]itemGo, len(places))
	at := make(map[Place]*itemGo, len(places))
	for i, p := range places {
		goes[i].Place = p
		at[p] = &goes[i]
	}
	for i := range g.lines {
		switch l := &g.lines[i]; l.Kind {
		case Hinted:
			one := at[l.about.Place]
			if one == nil {
				one = at[Place{l.TypedIn, l.Item}]
			}
			if one != nil && !one.answered {
				one.hinted = max(one.hinted, l.Level)
			}
		case Typed:
			l.answers(at)
		}
	}
	return goes
}

// answers puts what a line says to the items that it is about.
func (l *Line) answers(at map[Place]*itemGo) {
	fresh := map[Place]bool{}
	for _, t := range l.tries {
		one := at[t.at]
		// Only the first text that answers an item tells what the student knew.
		if one == nil || one.answered && !fresh[t.at] {
			continue
		}
		right := t.Verdict == checker.Right && !t.void || l.Accepted
		if t.Verdict == checker.Almost && !l.Accepted {
			one.formal = append(one.formal, formal{t.Code, l.Time})
			continue
		}
		switch {
		case !one.answered:
			one.first, one.unsigned, one.at = right, t.unsigned, l.Time
		case right && one.first && l.contradicts(t.at):
			right = false
		}
		one.answered, fresh[t.at] = true, true
		// Of several answers in one text the wrong one counts: who types both of two
		// knows neither.
		if !right && (one.first || one.code == "") {
			one.first, one.code, one.about = false, t.Code, t.About
		}
	}
	if l.Accepted {
		// The teacher's word stands for the whole text.
		for p := range fresh {
			at[p].first = true
		}
	}
}

// contradicts reports whether a line answers a component both as a size and against
// the axis, each right by itself.
func (l *Line) contradicts(p Place) bool {
	var as [2]bool
	for _, t := range l.tries {
		if t.at == p && t.Verdict == checker.Right {
			if t.unsigned {
				as[0] = true
			} else {
				as[1] = true
			}
		}
	}
	return p.Stage == checker.Components && as[0] && as[1]
}

// isFirst reports whether the item was right first time: nobody had shown it before.
func (i *itemGo) isFirst() bool { return i.answered && i.first && i.hinted < lastLevel }

// RightFirst counts the items that were answered and those that were right first time.
func (g *Page) RightFirst() (first, answered int) {
	for _, one := range g.goes() {
		if one.answered {
			answered++
		}
		if one.isFirst() {
			first++
		}
	}
	return first, answered
}

// status finds the best status that applies.
func (g *Page) status() Status {
	_, shown := g.Hints()
	switch {
	// The worst comes first: whatever was right, a solution that was shown outweighs it.
	case g.revealed:
		return Shown
	case !g.Solved():
		return Begun
	case g.contested():
		return Disputed
	case shown > 0:
		return WithSteps
	case g.byTrying():
		return ByTrying
	}
	if g.isRightFirst() {
		return RightFirst
	}
	return WorkedOut
}

// isRightFirst reports whether few enough items were missed, and some sum was right
// first time: who has to be refused in every sum has balanced nothing alone,
// however few sums there are.
func (g *Page) isRightFirst() bool {
	misses, sum := 0, false
	for _, one := range g.goes() {
		switch first := one.isFirst(); {
		case one.answered && !first:
			misses++
		case first && (one.Stage == checker.XSum || one.Stage == checker.YSum):
			sum = true
		}
	}
	return sum && misses <= g.allowedMisses()
}

// contested reports whether an item counts on the student's word alone.
func (g *Page) contested() bool {
	for _, stage := range checker.Stages {
		for _, item := range g.Items(stage) {
			if item.Disputed {
				return true
			}
		}
	}
	return false
}

// fewItems is how many items a problem may have for one miss to be all that still counts
// as right first time; with more there may be two.
const fewItems = 10

// allowedMisses goes by all that the problem asks: who passes Components over is
// judged no harder than who writes them.
func (g *Page) allowedMisses() int {
	n := 0
	for _, stage := range checker.Stages {
		n += len(g.asked(stage))
	}
	if n <= fewItems {
		return 1
	}
	return 2
}

// mostTries is how many refused texts without a hint between them make a page one
// that was done by trying.
const mostTries = 3

// byTrying reports whether the same mistake was refused in three texts at three
// items, or three texts were refused at one item, with no hint asked for between.
func (g *Page) byTrying() bool {
	texts := map[Place]int{}
	same := map[checker.Code]*sameCode{}
	for i := range g.lines {
		if g.lines[i].Kind == Hinted {
			clear(texts)
			clear(same)
			continue
		}
		codes := map[checker.Code]bool{}
		for p, code := range g.lines[i].wrongAt() {
			texts[p]++
			if same[code] == nil {
				same[code] = &sameCode{places: map[Place]bool{}}
			}
			same[code].places[p] = true
			codes[code] = true
			if texts[p] >= mostTries {
				return true
			}
		}
		for code := range codes {
			if same[code].texts++; same[code].texts >= mostTries && len(same[code].places) >= mostTries {
				return true
			}
		}
	}
	return false
}

// sameCode is where one mistake was refused, and in how many texts.
type sameCode struct {
	texts  int
	places map[Place]bool
}
