package expr

import (
	"maps"
	"strings"
	"unicode/utf8"

	"example.org/standstill/checker/quantity"
)

// Kind says what a letter stands for, as far as reading needs to know.
type Kind uint8

// A Plain letter is a force, a coefficient, a length. An Angle may follow a
// number inside a function ("sin 2θ"); a Mass is what grams are expected for.
const (
	Plain Kind = iota
	Angle
	Mass
)

// Letters is the vocabulary of one problem: its letters, each with the other
// ways of typing it. The zero value knows no letters and is ready to use.
type Letters struct {
	names map[string]Kind   // canonical name → kind
	typed map[string]string // exact spelling, normalised → canonical
	fold  map[string]string // lower-case spelling → canonical, "" where two fit
	mass  bool

	phrases map[string]string             // names in words, in lower case → canonical
	bodies  []string                      // names that may stand in front of a line
	dims    map[string]quantity.Dimension // what a letter measures, where that is known
	memory  *readings                     // see Remember
}

// Add makes a letter known. Greek letters go by their names ("alpha").
func (l *Letters) Add(name string, kind Kind) {
	if l.names == nil {
		l.names = map[string]Kind{}
	}
	l.names[name] = kind
	l.Alias(name, name)
}

// Alias makes another spelling known for a letter. A spelling that is taken
// already stays with its first owner.
func (l *Letters) Alias(spelling, name string) {
	if l.typed == nil {
		l.typed, l.fold = map[string]string{}, map[string]string{}
	}
	key := normal([]rune(spelling)).text
	if _, taken := l.typed[key]; taken {
		return
	}
	l.typed[key] = name
	lower := strings.ToLower(key)
	if owner, taken := l.fold[lower]; taken && owner != name {
		// Letters that differ in case alone, as w and W: only the exact spelling tells which is meant.
		l.fold[lower] = ""
		return
	}
	l.fold[lower] = name
}

// Expecting returns the vocabulary for a place where a mass is asked for, so
// that g behind a number is grams.
func (l *Letters) ExpectingMass() *Letters {
	c := *l
	c.mass = true
	return &c
}

// Measures says what a letter measures. Of two readings of a line the one that adds and
// compares like with like is the likelier.
func (l *Letters) Measures(name string, d quantity.Dimension) {
	if l.dims == nil {
		l.dims = map[string]quantity.Dimension{}
	}
	l.dims[name] = d
}

// Own returns a vocabulary to which letters can be added without changing this one.
func (l *Letters) Own() *Letters {
	c := *l
	c.names, c.typed, c.fold = maps.Clone(l.names), maps.Clone(l.typed), maps.Clone(l.fold)
	c.phrases, c.dims = maps.Clone(l.phrases), maps.Clone(l.dims)
	// What is remembered was read without the letters that are added now.
	c.memory = nil
	return &c
}

// Has reports whether the letter is one of the problem's.
func (l *Letters) Has(name string) bool { _, ok := l.names[name]; return ok }

// Kind returns what the letter stands for; Plain for an unknown one.
func (l *Letters) Kind(name string) Kind { return l.names[name] }

// resolve finds the letter for a normalised spelling: case decides where two
// letters differ in nothing else.
func (l *Letters) resolve(key string) (name string, exact, ok bool) {
	if name, ok = l.typed[key]; ok {
		return name, true, true
	}
	name = l.fold[strings.ToLower(key)]
	return name, false, name != ""
}

// greek is the table of Greek letters that a student may type as themselves or
// by name. The print form is the first rune of the value.
var greek = []struct {
	name   string
	shapes string
}{
	{"alpha", "α"}, {"beta", "β"}, {"gamma", "γ"}, {"delta", "δΔ"}, {"epsilon", "εϵ"},
	{"zeta", "ζ"}, {"eta", "η"}, {"theta", "θϑΘ"}, {"kappa", "κ"}, {"lambda", "λ"},
	{"mu", "μµ"}, {"nu", "ν"}, {"xi", "ξ"}, {"rho", "ρ"}, {"sigma", "σ"}, {"tau", "τ"},
	{"phi", "φϕΦ"}, {"chi", "χ"}, {"psi", "ψΨ"}, {"omega", "ωΩ"},
}

