package expr

import "example.org/standstill/checker/quantity"

type tokenKind uint8

const (
	tokEnd tokenKind = iota
	tokNumber
	tokName
	tokFunction
	tokUnit
	tokPlus
	tokMinus
	tokTimes
	tokSlash
	tokPower
	tokOpen
	tokClose
	tokBar
	tokEquals
	tokRatio
)

// token is a piece of the text. letter is set on a unit that could be one of the
// problem's letters too (N, m, g, s); unknown on a name that is not one, said on one that
// was typed in words.
type token struct {
	kind     tokenKind
	text     string
	num      quantity.Number
	letter   string
	unknown  bool
	said     bool
	pos, end int
}

// choice holds the ways in which an ambiguous text may be taken.
type choice uint8

const (
	choosePaper     choice = 1 << iota // slash: everything that touches is below it
	chooseThousands                    // comma: digit groups
	chooseName                         // "Fx =" with a force F: the name of the sum, not the component
	chooseFactor                       // "2. T": the less likely of a label and a factor
	chooseArgument                     // "atan a/b": the less likely of the whole quotient and its first factor
	chooseEquals                       // "P: R =": an equals sign, not a ratio
	chooseLetter                       // "ACOS(δ)": the letter A times a cosine, not an inverse
	allChoices      = chooseLetter<<1 - 1
)

// stream is a line's tokens on their way to the parser.
type stream struct {
	letters *Letters
	tokens  []token
}
