package problems

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/standstill/checker/statics"
)

// pickedOut returns the copy with the k-th value of each varied given.
func (p *Problem) pickedOut(k []int) *Problem {
	values := make(map[string]statics.Given, len(k))
	for i, v := range p.Vary {
		g, _ := p.System.Given(v.Name)
		own, _ := readGiven(v.Name, v.Text(k[i]))
		// A range is written without a unit; its numbers are in that of the given.
		own.Unit = g.Unit
		values[v.Name] = own
	}
	return p.with(values)
}

// with returns a copy in which the givens of these names are replaced.
func (p *Problem) with(values map[string]statics.Given) *Problem {
	own := *p
	system := *p.System
	system.Givens = slices.Clone(p.System.Givens)
	own.changed = slices.Clone(p.changed)
	for i, g := range system.Givens {
		v, ok := values[g.Name]
		if !ok {
			continue
		}
		system.Givens[i] = v
		if !slices.Contains(own.changed, g.Name) {
			own.changed = append(own.changed, g.Name)
		}
	}
	own.System = &system
	own.Copy = own.canonicalGivens()
	// The reference of the original has the original's numbers.
	own.prepare()
	return &own
}

// canonicalGivens writes the changed givens in the order of their names, each in
// the unit of the file, or with its own.
func (p *Problem) canonicalGivens() string {
	texts := make([]string, len(p.changed))
	// In a fixed order: the record knows a student's copy by this text.
	for i, name := range slices.Sorted(slices.Values(p.changed)) {
		g, _ := p.System.Given(name)
		inFile, _ := p.asWritten.Given(name)
		texts[i] = name + "=" + g.Number.Text
		if g.Minus {
			texts[i] = name + "=-" + g.Number.Text
		}
		if g.Unit != inFile.Unit {
			texts[i] += " " + g.Unit.Symbol
		}
	}
	return strings.Join(texts, ";")
}

// WithGivens returns the copy whose numbers a record keeps, as in Problem.Copy:
// "alpha=35;m=3.2", each in the unit of the file. An empty text is the problem
// itself. The error says what the text has that the problem has not; whether the
// numbers can be solved is seen by Reference.
func (p *Problem) WithGivens(text string) (*Problem, error) {
	if text == "" {
		return p, nil
	}
	values := map[string]string{}
	for _, pair := range strings.Split(text, ";") {
		name, value, found := strings.Cut(pair, "=")
		if _, twice := values[name]; !found || twice {
			return nil, fmt.Errorf("read givens %q: name=number was expected at %q", shorten(text), shorten(pair))
		}
		values[name] = value
	}
	return p.WithValues(values)
}

// WithValues returns a copy with other values, each a quantity as in a problem
// file, or a bare number in the unit of the file. A letter without a number may get
// one.
func (p *Problem) WithValues(values map[string]string) (*Problem, error) {
	givens := make(map[string]statics.Given, len(values))
	// Sorted, so that of several errors it is always the same one that is told.
	for _, name := range slices.Sorted(maps.Keys(values)) {
		inFile, ok := p.asWritten.Given(name)
		if !ok {
			return nil, fmt.Errorf("%s has no given value %s", p.ID, shorten(name))
		}
		g, wrong := readGiven(name, strings.TrimSpace(values[name]))
		if wrong != nil {
			return nil, fmt.Errorf("%s: %s; expected %s", name, wrong.what, wrong.expected)
		}
		// A record keeps bare numbers, as short as they can be.
		if g.Unit.Symbol == "none" {
			g.Unit = inFile.Unit
		}
		if g.Any || g.Unit.Dim != inFile.Unit.Dim {
			return nil, fmt.Errorf("%s: %q cannot be a value for %s", name, shorten(values[name]), inFile.Unit.Dim)
		}
		givens[name] = g
	}
	return p.with(givens), nil
}
