package expr

import (
	"strings"

	"example.org/standstill/checker/pattern"
)

// pageOf lays out a cleaned text: other keyboards' characters as the usual ones, what
// was pasted from a formula editor, a spreadsheet or a program as the formula that
// is meant.
func pageOf(clean string) *page {
	p := pageFor(runesIn(clean))
	i := 0
	for _, r := range clean {
		p.put(r, i)
		i++
	}
	// In this order: a fraction in TeX may be typed with full-width signs, and what it comes
	// to may hold a torn arrow, the name of a library, or a number in front of a raised nought.
	return p.folded().untex().rejoined().unprogrammed().raised()
}

// Transcribe returns a cleaned text as it is read: without what other keyboards, formula
// editors, spreadsheets and programs add to it. It reads as the same lines as the text does, and ends
// of lines stay. at[i] is the rune of the text that the i-th rune came from. A transcribed text stays
// as it is: a line of a text is transcribed again when it is read, and again when the page is.
func Transcribe(clean string) (plain string, at []int) {
	p := pageOf(clean)
	return p.String(), p.at
}

// withoutInnerNames blanks the names of sums inside a chain.
func (p *page) withoutInnerNames(l *Letters) {
	text := p.String()
	at := innerName().FindStringSubmatchIndex(text)
	if at == nil || strings.HasPrefix(text[at[2]:], "m") && l.knows("a") {
		return
	}
	start := runesIn(text[:at[2]])
	p.blank(start, start+runesIn(text[at[2]:at[3]]))
}

// innerName matches the name of a sum, or m·a, that stands inside a chain, as in
// "… = ΣFx = 0". Group 1 is what can be left out.
var innerName = pattern.Of(`=\s*([ΣΣ∑]\s*F?_?\{?\s*[xyXYₓ]\}?\s*=|m\s*[·*]?\s*a\s*=)\s*0`)
