package tutor

import (
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// Limit is a question after Solve: what an unknown comes to when an angle gets close
// to 0° or 90°. It is judged like an answer to the problem with that angle.
type Limit struct {
	ID       string
	Question string
	Endless  bool    // it grows without bound
	Nothing  bool    // it comes to 0
	Value    float64 // in SI, else
	name     string
	angle    string
	degrees  float64
	at       *checker.Reference // the problem at the limit; nil for an endless one
}

// nearEnd is how close to its end an angle is tried, in degrees.
const nearEnd = 0.01

// makeLimit makes the question of this copy; ok is false where the problem has no limit
// that can be asked about.
func (g *Page) makeLimit() (l Limit, ok bool) {
	a := g.Angles()
	// Where the equations are not linear, the way to the end may lead to another solution.
	if a == nil || !a.model.Linear() {
		return Limit{}, false
	}
	var all []Limit
	for _, k := range a.sliders {
		if k.Unit.Dim != quantity.Angle || g.Problem.System.TurnsFully(k.Name) {
			continue
		}
		for _, end := range []float64{0, 90} {
			all = append(all, g.limitsAt(a, k, end)...)
		}
	}
	if len(all) == 0 {
		return Limit{}, false
	}
	return all[g.dice("limit", len(all))], true
}

// limitsAt lists the questions about one end of one angle: where all the way there the
// bodies can be at rest.
func (g *Page) limitsAt(a *Angles, k Slider, end float64) (all []Limit) {
	degree := quantity.Degree / k.Unit.Factor
	near := end + nearEnd
	if end > 0 {
		near = end - nearEnd
	}
	env := a.env
	for i := 1; i <= wayThere; i++ {
		var why string
		if env, why = a.at(k, k.Value+(near*degree-k.Value)*float64(i)/wayThere, env); why != "" {
			return nil
		}
	}
	// Twice as far from the end, to see how the values change on the way to it.
	before, why := a.at(k, (2*near-end)*degree, env)
	if why != "" {
		return nil
	}
	for _, name := range g.Problem.System.Find {
		if v, ok := g.Ref.Variable(name); ok && v.Dim == quantity.Force && !g.IsFormula(name) {
			if l, ok := g.limitOf(a, k, name, end, env, before); ok {
				all = append(all, l)
			}
		}
	}
	return all
}

// wayThere is how many steps lead to the end, each a place where forces must be able to
// be at rest.
const wayThere = 24

// limitOf tells what an unknown comes to from its values close to the end and twice as
// far from it.
func (g *Page) limitOf(a *Angles, k Slider, name string, end float64, env, before []float64) (Limit, bool) {
	slot, _ := a.model.Slot(name)
	x, y, now := env[slot], before[slot], a.env[slot]
	l := Limit{ID: name + " " + k.Name, Question: saidLimit(name, k.Name, end), name: name, angle: k.Name, degrees: end}
	switch {
	// Half the distance, twice the value: it grows like one over the distance.
	case x > 100*now && abs(x/y-2) < 0.02:
		l.Endless = true
		return l, true
	case abs(x) < 1e-2*now && abs(y/x-2) < 0.02, abs(x) < 1e-6*now:
		l.Nothing = true
		return l, true
	case abs(x-y) > 1e-3*abs(x), abs(x-now) < 0.1*now:
		return l, false // no limit yet, or one that is hardly another value
	}
	// Exactly at the end the equations may have no single solution.
	for _, at := range []float64{end, end - nearEnd, end + nearEnd} {
		ref, err := g.withAngle(k.Name, at)
		if err != nil {
			continue
		}
		if value, ok := ref.Value(name); ok && abs(value-x) < 1e-2*abs(x) {
			l.at, l.Value = ref, value
			return l, true
		}
	}
	return l, false
}

// withAngle solves the problem with one angle changed, in degrees.
func (g *Page) withAngle(name string, degrees float64) (*checker.Reference, error) {
	system := *g.Problem.System
	system.Givens = slices.Clone(system.Givens)
	for i, given := range system.Givens {
		if given.Name == name {
			system.Givens[i] = statics.Given{Name: name, Unit: given.Unit, Number: quantity.Exact(degrees * quantity.Degree / given.Unit.Factor)}
		}
	}
	return checker.New(&system)
}

// Words for what has no bound, and for nothing.
var (
	endless = strings.Fields(`infinite infinity ∞ inf unbounded endless endlessly huge`)
	bound   = []string{"without bound", "without limit", "no limit", "no bound", "infinitely", "very large", "towards infinity", "to infinity", "gets infinite"}
	nothing = strings.Fields(`0 0n zero nothing none 0.0 0,0 nil`)
)

// judge reports whether an answer is right; read is false for one that cannot be read.
func (l Limit) judge(text string) (right, read bool) {
	said := strings.ToLower(strings.Trim(strings.TrimSpace(text), ".!"))
	if _, value, found := strings.Cut(said, "="); found {
		said = strings.TrimSpace(value)
	}
	for _, b := range bound {
		if strings.Contains(said, b) {
			return l.Endless, true
		}
	}
	switch {
	case slices.Contains(endless, said):
		return l.Endless, true
	case slices.Contains(nothing, strings.ReplaceAll(said, " ", "")):
		return l.Nothing, true
	}
	return l.judgeFormula(text)
}

func (l Limit) judgeFormula(text string) (right, read bool) {
	if l.at == nil {
		// Nothing that is an expression is right, but it has been understood.
		var none expr.Letters
		_, err := none.Read(text)
		return false, err == nil
	}
	report := l.at.Mark(checker.Answer{Stage: checker.Solve, Item: l.name, Text: text}, nil)
	return report.Verdict == checker.Right || report.Code == checker.NoUnit, report.Verdict != checker.Unread
}

// saysOther reports whether a text is an equation for something else than a letter: a
// further line of working.
func (g *Page) saysOther(text, name string) bool {
	left, _, found := strings.Cut(text, "=")
	if !found {
		return false
	}
	letter, ok := g.Ref.LetterOf(strings.TrimSpace(left), "")
	return !ok || letter != name
}

// Limit returns the question that closes a page, until it is answered or another problem
// is taken up.
func (g *Page) Limit() (l Limit, ok bool) {
	if g.class.Limits == QuestionsOff || g.revealed || g.limited || !g.Solved() {
		return Limit{}, false
	}
	return g.limit()
}

// limitLine is what an answer to the question comes to, for the page.
func (g *Page) limitLine(text string) Line {
	line := Line{Kind: Limited, TypedIn: checker.Solve, AsTyped: text}
	if l, ok := g.limit(); ok {
		right, _ := l.judge(text)
		line.Verdict = checker.Wrong
		if right {
			line.Verdict = checker.Right
		}
		line.Read = text
		line.Message = g.saidLimitIs(l, right)
	}
	return line
}
