package problems

import (
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
)

// Words that no letter of a problem may be: the words of the tutor, of which the later
// ones may stand in files that a record kept, and what reads as a function, a number or a unit
// wherever it stands.
var (
	tutorWords = strings.Fields("hint text back solution keep next problems student help leave")
	laterWords = strings.Fields("dispute quit again angles page drawing words ideas sums menu")
	functions  = strings.Fields("sin cos tan asin acos atan sqrt root cot sec csc abs sine pi")
	unitWords  = strings.Fields("kN mN lb lbs lbf kgf kp kg kgs cm mm ft in deg rad foot feet inch gram kilo sec")
)

// asciiLetter is a letter with at most three letters or digits as its subscript.
var asciiLetter = pattern.Of(`^[A-Za-z][A-Za-z0-9]{0,3}$`)

// isLetter reports whether a name, Greek letters written out, can be a letter of
// a problem.
func isLetter(name string) bool {
	return asciiLetter().MatchString(name) || expr.Glyph(name) != name && asciiLetter().MatchString("a"+afterGreek(name))
}

// afterGreek returns the subscript behind a Greek letter that is written out.
func afterGreek(name string) string { return string([]rune(expr.Glyph(name))[1:]) }

// canonical writes a letter as the rest of the program does: α as "alpha", T₁ and
// T_1 as "T1".
func canonical(typed string) string {
	// No letter is so long, however it is spelt.
	if isLetter(typed) || len(typed) > 16 {
		return typed
	}
	var none expr.Letters
	reading, err := none.Read(typed)
	if err != nil || len(reading.Lines[0].Sides) != 1 || reading.Lines[0].Sides[0].Op != expr.Name {
		return typed
	}
	return reading.Lines[0].Sides[0].Name
}

// letter reads a letter's name and refuses what can be none.
func (r *reader) letter(n *yaml.Node, what string) (string, bool) {
	text, ok := r.word(n, what, "T1")
	if !ok {
		return "", false
	}
	name, wrong := readLetter(text, what, r.kept)
	if wrong != nil {
		r.at(n, wrong.what, wrong.expected)
		return "", false
	}
	return name, true
}

// isCommand reports whether a name is a word of the tutor.
func isCommand(name string, kept bool) bool {
	// A student types a word in any case, so “Hint” is no letter either.
	name = strings.ToLower(name)
	return slices.Contains(tutorWords, name) || !kept && slices.Contains(laterWords, name)
}

// readLetter reads a letter; what is how it is called in what is said.
func readLetter(text, what string, kept bool) (string, *misread) {
	name := canonical(text)
	switch {
	case isCommand(name, kept):
		return "", &misread{fmt.Sprintf("%s cannot be called %q, because this word is a command in the tutor", what, name), "a letter and its subscript, such as T1"}
	case slices.Contains(functions, strings.ToLower(name)):
		return "", &misread{fmt.Sprintf("%s cannot be called %q, because this would be read as a function or a number", what, name), "a letter and its subscript, such as T1"}
	case slices.Contains(unitWords, name):
		return "", &misread{fmt.Sprintf("%s cannot be called %q, because this would be read as a unit", what, name), "a letter and its subscript, such as T1"}
	case !isLetter(name):
		return "", &misread{fmt.Sprintf("%s cannot be called %q, because this is not a letter", what, shorten(text)), "a letter and at most three letters or digits, such as T1 or alpha"}
	}
	return name, nil
}
