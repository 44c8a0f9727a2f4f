package lines

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/standstill/checker/quantity"
)

// Equations that stand one behind the other with nothing but a space between are told
// from a chain by what stands between two equals signs: "T1 = 20.2 N  T2 = 25.8 N"
// ends a quantity and begins a letter there; "w = 2 T1 = 31.4 N" does not.

// runOn cuts a piece into equations that stand one behind the other.
func (s *splitter) runOn(p piece) []piece {
	var all []piece
	p = p.trimmed()
	for {
		at := 0
		if len(all) <= Most {
			at = s.nextEquation(p)
		}
		if at == 0 {
			return append(all, p)
		}
		head, rest := p.part(0, at), p.part(at, len(p.runes))
		// The arrow or “so” stood in front of the first equation only.
		rest.concludes = false
		all, p = append(all, head), rest
	}
}

// nextEquation finds where the second equation of a piece begins, 0 for nowhere.
func (s *splitter) nextEquation(p piece) int {
	signs := equalsOf(p.runes)
	// So many equations are refused anyway, and each one costs a look at all the others.
	if len(signs) > 2*Most {
		return 0
	}
	wide := s.wideGap(p.runes, signs)
	for k := 1; k < len(signs); k++ {
		from, to := signs[k-1].to, signs[k].from
		name := lastWord(p.runes[from:to]) + from
		if name <= from || !s.letter(word(p.runes[name:to])) {
			continue
		}
		left := p.runes[:signs[0].from]
		if k > 1 {
			left = p.runes[signs[k-2].to:signs[k-1].from]
		}
		// "T1x = 0 T1y = 5": nobody multiplies by a component.
		components := s.component(word(left)) && s.component(word(p.runes[name:to]))
		head := strings.TrimRight(string(p.runes[from:name]), " ")
		gap := name - from - len([]rune(head))
		if s.ends(head, word(p.runes[name:to]), gap >= wide || components) {
			return name
		}
	}
	return 0
}

func word(side []rune) string { return strings.TrimSpace(string(side)) }

// wideGap returns how many spaces set one equation off from the next: two at least, and
// more than stand anywhere else in the piece.
func (s *splitter) wideGap(runes []rune, signs []stretch) int {
	ordinary := 0
	for i := 0; i < len(runes); i++ {
		from := i
		for i < len(runes) && runes[i] == ' ' {
			i++
		}
		beforeName := slices.ContainsFunc(signs, func(sign stretch) bool {
			return sign.from > i && lastWord(runes[:sign.from]) == i
		})
		if gap := i - from; gap > 0 && !beforeName && (ordinary == 0 || gap < ordinary) {
			ordinary = gap
		}
	}
	return max(2, ordinary+1)
}

// ends reports whether an equation ends in a side, with space and a name behind it; apart
// says that the space or the name set the next one off.
func (s *splitter) ends(head, name string, apart bool) bool {
	if word([]rune(head)) == "" || strings.ContainsRune("+-−–*·×/÷^(", lastRune(head)) {
		return false
	}
	return apart || strings.HasSuffix(head, ".") || s.endsInUnit(head, name)
}

// endsInUnit reports whether a side ends in a quantity that nothing behind it multiplies:
// a force, or a side that is an angle or a mass. A unit that is a letter of the problem
// is none, but the newton: nobody multiplies two forces.
func (s *splitter) endsInUnit(head, name string) bool {
	at := strings.LastIndexFunc(head, func(r rune) bool { return !unicode.IsLetter(r) && !strings.ContainsRune("/°²³⁻¹·^", r) })
	_, width := utf8.DecodeRuneInString(head[max(at, 0):])
	symbol, number := head[max(at, 0)+width:], strings.TrimRight(head[:max(at, 0)+width], " ")
	if at < 0 || symbol == "" || number == "" || !strings.ContainsRune("0123456789.)", lastRune(number)) {
		return false
	}
	unit, known := quantity.Find(symbol)
	switch alone := strings.Trim(number, " +-−0123456789.,") == ""; {
	case !known || symbol != "N" && s.letter(symbol):
		return false
	case unit.Dim == quantity.Force:
		return true
	case unit.Dim == quantity.Mass:
		// “3 kg g” is a weight: the g belongs to what is before it.
		return alone && name != "g"
	default:
		return alone && unit.Dim == quantity.Angle
	}
}

// stretch is a place in a piece.
type stretch struct{ from, to int }

// equalsOf finds the equals signs of a piece; several that touch are one.
func equalsOf(runes []rune) []stretch {
	var all []stretch
	for i := 0; i < len(runes); i++ {
		if !isEquals(runes[i]) {
			continue
		}
		from := i
		for i+1 < len(runes) && (isEquals(runes[i+1]) || runes[i+1] == '~') {
			i++
		}
		all = append(all, stretch{from, i + 1})
	}
	return all
}

// lastWord returns where the last word of a side begins, −1 where there is no space in
// front of it.
func lastWord(side []rune) int {
	to := len(side)
	for to > 0 && side[to-1] == ' ' {
		to--
	}
	at := to
	for at > 0 && side[at-1] != ' ' {
		at--
	}
	if at == 0 || at == to {
		return -1
	}
	return at
}

func lastRune(text string) rune {
	runes := []rune(text)
	return runes[len(runes)-1]
}
