package tutor

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

// Ask is what the page asks for now. Question is one sentence; Directions say
// which way the axes point; Letters lists the problem's letters, with how to type
// those that are on no keyboard; Sample is a line of the kind that is asked for,
// about a force that the problem does not have.
type Ask struct {
	Stage      checker.Stage
	Title      string
	Item       string
	Question   string
	Open       []string // every item of the stage that is not done
	Directions []string
	Letters    string
	Sample     string
}

// Ask says what is asked for now; ok is false once nothing is open.
func (g *Page) Ask() (a Ask, ok bool) {
	stage, item, ok := g.InHand()
	if !ok {
		return Ask{}, false
	}
	a = Ask{Stage: stage, Title: Title(stage), Item: item, Open: g.open(stage), Letters: g.Letters(), Sample: g.sample(stage)}
	a.Question = g.question(stage, item)
	if said := g.saidRule(stage); said != "" {
		a.Question += " " + said
	}
	// Until it is answered or passed over, the prediction is the question.
	if p, asked := g.Predict(); asked {
		a.Question = p.Question + " " + saidOffered(p.Choices, g.class.Predictions == QuestionsRequired)
	}
	if stage != checker.Diagram && stage != checker.Solve {
		a.Directions = g.Directions(item)
	}
	return a, true
}

// Statement returns the text of the problem with the numbers of this copy.
func (g *Page) Statement() string { return strings.Join(strings.Fields(g.Problem.Statement()), " ") }

// Wanted lists what the problem asks for, each with what it is and the unit it is asked
// in: "T₁ (left rope) in N".
func (g *Page) Wanted() []string {
	var wanted []string
	for _, name := range g.Problem.System.Find {
		wanted = append(wanted, strings.Replace(g.wanted(name), expr.Set(name), g.named(name, expr.Set(name)), 1))
	}
	return wanted
}

func (g *Page) wanted(name string) string {
	symbol := g.Ref.Unit(name).Symbol
	switch {
	case g.IsFormula(name):
		return expr.Set(name) + " as a formula"
	case symbol == "none" || symbol == "":
		return expr.Set(name)
	case symbol == "deg":
		return expr.Set(name) + " in degrees"
	case g.Ref.Has(symbol) && saidUnits[symbol] != "": // "N in N"
		return expr.Set(name) + " in " + saidUnits[symbol]
	}
	return expr.Set(name) + " in " + symbol
}

// IsFormula reports whether an unknown follows a letter that has no number: then
// it has no value either, and a formula is asked for.
func (g *Page) IsFormula(name string) bool {
	if !slices.ContainsFunc(g.Problem.System.Givens, func(given statics.Given) bool { return given.Any }) {
		return false
	}
	// Two different numbers: an unknown that is the same for both has a value although the letter has none.
	one, err := g.solvedWith(name, 1)
	two, other := g.solvedWith(name, 2.7)
	return err != nil || other != nil || math.Abs(one-two) > 1e-6*math.Abs(one)
}

// solvedWith solves with a number, in SI, for every letter that has none.
func (g *Page) solvedWith(name string, number float64) (float64, error) {
	m, err := statics.Compile(g.Problem.System)
	if err != nil {
		return 0, err
	}
	env := m.Environment()
	for i, given := range m.Givens {
		if given.Any {
			env[i] = number
		}
	}
	if env, err = m.Solve(env); err != nil {
		return 0, err
	}
	slot, ok := m.Slot(name)
	if !ok {
		return 0, fmt.Errorf("no letter %s", name)
	}
	return env[slot], nil
}

// Letters lists the problem's letters in a sentence. As long as the forces are asked for,
// no force is among them but those that the problem itself names: what is given, and what
// is to be found.
func (g *Page) Letters() string {
	var names, greek []string
	for _, v := range g.Ref.Variables() {
		if !g.StageDone(checker.Diagram) && g.isForce(v.Name) && v.Role != statics.IsGiven && !slices.Contains(g.Problem.System.Find, v.Name) {
			continue
		}
		names = append(names, expr.Glyph(v.Name))
		if expr.Glyph(v.Name) != v.Name {
			greek = append(greek, saidTypeGreek(expr.Glyph(v.Name), v.Name))
		}
	}
	for _, e := range g.Problem.System.Equal {
		names = append(names, expr.Glyph(e.Letter))
	}
	return saidLetters(names, greek)
}

// isForce reports whether a letter is the size of a force.
func (g *Page) isForce(name string) bool {
	_, ok := g.Problem.System.Force(name)
	return ok
}

// whichIsWhich tells apart two forces of a kind that the problem's text gives no letters,
// one on the left and one on the right; "" where there is nothing to tell.
func (g *Page) whichIsWhich(item string) string {
	body := &g.Problem.System.Bodies[0]
	if named, ok := g.Problem.System.Body(item); ok {
		body = named
	}
	// Left and right along turned axes are not left and right in the drawing.
	if body.Tilt != nil {
		return ""
	}
	said := ""
	for _, f := range body.Forces {
		left, right := onSide(body, f.Kind, -1), onSide(body, f.Kind, 1)
		if len(left) == 1 && len(right) == 1 && f.Name == left[0] && !g.names(left[0]) && !g.names(right[0]) {
			said += saidWhichIsWhich(expr.Set(left[0]))
		}
	}
	return said
}

