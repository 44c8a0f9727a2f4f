package expr

import (
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"example.org/standstill/checker/pattern"
)

// page is a text on its way to the scanner: the same line in the plainest
// characters. at[i] is the rune of the cleaned text that runes[i] came from.
type page struct {
	runes []rune
	at    []int
}

// pageFor returns a page with room for so many runes.
func pageFor(n int) *page { return &page{make([]rune, 0, n), make([]int, 0, n)} }

func (p *page) put(r rune, from int) {
	p.runes = append(p.runes, r)
	p.at = append(p.at, from)
}

func (p *page) puts(text string, from int) {
	for _, r := range text {
		p.put(r, from)
	}
}

// from returns the place in the cleaned text of the i-th rune, the place behind
// the last one for the page's end.
func (p *page) from(i int) int {
	switch {
	case i < len(p.at):
		return p.at[i]
	case len(p.at) == 0:
		return 0
	}
	return p.at[len(p.at)-1] + 1
}

// shapes is the table of characters that other keyboards, word processors and telephones
// put in the place of the usual ones. What stands for "" says nothing.
var shapes = map[rune]string{
	'˚': "°", '∘': "°", 'º': "°", '◦': "°", 'ᵒ': "°", '∶': ":", '፡': ":",
	'“': "", '”': "", '„': "", '‟': "", '"': "", '«': "", '»': "", '‘': "", '’': "", '‚': "", '`': "", '´': "", '∠': "",
	'⟶': "→", '⟹': "⇒", '⇨': "→", '➔': "→", '➜': "→", '➡': "→", '⇢': "→", '↦': "→", '⟺': "⇔", '↔': "⇔",
	'⬆': "↑", '⬇': "↓", '⬅': "←", '⇧': "↑", '⇩': "↓", '⇑': "↑", '⇓': "↓",
	'¼': "0.25", '¾': "0.75", '⅓': "(1/3)", '⅔': "(2/3)", '⅛': "0.125",
	'٫': ",", '٬': "", '、': ",", '。': ".",
	'⨯': "×", '✖': "×", '╳': "×", '‧': "·", '・': "·", '●': "·", '➕': "+", '➖': "-", '➗': "÷",
	'Т': "T", 'т': "t", 'А': "A", 'В': "B", 'Е': "E", 'К': "K", 'М': "M", 'Н': "N", 'О': "O", 'Р': "P", 'С': "C", 'Х': "X",
	'а': "a", 'е': "e", 'к': "k", 'м': "m", 'о': "o", 'р': "p", 'с': "c", 'у': "y", 'х': "x", 'г': "g", 'ѕ': "s", 'і': "i",
}

// folded writes what other keyboards have as plain characters: full-width and mathematical
// letters, digits of other scripts, quotation marks, degree signs. Combining marks, as
// the arrow over a vector, are left out.
func (p *page) folded() *page {
	out := pageFor(len(p.runes))
	for i, r := range p.runes {
		text, found := shapes[r]
		switch {
		case r < 0x80 && r != '"' && r != '`' && r != '\'':
			out.put(r, p.at[i])
		case found:
			out.puts(text, p.at[i])
		case unicode.Is(unicode.Mn, r):
		case unicode.IsDigit(r):
			out.put(asciiDigit(r), p.at[i])
		// Not for every rune: the normal form would also make 2 of the ² in sin².
		case isStyled(r):
			for _, plain := range norm.NFKC.String(string(r)) {
				usual, found := shapes[plain]
				switch {
				case found:
					out.puts(usual, p.at[i])
				case !unicode.Is(unicode.Mn, plain):
					out.put(plain, p.at[i])
				}
			}
		default:
			out.put(r, p.at[i])
		}
	}
	return out
}

var (
	// tornSign matches an arrow of an equals sign with spaces inside.
	tornSign = pattern.Of(`< *= *>|= +>`)
	// dashForHyphen matches a dash that is no minus: of an arrow, or of the name of an axis.
	dashForHyphen = pattern.Of(`[−–—‐‑]+>|<[−–—‐‑]+|\b[xyXY] *[−–—‐‑] *(?i:axis|direction|dir|coordinate|comp|force|part)`)
)

// rejoined writes signs without spaces inside, and the dashes of arrows and of names such as
// x-axis as hyphens.
func (p *page) rejoined() *page {
	text := p.String()
	if !strings.ContainsAny(text, "<>−–—‐‑") {
		return p
	}
	out := pageFor(len(p.runes))
	torn, dashes := tornSign().FindAllStringIndex(text, -1), dashForHyphen().FindAllStringIndex(text, -1)
	i := 0
	for offset, r := range text {
		switch {
		case r == ' ' && isInside(torn, offset):
		case strings.ContainsRune("−–—‐‑", r) && isInside(dashes, offset):
			out.put('-', p.at[i])
		default:
			out.put(r, p.at[i])
		}
		i++
	}
	return out
}

// isInside reports whether a place is in one of the spans.
func isInside(spans [][]int, place int) bool {
	return slices.ContainsFunc(spans, func(s []int) bool { return s[0] <= place && place < s[1] })
}

// raised writes a raised nought that stands for a degree sign as one.
func (p *page) raised() *page {
	for i, r := range p.runes {
		if r == '⁰' && p.isRaisedO(i) {
			p.runes[i] = '°'
		}
	}
	return p
}

// isRaisedO reports whether a raised nought stands for a degree sign: behind a number, alone,
// where the number is no power of ten and no index of a letter.
func (p *page) isRaisedO(i int) bool {
	start := i
	for start > 0 && (isDigit(p.runes[start-1]) || p.runes[start-1] == '.') {
		start--
	}
	if start == i || superscript(at(p.runes, i+1)) != 0 || string(p.runes[start:i]) == "10" {
		return false
	}
	word := start
	for word > 0 && isRun(p.runes[word-1]) {
		word--
	}
	return word == start || endsInFunction(p.runes[word:start])
}

// asciiDigit returns the digit of any script as 0 to 9: Unicode has them in rows of ten.
func asciiDigit(r rune) rune {
	value := rune(0)
	for value < 9 && unicode.IsDigit(r-value-1) {
		value++
	}
	return '0' + value
}

// isStyled reports whether a rune is a plain character in another dress: full and half width,
// small forms, mathematical alphabets, ligatures, letterlike and squared signs.
func isStyled(r rune) bool {
	switch {
	case r >= 0xFF00 && r <= 0xFFEF, r >= 0xFE50 && r <= 0xFE6F, r >= 0x1D400 && r <= 0x1D7FF,
		r >= 0xFB00 && r <= 0xFB06, r >= 0x3380 && r <= 0x33FF, r >= 0x2100 && r <= 0x214F:
		return true
	}
	return false
}

// String returns the text of the page.
func (p *page) String() string { return string(p.runes) }

// blank overwrites the runes from i to j with spaces.
func (p *page) blank(i, j int) {
	for ; i < j; i++ {
		p.runes[i] = ' '
	}
}

// isBlank reports whether nothing is on the page.
func (p *page) isBlank() bool { return strings.Trim(p.String(), " .") == "" }
