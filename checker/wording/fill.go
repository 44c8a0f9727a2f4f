package wording

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
)

// Fill puts the problem's words into a sentence. A phrase may hold braces itself.
func (s *Subject) Fill(text string) string {
	return strings.TrimSpace(braces().ReplaceAllStringFunc(text, func(marked string) string {
		name, otherwise, _ := strings.Cut(marked[1:len(marked)-1], "|")
		first := []rune(name)
		capital := unicode.IsUpper(first[0])
		first[0] = unicode.ToLower(first[0])
		phrase := phrases[string(first)]
		// An unknown name stays in its braces, where a reader of the sentence sees it.
		if phrase == nil {
			return marked
		}
		words := phrase(s)
		if braces().MatchString(words) {
			words = s.Fill(words)
		}
		if words == "" {
			words = otherwise
		}
		// A letter keeps its case: w and W may be two forces.
		if capital && words != "" && words[0] < utf8.RuneSelf && len([]rune(words)) > 3 {
			runes := []rune(words)
			runes[0] = unicode.ToUpper(runes[0])
			words = string(runes)
		}
		return words
	}))
}

var braces = pattern.Of(`\{[^{}]*\}`)

// phrases gives the words for what stands in braces; an empty one means that the
// problem or the evidence has no such thing.
var phrases = map[string]func(s *Subject) string{
	"force":     func(s *Subject) string { return s.nameOf(s.Force) },
	"the force": func(s *Subject) string { return wordBefore("the force", s.nameOf(s.Force)) },
	"forces":    func(s *Subject) string { return listed(s.Among) },
	"stranger":  (*Subject).strangerName,
	"law":       law,
	"open":      func(s *Subject) string { return listed(s.Open) },
	"unknown":   func(s *Subject) string { return expr.Set(s.Unknown) },
	"component": (*Subject).part,
	"what":      func(s *Subject) string { return s.What },
	"whichway":  whichWay,
	"unitcheck": unitCheck,
	"sum":       (*Subject).sum,
	"in":        (*Subject).in,
	"line":      (*Subject).line,
	"along":     (*Subject).along,
	"axis":      func(s *Subject) string { return "the " + s.axis.String() + " axis" },
	"body":      (*Subject).bodyName,
	"angle":     (*Subject).angle,
	"points":    (*Subject).points,
	"measured":  (*Subject).measured,
	"beside":    beside,
	"function":  function,
	"lie":       lie,
	"look":      look,
	"names":     names,
	"kind":      kind,
	"kinds":     kinds,
	"square":    square,
	"start":     start,
	"putback":   putBack,

	"noweight":   func(s *Subject) string { return noWeight[s.solved.Words.Above].said },
	"askweight":  func(s *Subject) string { return noWeight[s.solved.Words.Above].ask },
	"ruleweight": func(s *Subject) string { return noWeight[s.solved.Words.Above].rule },
	"unit":       askedIn,
	"symbol":     symbol,
	"gravity":    gravity,
	"letters":    func(s *Subject) string { return letterList(s.solved) },
	"for":        (*Subject).forBody,
	"step":       component,
	"equation":   equation,
	"numbers":    numbers,
	"diagram":    diagram,
	"positive":   func(s *Subject) string { return s.way(s.axis, s.counted()) },
	"negative":   func(s *Subject) string { return s.way(s.axis, -s.counted()) },
}

func wordBefore(word, name string) string {
	if name == "" {
		return ""
	}
	return word + " " + name
}
