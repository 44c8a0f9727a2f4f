package tutor

import (
	"fmt"
	"hash/fnv"
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// Prediction is a question before the first sum that needs no calculation. Right is the
// place of the choice that comes out, and is for nobody's eyes before Solve.
type Prediction struct {
	ID       string
	Question string
	Choices  []Choice
	Right    int
	values   []string // what came out: "T₁ = 20.2 N"
}

// Choice is one answer that is offered. Word is what may be typed for it beside its
// number, Said what the student then says.
type Choice struct{ Word, Said string }

// clearly is the ratio of two sizes that are asked about, or more.
const clearly = 1.1

// Words of the choices.
const (
	wordMore, wordLess, wordSame = "more", "less", "same"
	wordLarger, wordSmaller      = "larger", "smaller"
)

// makePrediction makes the question of this copy; ok is false where none makes sense. Which
// of several it is, is drawn by dice of its own, so that other draws do not move.
func (g *Page) makePrediction() (p Prediction, ok bool) {
	all := slices.Concat(g.comparisons(), g.besideWeight(), g.ifSmaller())
	if len(all) == 0 {
		return Prediction{}, false
	}
	return all[g.dice("predict", len(all))], true
}

// dice draws one of n by what this copy is and what is drawn for.
func (g *Page) dice(what string, n int) int {
	// A hash, because a student who comes back must find the same question.
	h := fnv.New64a()
	fmt.Fprintf(h, "%s\x00%s\x00%s", what, g.Problem.ID, g.Problem.Copy)
	return int(h.Sum64() % uint64(n))
}

// unknownForces lists the forces with an unknown size, each name once, with a body that
// they act on.
func (g *Page) unknownForces() (names []string, of map[string]*statics.Force, on map[string]*statics.Body) {
	of, on = map[string]*statics.Force{}, map[string]*statics.Body{}
	for i := range g.Ref.Bodies {
		b := &g.Ref.Bodies[i]
		for j := range b.Forces {
			f := &b.Forces[j]
			if v, ok := g.Ref.Variable(f.Name); !ok || v.Role != statics.IsUnknown || of[f.Name] != nil {
				continue
			}
			names = append(names, f.Name)
			of[f.Name], on[f.Name] = f, b
		}
	}
	return names, of, on
}

// comparisons ask which of two forces on one body is larger.
func (g *Page) comparisons() (all []Prediction) {
	names, of, on := g.unknownForces()
	for i, a := range names {
		for _, b := range names[i+1:] {
			x, _ := g.Ref.Value(a)
			y, _ := g.Ref.Value(b)
			// What is nearly equal cannot be seen in a drawing.
			if on[a] != on[b] || of[a].Kind != of[b].Kind || !differ(x, y) {
				continue
			}
			p := Prediction{ID: "larger " + a + " " + b, Question: saidWhichLarger(a, b),
				// “same” is never right here, but it is what many students believe of two strings.
				Choices: []Choice{{a, saidIsLarger(a, b)}, {b, saidIsLarger(b, a)}, {wordSame, saidAreEqual(a, b)}},
				values:  []string{g.came(a), g.came(b)}}
			if y > x {
				p.Right = 1
			}
			all = append(all, p)
		}
	}
	return all
}

// differ reports whether two sizes are so different that one can ask about it.
func differ(x, y float64) bool { return x > 0 && y > 0 && max(x, y) >= clearly*min(x, y) }

// besideWeight asks of one force whether it is more than the weight on its body, less,
// or as much.
func (g *Page) besideWeight() (all []Prediction) {
	names, of, on := g.unknownForces()
	for _, name := range names {
		w := onlyWeight(on[name])
		if w == nil || !g.isKnown(w) || of[name].Kind == statics.Friction {
			continue
		}
		x, _ := g.Ref.Value(name)
		y, _ := g.Ref.Value(w.Name)
		p := Prediction{ID: "weight " + name + " " + w.Name, Question: saidBesideWeight(name, w.Name),
			Choices: []Choice{{wordMore, saidMore(name, w.Name)}, {wordLess, saidLess(name, w.Name)}, {wordSame, saidAsMuch(name, w.Name)}},
			values:  []string{g.came(name), g.came(w.Name)}}
		switch {
		case differ(x, y) && x < y:
			p.Right = 1
		case x > 0 && y > 0 && max(x, y) < min(x, y)*(1+1e-9):
			p.Right = 2
		case !differ(x, y):
			continue
		}
		all = append(all, p)
	}
	return all
}

func onlyWeight(b *statics.Body) (w *statics.Force) {
	for i := range b.Forces {
		if b.Forces[i].Kind == statics.Weight {
			if w != nil {
				return nil
			}
			w = &b.Forces[i]
		}
	}
	return w
}

// turnedBy is how far an angle is turned for the question what follows, in degrees, at
// most half of it.
const turnedBy = 10

// ifSmaller asks what happens to an unknown if an angle gets smaller.
func (g *Page) ifSmaller() (all []Prediction) {
	a := g.Angles()
	if a == nil || !a.model.Linear() {
		return nil // elsewhere there may be another solution than the one nearby
	}
	names, _, _ := g.unknownForces()
	for i, k := range a.sliders {
		if k.Unit.Dim != quantity.Angle || g.Problem.System.TurnsFully(k.Name) {
			continue
		}
		step := min(turnedBy*quantity.Degree/k.Unit.Factor, k.Value/2)
		// Half of the way is looked at as well, to leave out what rises and falls again.
		half, why := a.at(k, k.Value-step/2, a.env)
		if why != "" {
			continue
		}
		whole, why := a.at(k, k.Value-step, half)
		if why != "" {
			continue
		}
		for _, name := range names {
			if p, ok := g.turnedTo(a, i, name, half, whole); ok {
				all = append(all, p)
			}
		}
	}
	return all
}

// turnedTo asks about one unknown; half and whole are the values half and all of the way.
func (g *Page) turnedTo(a *Angles, slider int, name string, half, whole []float64) (Prediction, bool) {
	slot, ok := a.model.Slot(name)
	if !ok || !slices.Contains(g.Problem.System.Find, name) {
		return Prediction{}, false
	}
	letter := a.sliders[slider].Name
	p := Prediction{ID: "smaller " + letter + " " + name, Question: saidIfSmaller(name, letter),
		Choices: []Choice{{wordLarger, saidGetsLarger(name, letter)}, {wordSmaller, saidGetsSmaller(name, letter)}, {wordSame, saidStaysTheSame(name, letter)}}}
	x, y, z := a.env[slot], half[slot], whole[slot]
	switch {
	case differ(x, z) && z > y && y > x:
		p.Right = 0
	case differ(x, z) && z < y && y < x:
		p.Right = 1
	case abs(z-x) < 1e-9*abs(x) && abs(y-x) < 1e-9*abs(x):
		p.Right = 2
	default:
		return p, false
	}
	return p, true
}

func abs(x float64) float64 { return max(x, -x) }

// came is what came out for a letter: "T₁ = 20.2 N".
func (g *Page) came(name string) string {
	value, _ := g.Ref.Value(name)
	unit := g.Ref.Unit(name)
	if unit.Dim != quantity.Force {
		unit = g.Ref.UsualUnit(quantity.Force)
	}
	return expr.Set(name) + " = " + unit.In(value, 3)
}

// choice finds the choice that a text is, by its number or its word.
func (p Prediction) choice(text string) (int, bool) {
	text = strings.ToLower(strings.Trim(strings.TrimSpace(text), ".!"))
	for i, c := range p.Choices {
		if text == fmt.Sprint(i+1) || text == strings.ToLower(c.Word) || text == strings.ToLower(expr.Set(c.Word)) || slices.Contains(alsoSaid[c.Word], text) {
			return i, true
		}
	}
	return 0, false
}

var alsoSaid = map[string][]string{
	wordSame: {"equal", "the same", "as much", "neither", "no change", "stays the same"}, wordMore: {"larger", "greater", "more than", "bigger"},
	wordLess: {"smaller", "less than"}, wordLarger: {"more", "greater", "bigger", "it gets larger", "increases"}, wordSmaller: {"less", "it gets smaller", "decreases"},
}

// Predict returns the question that is asked now, before the first sum: nothing of the
// sums was written yet, and it was not answered.
func (g *Page) Predict() (p Prediction, ok bool) {
	stage, _, open := g.InHand()
	if g.class.Predictions == QuestionsOff || !open || g.revealed || g.predicted != nil || stage != checker.XSum && stage != checker.YSum {
		return Prediction{}, false
	}
	for i := range g.lines {
		// Whoever has begun the equations is not asked any more.
		if l := &g.lines[i]; l.Kind == Typed && l.TypedIn != checker.Diagram && l.TypedIn != checker.Components {
			return Prediction{}, false
		}
	}
	return g.prediction()
}

// SaidPrediction says what was predicted and what came out, once everything is done; ""
// where nothing was predicted.
func (g *Page) SaidPrediction() string {
	p, ok := g.prediction()
	if !ok || g.predicted == nil || !g.Over() {
		return ""
	}
	chosen := *g.predicted
	return saidPredicted(p.Choices[chosen].Said, p.Choices[p.Right].Said, p.values, chosen == p.Right)
}
