package frame

import (
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/lipgloss"

	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor/bench"
)

// Span is a piece of text of one shade. Spans are made by Look.Text alone, so
// that nothing which acts on a terminal gets into one.
type Span struct {
	Text  string
	Width int
	Shade Shade
}

// Row is one line of the screen.
type Row []Span

func (r Row) Width() int {
	w := 0
	for _, s := range r {
		w += s.Width
	}
	return w
}

// Padded fills the row with spaces to a width.
func (r Row) Padded(width int) Row {
	if gap := width - r.Width(); gap > 0 {
		r = append(r, Span{strings.Repeat(" ", gap), gap, Plain})
	}
	return r
}

// Cut drops what lies beyond a width.
func (r Row) Cut(width int) Row {
	if r.Width() <= width {
		return r
	}
	var out Row
	for _, s := range r {
		if s.Width > width {
			text := head(s.Text, width)
			return append(out, Span{text, TextWidth(text), s.Shade})
		}
		out = append(out, s)
		width -= s.Width
	}
	return out
}

// Text makes a span of any text, wherever it comes from.
func (l *Look) Text(s Shade, text string) Span {
	text = l.Letters(text)
	return Span{text, TextWidth(text), s}
}

// Row makes a row of one span.
func (l *Look) Row(s Shade, text string) Row { return Row{l.Text(s, text)} }

// Gap is so many spaces.
func Gap(n int) Span {
	n = max(n, 0)
	return Span{strings.Repeat(" ", n), n, Plain}
}

// spelled says in seven bits what the screens show.
var spelled = strings.NewReplacer(
	"α", "alpha", "β", "beta", "γ", "gamma", "δ", "delta", "θ", "theta", "φ", "phi", "μ", "mu", "ψ", "psi",
	"ω", "omega", "λ", "lambda", "ρ", "rho", "σ", "sigma", "τ", "tau", "ε", "epsilon", "η", "eta", "π", "pi",
	"₀", "0", "₁", "1", "₂", "2", "₃", "3", "₄", "4", "₅", "5", "₆", "6", "₇", "7", "₈", "8", "₉", "9", "ₓ", "x",
	"⁰", "^0", "¹", "^1", "²", "^2", "³", "^3", "⁴", "^4", "⁻", "-", "½", "1/2",
	"±", "+-", "−", "-", "–", "-", "·", "*", "×", "x", "÷", "/", "°", " deg", "√", "sqrt", "Σ", "sum ", "≈", "~", "…", "...",
	"“", `"`, "”", `"`, "’", "'", "‘", "'", "↑", "up", "↓", "down", "←", "left", "→", "right", "′", "'",
)

// Letters drops what acts on a terminal, and spells what the instance may not
// show.
func (l *Look) Letters(text string) string {
	if IsPlain(text) {
		return text
	}
	if !isHarmless(text) {
		text = expr.Clean(text)
	}
	if !l.Ascii || IsPlain(text) {
		return text
	}
	return strings.Map(func(r rune) rune {
		if r < utf8.RuneSelf {
			return r
		}
		return '?'
	}, spelled.Replace(text))
}

// isHarmless reports whether a text is made of characters that do nothing but
// take a cell each.
func isHarmless(text string) bool {
	for _, r := range text {
		if !isNarrow(r) {
			return false
		}
	}
	return true
}

// IsPlain reports whether a text is of seven bits and acts on nothing.
func IsPlain(text string) bool {
	for i := range len(text) {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}

// TextWidth is how many cells a text takes.
func TextWidth(text string) int {
	if !isHarmless(text) {
		return lipgloss.Width(text)
	}
	return utf8.RuneCountInString(text)
}

// narrow are the ranges of characters that take one cell each and join with
// nothing: what formulas and drawings are made of.
var narrow = [...][2]rune{
	{' ', '~'}, {0xA1, 0xAC}, {0xAE, 0x2FF}, {0x391, 0x3C9}, {0x2010, 0x2027}, {0x2030, 0x205E},
	{0x2070, 0x209C}, {0x2190, 0x21FF}, {0x2200, 0x22FF}, {0x2500, 0x25FC}, {0x2713, 0x2718}, {0x2800, 0x28FF},
}

func isNarrow(r rune) bool {
	for _, n := range narrow {
		if r <= n[1] { // the ranges are in order
			return r >= n[0]
		}
	}
	return false
}

// head is as much of a text as fits into a width.
func head(text string, width int) string {
	at := 0
	for i, r := range text {
		// Measured from the beginning: a mark that joins the character before it takes no cell of its own.
		if TextWidth(text[:i+utf8.RuneLen(r)]) > width {
			break
		}
		at = i + utf8.RuneLen(r)
	}
	return text[:at]
}

// Wrap breaks a text at spaces into lines of a width; a longer word is broken
// where it has to be.
func (l *Look) Wrap(text string, width int) []string {
	return l.wrapChunks(strings.Fields(l.Letters(text)), width)
}

// WrapMeasured wraps a text like wrap, but parts no number from its unit, and no letter
// from its value.
func (l *Look) WrapMeasured(text string, width int) []string {
	chunks := bench.Chunks(strings.Join(strings.Fields(expr.Clean(text)), " "))
	for i := range chunks {
		chunks[i] = l.Letters(chunks[i])
	}
	return l.wrapChunks(chunks, width)
}

// wrapChunks breaks a text between its chunks alone, where these fit.
func (l *Look) wrapChunks(chunks []string, width int) []string {
	width = max(width, 4) // in a window of no width, no word would ever get shorter
	var lines []string
	line := ""
	for _, word := range chunks {
		for TextWidth(word) > width {
			if line != "" {
				lines, line = append(lines, line), ""
			}
			part := head(word, width)
			lines, word = append(lines, part), word[len(part):]
		}
		switch {
		case line == "":
			line = word
		case TextWidth(line)+1+TextWidth(word) <= width:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	if line != "" || len(lines) == 0 {
		lines = append(lines, line)
	}
	return lines
}

// Rows wraps a text into rows of one shade, with a cell free at each side.
func (l *Look) Rows(s Shade, text string, cols int) []Row {
	if text == "" {
		return nil
	}
	var rows []Row
	for _, part := range l.Wrap(text, cols-2) {
		rows = append(rows, Row{Gap(1), l.Text(s, part)})
	}
	return rows
}
