package tutor

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// What a lesson says beside the judgement of a line. The checker says the same of the
// same line always; only the lesson knows what came before.

// remark adds to a line that was judged just now what the page before it makes worth
// saying. The page does not have the line yet.
func (g *Page) remark(l *Line) {
	if l.Kind != Typed {
		return
	}
	for _, t := range l.tries {
		// Once on a page is enough.
		if t.unsigned && !g.sizeTaken {
			g.sizeTaken = true
			l.Notes = append(l.Notes, g.saidSize(t.at))
		}
	}
	r, ok := l.refusedStatement()
	if !ok {
		return
	}
	l.Doubt = g.doubt(r)
	if said := g.sameAgain(r); said != "" {
		l.Notes = append(l.Notes, said)
	}
	l.OffersHint = !g.class.NoHints && g.isThird(l)
}

// refusedStatement is the first statement of a line that is wrong.
func (l *Line) refusedStatement() (checker.Report, bool) {
	for _, r := range l.Statements() {
		if r.Verdict == checker.Wrong {
			return r, true
		}
	}
	return checker.Report{}, false
}

// placeOf is the item that a statement is about, without one for a line of working.
func placeOf(r checker.Report) Place {
	if len(r.Answers) > 0 {
		return Place{r.Stage, r.Answers[0]}
	}
	return Place{Stage: r.Stage}
}

// sameAgain says that a mistake was made before on this page, where, and the rule;
// "" for one that is new. It counts as no hint.
func (g *Page) sameAgain(r checker.Report) string {
	// Some mistakes are no habit, and coming twice means nothing.
	if r.Code.IsPassing() {
		return ""
	}
	for i := range g.lines {
		l := &g.lines[i]
		if l.Kind != Typed || l.Accepted {
			continue
		}
		for _, before := range l.Statements() {
			if !r.IsSameMistake(&before) {
				continue
			}
			rule := ""
			if !g.class.NoHints {
				rule = g.Ref.Hint(checker.Answer{Stage: r.Stage, Item: r.Item, Text: r.Text}, r, ruleLevel)
			}
			return saidSameAgain(placeOf(before), placeOf(r), rule)
		}
	}
	return ""
}

// isThird reports whether a line is the third that was refused at an item since a
// hint was asked for.
func (g *Page) isThird(l *Line) bool {
	texts := map[Place]int{}
	for i := range g.lines {
		if g.lines[i].Kind == Hinted {
			clear(texts)
		}
		for p := range g.lines[i].wrongAt() {
			texts[p]++
		}
	}
	for p := range l.wrongAt() {
		// Exactly at the third, so that the offer is made once.
		if texts[p]+1 == mostTries {
			return true
		}
	}
	return false
}

// endsInNumber finds the number, and its unit, that a line ends in.
var endsInNumber = pattern.Of(`=\s*(\d+(?:[.,]\d+)?)\s*([A-Za-z°]*)\s*$`)

// doubt asks about a refused value that no way of being at rest could give, however
// the angles are: "Is that possible? The weight is 25 N."; "" for a value that could.
func (g *Page) doubt(r checker.Report) string {
	name := placeOf(r).Item
	if r.Stage != checker.Solve || name == "" {
		return ""
	}
	m := endsInNumber().FindStringSubmatch(strings.TrimSpace(r.Text))
	if m == nil {
		return ""
	}
	number, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
	unit, known := quantity.Find(m[2])
	// Without a unit, the value is in the one that is asked for.
	if m[2] == "" || !known {
		unit = g.Ref.Unit(name)
	}
	if err != nil || unit.Dim != quantity.Force {
		return ""
	}
	if against := g.impossible(name, number*unit.Factor); against != nil {
		value, _ := g.Ref.Value(against.Name)
		return saidDoubt(against, g.Ref.Unit(name).In(value, 3))
	}
	return ""
}

// surely is how far beyond a bound a value has to be, so that rounding is no reason.
const surely = 1.03

