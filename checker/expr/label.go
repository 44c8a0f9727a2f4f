package expr

import (
	"strings"

	"example.org/standstill/checker/pattern"
)

// A statement may begin with what is no mathematics: "2.", "so", "Answer:", "x-axis:",
// "ΣFx =", the name of a body. This is the place that knows how such a beginning looks.

// opening is what stands in front of a statement: how many runes it takes, the axis of
// a sum that it names ("x", "y", "" for neither) and the body.
type opening struct {
	length int
	axis   string
	body   string
}

// labels reads what stands in front of a statement. take says how to read what can be read in
// two ways, met collects the choices that the text left open; named says that "Fx =" was taken
// for the name of a sum.
type labels struct {
	letters *Letters
	take    choice
	met     choice
	named   bool
}

// Label returns how many runes at the beginning of a statement are a label, and the axis
// and the body that it names, "" for none. The text is as Transcribe returns it.
func (l *Letters) Label(text string) (length int, axis, body string) {
	o := (&labels{letters: l}).opening(text)
	return o.length, o.axis, o.body
}

// opening reads the labels in front of a statement, one behind the other.
func (l *labels) opening(text string) opening {
	var all opening
	// "2. So, on the ring: Fx =" has four; what has more is no label.
	for range 5 {
		one := l.oneLabel(text)
		// What would leave nothing of the line is no label: a lone “2)” may be the answer.
		if one.length == 0 || strings.Trim(text, " .") != "" && strings.Trim(string([]rune(text)[one.length:]), " .") == "" {
			break
		}
		text = string([]rune(text)[one.length:])
		all.length += one.length
		if one.axis != "" {
			all.axis = one.axis
		}
		if one.body != "" {
			all.body = one.body
		}
	}
	return all
}

func (l *labels) oneLabel(text string) opening {
	// heading comes last: it would take “block:” without saying which body that is.
	for _, read := range []func(string) opening{l.leadWord, l.listMark, l.axisLabel, l.sumLabel, l.bodyLabel, l.heading} {
		if one := read(text); one.length > 0 {
			return one
		}
	}
	return opening{}
}

// lead matches a word that joins a line to the one above it, or announces what comes.
var lead = pattern.Of(`^\s*(?:(?i:so|therefore|hence|thus|then|now|let|say|which gives|gives|we get|we have|that is|i\.e\.)(?:[,:]\s*|\s+)|[∴•▪‣◦]\s*|` +
	`(?i:(?:the\s+|my\s+)?(?:final\s+)?(?:answer|ans|result|solution|soln))\.?\s*(?:(?i:is)\s|[:=])\s*)`)

func (l *labels) leadWord(text string) opening {
	found := lead().FindString(text)
	if found == "" || l.letters.knows(strings.Trim(found, " :=,.")) {
		return opening{}
	}
	return opening{length: runesIn(found)}
}

// The numbers and letters of a list: what can be nothing else, and what could be a
// factor as well ("2. T" and "(a) T"). Group 1 is the number or letter.
var (
	listSure = pattern.Of(`^\s*(?:(\d{1,2}|[A-Za-z]|[ivx]{2,4})\)|(?i:(?:step|part|question|equation|eqn?|line)\.?\s*\(?\d{1,2}[a-z]?\)?\s*[:.)])|#\d{1,2}\s)\s*`)
	listFree = pattern.Of(`^\s*(?:[(\[](\d{1,2}|[A-Za-z]|[ivx]{2,4})[)\]]\s*|(\d{1,2}|[a-z])\.\s+)`)
	// namedEquation matches a statement that says what one letter is.
	namedEquation = pattern.Of(`^[\pL_][\pL\pN_{}.,₀-₉ₓ]{0,7}\s*(?:[=≈≅≃~:]|(?i:is|equals)\s)`)
)

// listMark reads the "2.", "a)" or "(b)" of a list. Where it could be a factor, it is one
// unless a named equation follows; the other reading is tried, too.
func (l *labels) listMark(text string) opening {
	if found := listSure().FindString(text); found != "" {
		return opening{length: runesIn(found)}
	}
	m := listFree().FindStringSubmatch(text)
	if m == nil {
		return opening{}
	}
	rest := text[len(m[0]):]
	name := m[1] + m[2]
	named := namedEquation().MatchString(rest) && !beginsWithUnit(rest)
	dotted := m[2] != ""
	switch {
	// "2. 5 N" is a number with a space in it, a lone "2." is an answer, and "2. = 2" an equation.
	case rest == "" || rest[0] >= '0' && rest[0] <= '9' || dotted && rest[0] == '=':
		return opening{}
	case !isDigit(rune(name[0])) && !l.letters.knows(name), named:
	case !isDigit(rune(name[0])):
		return opening{}
	default:
		l.met |= chooseFactor
		if dotted == (l.take&chooseFactor != 0) {
			return opening{}
		}
	}
	return opening{length: runesIn(m[0])}
}

// beginsWithUnit reports whether a text begins with a unit as a read-back spells it out: the (w) of
// "(w) metre = 0" is no label.
func beginsWithUnit(text string) bool {
	for _, word := range unitWords {
		if strings.HasPrefix(text, word+" ") {
			return true
		}
	}
	return false
}