func greekName(r rune) (string, bool) {
	if r < utf8.RuneSelf {
		return "", false // most of what is typed, and none of the shapes
	}
	for _, g := range greek {
		if strings.ContainsRune(g.shapes, r) {
			return g.name, true
		}
	}
	return "", false
}

// Glyph returns a letter as it is printed: "alpha" as α, "theta1" as θ1.
func Glyph(name string) string {
	body, letter, split := strings.Cut(name, ".")
	if split {
		return body + "." + Glyph(letter)
	}
	for _, g := range greek {
		rest, found := strings.CutPrefix(name, g.name)
		if found && (rest == "" || rest[0] >= '0' && rest[0] <= '9' || len(rest) == 1) {
			return string([]rune(g.shapes)[:1]) + rest
		}
	}
	return name
}

var subscripts = strings.NewReplacer("0", "₀", "1", "₁", "2", "₂", "3", "₃", "4", "₄",
	"5", "₅", "6", "₆", "7", "₇", "8", "₈", "9", "₉", "x", "ₓ")

// Set returns a letter as it stands on paper, with a subscript where there is
// one in Unicode: T₁, θ₁, T₁ₓ. It reads in again as the same letter.
func Set(name string) string {
	glyph := []rune(Glyph(name))
	for i := 1; i < len(glyph); i++ {
		if tail := string(glyph[i:]); strings.Trim(tail, "0123456789x") == "" && tail != "x" {
			return string(glyph[:i]) + subscripts.Replace(tail)
		}
	}
	return string(glyph)
}

// normalised is a run of letters with its ornaments taken off: Greek letters by
// name, subscripts as plain characters. at[i] is the rune that byte i came from.
type normalised struct {
	text string
	at   []int
}

func subscriptLetter(r rune) (rune, bool) {
	if r < utf8.RuneSelf {
		return r, false
	}
	for i, small := range []rune(smallLetters) {
		if r == small {
			return []rune(theirLetters)[i], true
		}
	}
	return r, false
}

func normal(run []rune) normalised {
	n := normalised{at: make([]int, 0, len(run))}
	var b strings.Builder
	b.Grow(len(run))
	put := func(s string, at int) {
		b.WriteString(s)
		for range len(s) {
			n.at = append(n.at, at)
		}
	}
	for i, r := range run {
		if small, ok := subscriptLetter(r); ok {
			r = small
		}
		if name, ok := greekName(r); ok {
			put(name, i)
			continue
		}
		switch {
		case r == '_' || r == '{' || r == '}' || r == '\'' || r == '′':
		case r >= '₀' && r <= '₉':
			put(string('0'+r-'₀'), i)
		case r == ',' && i+1 < len(run) && !isDigit(run[i+1]): // T1,x
		// Between digits, a comma is a decimal comma.
		case r == ',':
			put(".", i)
		default:
			put(string(r), i)
		}
	}
	n.text = b.String()
	return n
}

func (l *Letters) knows(spelling string) bool { _, _, ok := l.resolve(spelling); return ok }

func axisOf(letter string) string {
	switch letter {
	case "x", "X", "ₓ":
		return "x"
	case "y", "Y":
		return "y"
	}
	return ""
}

// Phrase makes a name in words known for a letter: "normal force", "tension 1". Letter
// case does not matter; a phrase that is taken stays with its first owner.
func (l *Letters) Phrase(words, name string) {
	if l.phrases == nil {
		l.phrases = map[string]string{}
	}
	key := strings.ToLower(normal([]rune(strings.Join(strings.Fields(words), " "))).text)
	if _, taken := l.phrases[key]; !taken {
		l.phrases[key] = name
	}
}

// Body makes the name of a body known, which may stand in front of a line.
func (l *Letters) Body(name string) { l.bodies = append(l.bodies, name) }