// impossible returns a known force that a value of an unknown cannot be brought
// together with, nil for none. In one sum, forces that only pull or only push cannot
// be negative; so what stands alone against a known force along the axis is at least
// as large, and what stands against nothing but known forces is not larger than all of
// them.
func (g *Page) impossible(name string, value float64) *statics.Force {
	for i := range g.Ref.Bodies {
		for _, axis := range []statics.Axis{statics.X, statics.Y} {
			if f := g.contradiction(&g.Ref.Bodies[i], axis, name, value); f != nil {
				return f
			}
		}
	}
	return nil
}

func (g *Page) contradiction(body *statics.Body, axis statics.Axis, name string, value float64) *statics.Force {
	b := balance{page: g, body: body, axis: axis, name: name, ok: true}
	for i := range body.Forces {
		if f := &body.Forces[i]; f.Factor(axis).Sign != 0 && b.isOwn(f) {
			b.take(f)
		}
	}
	if b.own == 0 {
		return nil
	}
	for i := range body.Forces {
		// In a second round, because weigh has to know which way the unknown points.
		if f := &body.Forces[i]; f.Factor(axis).Sign != 0 && !b.isOwn(f) {
			b.weigh(f)
		}
	}
	switch {
	case !b.ok || b.largest == nil:
		return nil
	case b.alone() && float64(b.own)*value*surely < b.straight:
		return b.largest
	case !b.unknown && b.share*value > b.against*surely:
		return b.largest
	}
	return nil
}

// balance is one sum, seen from one unknown force in it.
type balance struct {
	page     *Page
	body     *statics.Body
	axis     statics.Axis
	name     string
	ok       bool           // no force of it can have either sign
	own      int            // terms of the unknown
	side     int            // to which it points
	share    float64        // what of it lies along the axis, in all its terms
	beside   int            // other forces that point the same way
	against  float64        // the sizes of the known forces against it
	unknown  bool           // an unknown force is against it, too
	straight float64        // the largest of the known ones that lies along the axis
	largest  *statics.Force // that one, or the largest of all
}

func (b *balance) alone() bool { return b.beside == 0 && b.straight > 0 }

// isOwn reports whether a force has the size of the unknown, or one that is equal to
// it.
func (b *balance) isOwn(f *statics.Force) bool {
	size := f.SizeNode().Name
	if f.Direction != nil || size == "" {
		return false
	}
	return size == b.name || slices.ContainsFunc(b.page.Problem.System.Equal, func(e statics.Equal) bool {
		return slices.Contains(e.Names, size) && slices.Contains(e.Names, b.name)
	})
}

func (b *balance) take(f *statics.Force) {
	if b.own > 0 && f.Factor(b.axis).Sign != b.side {
		b.ok = false
	}
	b.own++
	b.side = f.Factor(b.axis).Sign
	b.share += b.along(f)
}

// along is the share of a force's size that lies along the axis.
func (b *balance) along(f *statics.Force) float64 {
	x, y := b.page.Ref.Room(b.body, f)
	sin, cos := math.Sincos(b.page.Ref.Tilt(b.body))
	if b.axis == statics.X {
		return math.Abs(x*cos + y*sin)
	}
	return math.Abs(y*cos - x*sin)
}

// isKnown reports whether a force's size follows from the givens alone.
func (g *Page) isKnown(f *statics.Force) bool {
	return f.Size != nil && !slices.ContainsFunc(f.Size.Names(), func(name string) bool {
		v, ok := g.Ref.Variable(name)
		return !ok || v.Role != statics.IsGiven
	})
}

func (b *balance) weigh(f *statics.Force) {
	value, ok := b.page.Ref.Value(f.Name)
	known := b.page.isKnown(f)
	switch {
	// An unknown push or friction may point either way, and then nothing is certain.
	case f.Direction != nil, !ok, !known && f.Kind != statics.Tension && f.Kind != statics.Normal:
		b.ok = false
	case f.Factor(b.axis).Sign == b.side:
		b.beside++
	case !known:
		b.unknown = true
	default:
		b.against += value
		if !f.Slanted() && value > b.straight {
			b.straight, b.largest = value, f
		}
		if b.largest == nil {
			b.largest = f
		}
	}
}