const (
	arrowShape = `(?:→|↑|←|↓|↗|↖|↘|↙|[-=]+>|<[-=]+|∥|⊥|\|\||//)`
	sideShape  = `(?i:\s*-?\s*(?:axis|direction|dir\.?|dirn|coordinate|components?|comp\.?|forces?|part)s?)?`
)

// axisName matches "x:", "in the x direction:", "R(→):", "↑:". Groups hold the axis.
var axisName = pattern.Of(`^\s*(?:(?:(?i:in|along|for|on|resolving|resolve|sum|forces)\s+)*(?i:the\s+)?[+]?[(\[]?([xyXY])[)\]]?` + sideShape + `\s*:` +
	`|(?:(?i:R|Res|resolve|resolving|F|sum|[ΣΣ∑]\s*F?)\.?\s*)?[(\[]\s*` + arrowShape + `\s*[)\]]\s*[:=,]?` +
	`|[↑↓]\s+|(?:[ΣΣ∑]\s*F?)?\s*` + arrowShape + `\s*[:]|[ΣΣ∑]\s*F?\s*` + arrowShape + `\s*=)\s*`)

func (l *labels) axisLabel(text string) opening {
	m := axisName().FindStringSubmatch(text)
	if m == nil {
		return opening{}
	}
	return opening{length: runesIn(m[0]), axis: axisOf(m[1])}
}

// AxisLabel returns how many runes at the beginning of a statement name an axis, as "R(→):"
// does. The text is as Transcribe returns it.
func AxisLabel(text string) int { return runesIn(axisName().FindString(text)) }

// sumName matches the name of a sum in front of an equation. Groups: 1 and 2 the axis.
var sumName = pattern.Of(`^\s*(?:(?:[ΣΣ∑]|(?i:sum|net|total|sigma))\s*(?i:of\s+)?(?:the\s+)?[(\[]?\s*(?i:forces?|F)?\s*(?i:in|along)?\s*(?:the\s+)?[_,]?[({\[]?\s*(?i:net)?[A-Z]?\d?,?\s*([xyXYₓ])[)}\]]*(?i:-?\s*(?:direction|axis|forces|components))?\s*[)\]]?` +
	`(?:\s*(?i:on|for)\s+(?i:the\s+)?\pL[\pL\pN]*)?|(?i:F)_?\{?\s*(?i:net|tot|total)\s*,?\s*([xyXY])\}?)\s*(?:=\s*0\s*:|[=:])`)

var plainName = pattern.Of(`^\s*(?:F_?\{?([xyₓ])\}?\s*([=:])|(?i:(?:horizontal|vertical)(?:ly)?\s*:))`)

// sumLabel reads the name of a sum.
func (l *labels) sumLabel(text string) opening {
	if m := sumName().FindStringSubmatch(text); m != nil {
		return opening{length: runesIn(m[0]), axis: axisOf(m[1] + m[2])}
	}
	m := plainName().FindStringSubmatch(text)
	if m == nil {
		return opening{}
	}
	if m[2] == "=" && (l.letters.knows("Fx") || l.letters.knows("Fy")) {
		l.met |= chooseName
		if l.take&chooseName == 0 {
			return opening{}
		}
		l.named = true
	}
	return opening{length: runesIn(m[0]), axis: axisOf(m[1])}
}

var beforeColon = pattern.Of(`^\s*(?:(?i:on|for|at|body|block|ring|knot)\s+)?(?i:the\s+)?(\pL[\pL\pN]*)\s*:\s*`)

// bodyLabel reads the name of one of the problem's bodies, where it is no letter.
func (l *labels) bodyLabel(text string) opening {
	m := beforeColon().FindStringSubmatch(text)
	if m == nil || l.letters.knows(m[1]) {
		return opening{}
	}
	for _, body := range l.letters.bodies {
		if strings.EqualFold(body, m[1]) {
			return opening{length: runesIn(m[0]), body: body}
		}
	}
	return opening{}
}

// words before a colon: a heading in the student's own words.
var wordsBeforeColon = pattern.Of(`^\s*(\pL[\pL\pN\s'./,()+-]*):\s*`)

// heading reads words and a colon in front of an equation, as in "along the slope:", if
// there is a word among them that is none of the problem's letters or names.
func (l *labels) heading(text string) opening {
	m := wordsBeforeColon().FindStringSubmatch(text)
	if m == nil || !strings.ContainsAny(text[len(m[0]):], "=≈≅≃~") || strings.ContainsAny(m[1], "0123456789") && l.isNamed(m[1]) {
		return opening{}
	}
	for _, word := range strings.FieldsFunc(m[1], func(r rune) bool { return !isRun(r) && !isDigit(r) }) {
		// One and two letters are letters that the problem may just not have.
		if len(word) > 2 && l.isStrange(word) {
			return opening{length: runesIn(m[0])}
		}
	}
	return opening{}
}

// isNamed reports whether a text is one of the names that forces go by.
func (l *labels) isNamed(text string) bool {
	_, ok := l.letters.phrases[strings.ToLower(strings.Join(strings.Fields(text), " "))]
	return ok
}

// isStrange reports whether a word is neither made of the problem's letters and
// functions nor a name of one.
func (l *labels) isStrange(word string) bool {
	if l.isNamed(word) {
		return false
	}
	for _, t := range l.letters.split(normal([]rune(word))) {
		if t.unknown {
			return true
		}
	}
	return false
}
