package expr

import (
	"slices"
	"strings"
	"unicode"

	"example.org/standstill/checker/quantity"
)

// Units behind a number: one of the table, or several with indices, slashes and
// dots that come to one of the table, as kg m/s² is the newton.

// place is a place in a text that is read with a problem's letters.
type place struct {
	letters *Letters
	runes   []rune
	at      int
}

// madeUnit reads a unit that is put together from others and returns where it ends. ok is
// false where there is none, and where it could as well be a product of letters.
func (p place) madeUnit() (end int, symbol string, ok bool) {
	u := unitMaking{place: p, over: 1, factor: 1}
	// No unit that is asked for has more than five factors.
	for range 5 {
		if !u.take() {
			break
		}
		found, is := quantity.Of(u.dim, u.factor)
		// A product of letters that happen to be units, as m g, must not become one: a division
		// or an index below nought is what only units have here.
		if is && u.divided && u.count > 1 && (u.indexed || !u.ours) && p.unitEnds(u.at) {
			end, symbol, ok = u.at, found.Symbol, true
		}
		if !u.separator() {
			break
		}
	}
	return end, symbol, ok
}

// unitMaking is the state of reading one: what the units so far come to, whether one of
// them divides, whether all are letters of the problem, and whether one has an index below nought.
type unitMaking struct {
	place
	over    int
	count   int
	dim     quantity.Dimension
	factor  float64
	divided bool
	ours    bool
	indexed bool
}

// take reads one unit with its index.
func (u *unitMaking) take() bool {
	unit, length := u.simple()
	if length == 0 {
		return false
	}
	ours, start := u.letters.knows(string(u.runes[u.at:u.at+length])), u.at
	u.ours = ours && (u.ours || u.count == 0)
	u.at += length
	index := u.index()
	if _, isLetter := u.letters.typed[string(u.runes[start:u.at])]; isLetter && u.at > start+length {
		return false // N2 is the problem's letter, not a square
	}
	u.indexed = u.indexed || index < 0
	index *= u.over
	u.divided = u.divided || index < 0
	u.count++
	for range max(index, -index) {
		if index > 0 {
			u.dim, u.factor = u.dim.Times(unit.Dim), u.factor*unit.Factor
		} else {
			u.dim, u.factor = u.dim.Over(unit.Dim), u.factor/unit.Factor
		}
	}
	return true
}

// plainUnits are the units with no sign in them, longest first.
var plainUnits = func() []plainUnit {
	var all []plainUnit
	for _, spelling := range unitSpellings {
		if unit, ok := quantity.Find(string(spelling)); ok && !strings.ContainsAny(string(spelling), "/^*²%°2") {
			all = append(all, plainUnit{spelling, unit})
		}
	}
	return all
}()

type plainUnit struct {
	spelling []rune
	unit     quantity.Unit
}

// simple finds the longest unit with no sign in it that stands here.
func (u *unitMaking) simple() (quantity.Unit, int) {
	for _, one := range plainUnits {
		end := u.at + len(one.spelling)
		if end <= len(u.runes) && slices.Equal(u.runes[u.at:end], one.spelling) && !isRun(at(u.runes, end)) {
			return one.unit, len(one.spelling)
		}
	}
	return quantity.Unit{}, 0
}

// index reads the power of a unit: -2, ^-2, ^{-2}, ⁻², **2, 2.
func (u *unitMaking) index() int {
	i := u.at
	if r := at(u.runes, i); superscript(r) != 0 {
		sign, value := 1, 0
		for ; superscript(at(u.runes, i)) != 0; i++ {
			if d := superscript(u.runes[i]); d == '-' {
				sign = -1
			} else {
				value = min(value*10+int(d-'0'), 9)
			}
		}
		u.at = i
		return sign * value
	}
	closing := rune(0)
	switch {
	case at(u.runes, i) == '^':
		i++
	case at(u.runes, i) == '*' && at(u.runes, i+1) == '*':
		i += 2
	}
	if r := at(u.runes, i); i > u.at && (r == '{' || r == '(') {
		closing = r
		i++
	}
	sign := 1
	if r := at(u.runes, i); r == '-' || r == '−' || r == '–' {
		sign, i = -1, i+1
	}
	digit := at(u.runes, i)
	if !isDigit(digit) || isDigit(at(u.runes, i+1)) {
		return 1
	}
	i++
	if closing != 0 {
		if r := at(u.runes, i); r != '}' && r != ')' {
			return 1
		}
		i++
	}
	u.at = i
	return sign * int(digit-'0')
}

// separator reads what stands between two units.
func (u *unitMaking) separator() bool {
	i := skip(u.runes, u.at, " ")
	switch r := at(u.runes, i); {
	case r == '/' || r == '∕' || r == '⁄':
		u.over, i = -1, i+1
	case strings.HasPrefix(string(u.runes[i:min(len(u.runes), i+4)]), "per "):
		u.over, i = -1, i+4
	case r == '·' || r == '⋅' || r == '*' && at(u.runes, i+1) != '*' || r == '.' || r == '•' || r == '∙' || r == '×':
		i++
	case i == u.at:
		return false
	}
	u.at = skip(u.runes, i, " ")
	return u.at < len(u.runes)
}

// unitEnds reports whether a unit may end here.
func (p place) unitEnds(i int) bool {
	next := at(p.runes, i)
	return !isRun(next) && !isDigit(next) && next != '^' && superscript(next) == 0
}

// isOneUnit reports whether a spelling has no sign in it, so that it could be a letter.
func isOneUnit(spelling string) bool { return !strings.ContainsAny(spelling, "/ ·^⁻-") }

// unitSpellings holds every spelling of a unit, longest first, as runes.
var unitSpellings = func() [][]rune {
	var all [][]rune
	for _, s := range quantity.Spellings() {
		if s != "none" {
			all = append(all, []rune(s))
		}
	}
	slices.SortStableFunc(all, func(a, b []rune) int { return len(b) - len(a) })
	return all
}()

// unit finds the longest unit that stands at this place as a word of its own, in
// any letter case where no letter of the problem is meant.
func (p place) unit() (length int, symbol string) {
	length, symbol = p.tableUnit()
	if end, made, ok := p.madeUnit(); ok && end-p.at > length {
		return end - p.at, made
	}
	return length, symbol
}

func (p place) tableUnit() (length int, symbol string) {
	for _, fold := range []bool{false, true} {
		for _, spelling := range unitSpellings {
			if !p.spells(spelling, fold) {
				continue
			}
			text := string(spelling)
			// In another case than the unit's own, a letter of the problem is likelier: n for N.
			if fold && p.ambiguous(text) != "" {
				return 0, ""
			}
			unit, _ := quantity.Find(text)
			return len(spelling), unit.Symbol
		}
	}
	return 0, ""
}

func (p place) spells(spelling []rune, fold bool) bool {
	if p.at+len(spelling) > len(p.runes) {
		return false
	}
	for i, r := range spelling {
		have := p.runes[p.at+i]
		if have != r && !(fold && unicode.ToLower(have) == unicode.ToLower(r)) {
			return false
		}
	}
	return p.unitEnds(p.at + len(spelling))
}

// ambiguous returns the problem's letter that a unit's spelling could be as well.
func (p place) ambiguous(spelling string) string {
	head, _, _ := strings.Cut(spelling, "/")
	name, exact, ok := p.letters.resolve(head)
	if ok && exact {
		return name
	}
	return ""
}