// onSide lists a body's forces of a kind that point to that side along x.
func onSide(body *statics.Body, kind statics.Kind, side int) (names []string) {
	for _, f := range body.Forces {
		if f.Kind == kind && f.Points[statics.X] == side {
			names = append(names, f.Name)
		}
	}
	return names
}

// names reports whether the text of the problem names a letter.
func (g *Page) names(letter string) bool {
	return slices.Contains(strings.FieldsFunc(g.Problem.Text, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '_'
	}), letter)
}

// Directions says which way the axes of an item's body point, one sentence for
// each axis; for every body where the item names none.
func (g *Page) Directions(item string) []string {
	name, _, dotted := strings.Cut(item, ".")
	if !dotted {
		name = item
	}
	if body, ok := g.Problem.System.Body(name); ok {
		return g.directions(body, "")
	}
	if len(g.Problem.System.Bodies) == 1 {
		return g.directions(&g.Problem.System.Bodies[0], "")
	}
	if g.alike() {
		return g.directions(&g.Problem.System.Bodies[0], "")
	}
	var all []string
	for i := range g.Problem.System.Bodies {
		b := &g.Problem.System.Bodies[i]
		all = append(all, g.directions(b, b.Name)...)
	}
	return all
}

// alike reports whether the axes of all bodies point the same way.
func (g *Page) alike() bool {
	bodies := g.Problem.System.Bodies
	return !slices.ContainsFunc(bodies, func(b statics.Body) bool {
		return math.Abs(g.Ref.Tilt(&b)-g.Ref.Tilt(&bodies[0])) > 1e-9
	})
}

func (g *Page) directions(b *statics.Body, on string) []string {
	x, y := "right", "up"
	switch rise := math.Sin(g.Ref.Tilt(b)); {
	case rise > 1e-9 && g.onSlope(b):
		x, y = "up the slope", "away from the slope"
	case rise < -1e-9 && g.onSlope(b):
		x, y = "down the slope", "away from the slope"
	case math.Abs(rise) > 1e-9:
		x, y = g.turned(b)
	}
	return []string{saidPositive("x", on, x), saidPositive("y", on, y)}
}

// onSlope reports whether a surface carries the body: then the turned axes are
// those of a slope.
func (g *Page) onSlope(b *statics.Body) bool {
	return slices.ContainsFunc(b.Forces, func(f statics.Force) bool { return f.Kind == statics.Normal }) &&
		math.Cos(g.Ref.Tilt(b)) > 0
}

// turned words axes that are turned without a slope.
func (g *Page) turned(b *statics.Body) (x, y string) {
	way := func(angle float64) string {
		var sides []string
		if up := math.Sin(angle); up > 1e-9 {
			sides = append(sides, "up")
		} else if up < -1e-9 {
			sides = append(sides, "down")
		}
		if right := math.Cos(angle); right > 1e-9 {
			sides = append(sides, "right")
		} else if right < -1e-9 {
			sides = append(sides, "left")
		}
		return strings.Join(sides, " and ")
	}
	tilt := g.Ref.Tilt(b)
	return way(tilt), way(tilt + math.Pi/2)
}

// echo says how a half-typed text is read, "" where nothing can be said yet.
func (g *Page) echo(stage checker.Stage, item, text string) string {
	if stage == checker.Diagram {
		return g.Ref.Mark(checker.Answer{Stage: stage, Item: item, Text: text}, nil).Read
	}
	if stage == checker.Solve {
		item = ""
	}
	all, _ := g.Ref.Lines(checker.Answer{Stage: stage, Item: item, Text: text})
	line := Line{TypedIn: stage}
	at, open := Place{stage, item}, len(g.open(stage)) > 0
	var read []string
	for _, l := range all {
		if said, err := g.Ref.Echo(l.Text, at.Item); err == nil {
			read = append(read, said)
		}
		// As in a text that is judged: parts without names go down the table.
		at.Item = g.Ref.Taken(checker.Answer{Stage: at.Stage, Item: at.Item, Text: l.Text})
		line.Done = append(line.Done, at)
		if stage != checker.Solve {
			at = g.following(&line, at, open)
		}
	}
	return strings.Join(read, "; ")
}

// stranger is a letter that the problem does not have and that is not among others, for
// samples.
func (g *Page) stranger(besides string) string {
	// None of the letters that books use for tensions, normal
	// forces or weights: a sample must not look like a hint.
	for _, name := range []string{"F", "P", "S", "Q", "D", "K", "H", "B"} {
		if !g.Ref.Has(name) && !strings.Contains(besides, name) {
			return name
		}
	}
	return "F9"
}

// named is a letter that is asked for with what it is: "T₁ (left rope)".
func (g *Page) named(name, set string) string {
	what := g.Meaning(name)
	if g.Problem.System.Words.Meaning[name] != "" {
		return fmt.Sprintf("%s (%s)", set, what)
	}
	for i := range g.Ref.Bodies {
		b := &g.Ref.Bodies[i]
		if f, ok := b.Force(name); ok && f.Size == nil {
			what = g.which(b, f)
			break
		}
	}
	if what == "" || strings.EqualFold(what, name) {
		return set
	}
	return fmt.Sprintf("%s (%s)", set, what)
}
