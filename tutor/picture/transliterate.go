package picture

import (
	"strings"
	"unicode"
)

// spelling is how signs beyond seven bits are written where only those exist
// or where a voice reads them.
var spelling = map[rune]string{
	'₀': "0", '₁': "1", '₂': "2", '₃': "3", '₄': "4", '₅': "5", '₆': "6", '₇': "7", '₈': "8", '₉': "9",
	'ₐ': "a", 'ₑ': "e", 'ₕ': "h", 'ᵢ': "i", 'ⱼ': "j", 'ₖ': "k", 'ₗ': "l", 'ₘ': "m", 'ₙ': "n", 'ₒ': "o",
	'ₚ': "p", 'ᵣ': "r", 'ₛ': "s", 'ₜ': "t", 'ᵤ': "u", 'ᵥ': "v", 'ₓ': "x",
	'⁰': "^0", '¹': "^1", '²': "^2", '³': "^3", '⁴': "^4",
	'α': "alpha", 'β': "beta", 'γ': "gamma", 'δ': "delta", 'ε': "epsilon", 'ζ': "zeta", 'η': "eta",
	'θ': "theta", 'ι': "iota", 'κ': "kappa", 'λ': "lambda", 'μ': "mu", 'µ': "mu", 'ν': "nu", 'ξ': "xi",
	'π': "pi", 'ρ': "rho", 'σ': "sigma", 'ς': "sigma", 'τ': "tau", 'υ': "upsilon", 'φ': "phi", 'ϕ': "phi",
	'χ': "chi", 'ψ': "psi", 'ω': "omega", 'ϑ': "theta", 'ϵ': "epsilon",
	'Δ': "Delta", 'Θ': "Theta", 'Σ': "Sum ", 'Φ': "Phi", 'Ω': "Omega",
	'·': "*", '×': "x", '÷': "/", '−': "-", '–': "-", '—': "-", '±': "+-", '≤': "<=", '≥': ">=", '≠': "!=",
	'≈': "~", '√': "sqrt", '½': "1/2", '∞': "infinity", '→': "->", '↑': "^", '′': "'", '’': "'", '‘': "'", '“': "\"", '”': "\"", '…': "...",
	'\u00a0': " ", '\u2009': " ", '\u202f': " ",
}

// transliterated writes a text in seven bits; what has no spelling becomes a question mark.
func transliterated(text string) string {
	return strings.Map(func(r rune) rune {
		if r > unicode.MaxASCII {
			return '?'
		}
		return r
	}, spoken(strings.ReplaceAll(strings.ReplaceAll(text, " °", "°"), "°", " deg")))
}

// spoken writes a text for a voice: letters and signs as words, anything else
// as it is.
func spoken(text string) string {
	if isASCII(text) {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		if s, ok := spelling[r]; ok {
			b.WriteString(s)
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

func isASCII(text string) bool {
	for i := range len(text) {
		if text[i] >= 0x80 {
			return false
		}
	}
	return true
}

// doubles are the ranges of characters that take two cells.
var doubles = []struct{ from, to rune }{
	{0x1100, 0x115f}, {0x2e80, 0xa4cf}, {0xac00, 0xd7a3}, {0xf900, 0xfaff}, {0xfe30, 0xfe6f},
	{0xff00, 0xff60}, {0xffe0, 0xffe6}, {0x1f300, 0x1faff}, {0x20000, 0x3fffd},
}

// widened gives a rune for each cell of a text: 0 for the right half of a
// character that takes two.
func widened(text string) []rune {
	cells := make([]rune, 0, len(text))
	for _, r := range text {
		cells = append(cells, r)
		if r >= doubles[0].from && isDouble(r) {
			cells = append(cells, 0)
		}
	}
	return cells
}

func isDouble(r rune) bool {
	for _, d := range doubles {
		if r >= d.from && r <= d.to {
			return true
		}
	}
	return false
}
