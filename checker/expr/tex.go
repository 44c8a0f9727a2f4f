package expr

import (
	"strings"
	"unicode"
)

// texCommands is the table of commands of TeX, as they come out of formula editors, and what
// they stand for. Of commands that are not here strayBackslash is left, which cannot be read.
var texCommands = func() map[string]string {
	table := map[string]string{
		"varphi": "φ", "vartheta": "θ", "varepsilon": "ε", "Theta": "θ", "Delta": "δ", "Omega": "ω", "Phi": "φ", "Psi": "ψ",
		"cdot": "·", "cdotp": "·", "times": "×", "ast": "*", "div": "÷", "ldots": "…", "dots": "…", "cdots": "…",
		"approx": "≈", "simeq": "≈", "cong": "≈", "sim": "≈", "doteq": "≈", "equiv": "=",
		"implies": "⇒", "Rightarrow": "⇒", "Longrightarrow": "⇒", "to": "→", "rightarrow": "→", "longrightarrow": "→",
		"iff": "⇔", "Leftrightarrow": "⇔", "therefore": "∴", "because": " ", "uparrow": "↑", "downarrow": "↓", "leftarrow": "←",
		"nearrow": "↗", "nwarrow": "↖", "searrow": "↘", "swarrow": "↙", "parallel": "∥", "perp": "⊥", "angle": "",
		"sum": "Σ", "Sigma": "Σ", "lt": "<", "gt": ">", "le": "≤", "leq": "≤", "ge": "≥", "geq": "≥",
		"degree": "°", "textdegree": "°", "celsius": "°", "prime": "", "quad": " ", "qquad": " ", "enspace": " ", "thinspace": " ",
		"left": "", "right": "", "big": "", "Big": "", "bigg": "", "Bigg": "", "bigl": "", "bigr": "", "Bigl": "", "Bigr": "",
		"displaystyle": "", "textstyle": "", "limits": "", "nolimits": "", "rm": "", "it": "", "bf": "",
		"mathstrut": "", "lvert": "|", "rvert": "|", "vert": "|",
		"lbrace": "(", "rbrace": ")", "lbrack": "[", "rbrack": "]", "lparen": "(", "rparen": ")",
		",": " ", ";": " ", ":": " ", "!": "", " ": " ", "{": "(", "}": ")", "(": " ", ")": " ", "[": " ", "]": " ",
		"\\": ";", "%": "%", "&": "&", "$": "", "#": "#", "_": "_", "~": " ", "|": "|",
	}
	for _, g := range greek {
		if _, set := table[g.name]; !set {
			table[g.name] = string([]rune(g.shapes)[:1])
		}
	}
	for _, f := range functions {
		// Spaces, or a\sin would become an arc sine.
		table[f.spelling] = " " + f.spelling + " "
	}
	delete(table, "sqrt")
	delete(table, "root")
	return table
}()

// texDress lists the commands that only say how what they act on is set.
const texDress = " text mathrm mathbf mathit mathsf operatorname vec hat bar overline overrightarrow underline boldsymbol bm " +
	"textbf textit textrm textnormal mbox hbox boxed unit si mathbb mathcal textsf "

// strayBackslash stands for the backslash of an unknown command. A backslash would be taken for the
// beginning of TeX once more, and perhaps of another command.
const strayBackslash = '∖'

// untex turns TeX into the formula that is meant: \frac{w}{2\sin\theta} into
// ((w)/(2 sin θ)). A text with no backslash and no pair of
// dollar signs in one row stays as it is.
func (p *page) untex() *page {
	if text := p.String(); !strings.Contains(text, `\`) && !hasDollars(text) {
		return p
	}
	t := &untexing{in: p}
	for t.next < len(p.runes) {
		t.step()
	}
	return &t.out
}

// hasDollars reports whether a row of the text has a pair of dollar signs.
func hasDollars(text string) bool {
	for row := range strings.SplitSeq(text, "\n") {
		if strings.Count(row, "$") > 1 {
			return true
		}
	}
	return false
}

// untexing is the reading of one page of TeX: how far it is, and what has come out.
type untexing struct {
	in    *page
	next  int
	out   page
	depth int
}

func (t *untexing) peek(ahead int) rune { return at(t.in.runes, t.next+ahead) }

// step copies one rune, one command or one group.
func (t *untexing) step() {
	r, from := t.peek(0), t.in.from(t.next)
	switch {
	case r == '\\':
		t.command()
	case r == '$':
		t.next++
	case r == '~':
		t.next++
		t.out.put(t.space(), from)
	case r == '{' && t.peek(1) == '}':
		t.next += 2
	case r == '{' && t.peek(1) == ',' && t.peek(2) == '}': // 20{,}2
		t.out.put(',', from)
		t.next += 3
	case r == '&':
		t.out.put(' ', from) // the place at which equations are lined up
		t.next++
	case r == '^' && t.isDegree():
	default:
		t.out.put(r, from)
		t.next++
	}
}

// space is what a tie means: in TeX a space, else "nearly". What is left out of the page does not
// stand between it and what follows.
func (t *untexing) space() rune {
	ahead := 0
	for t.peek(ahead) == '$' || t.peek(ahead) == '{' && t.peek(ahead+1) == '}' {
		if ahead++; t.peek(ahead-1) == '{' {
			ahead++
		}
	}
	if unicode.IsLetter(t.peek(ahead)) || t.peek(ahead) == '\\' {
		return ' '
	}
	return '~'
}

// isDegree takes ^\circ and ^{\circ} for a degree sign.
func (t *untexing) isDegree() bool {
	rest := string(t.in.runes[t.next:])
	for _, shape := range []string{`^\circ`, `^{\circ}`, `^{ \circ}`, `^{\circ }`, `^\degree`, `^{\degree}`} {
		if strings.HasPrefix(rest, shape) {
			t.out.put('°', t.in.from(t.next))
			t.next += len(shape)
			return true
		}
	}
	return false
}

// name reads the command's name behind a backslash: letters, or one other rune.
func (t *untexing) name() string {
	end := t.next + 1
	for end < len(t.in.runes) && asciiLetter(t.in.runes[end]) {
		end++
	}
	if end == t.next+1 && end < len(t.in.runes) {
		end++
	}
	return string(t.in.runes[t.next+1 : end])
}

func asciiLetter(r rune) bool { return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' }

func (t *untexing) command() {
	from, name := t.in.from(t.next), t.name()
	length := 1 + len([]rune(name))
	switch name {
	case "frac", "dfrac", "tfrac", "cfrac":
		t.next += length
		t.fraction(from)
		return
	case "sqrt":
		t.next += length
		t.out.put('√', from)
		t.argument("(", ")")
		return
	case "begin", "end":
		t.next += length
		t.skipGroup()
		return
	case "circ":
		t.next += length
		t.out.put('°', from)
		return
	}
	if strings.Contains(texDress, " "+name+" ") {
		t.next += length
		t.argument("", "")
		return
	}
	stands, known := texCommands[name]
	if !known {
		t.out.put(strayBackslash, from)
		t.next++
		return
	}
	t.next += length
	t.out.puts(stands, from)
	if (name == "left" || name == "right") && t.peek(0) == '.' {
		t.next++
	}
}

func (t *untexing) fraction(from int) {
	t.out.put('(', from)
	t.argument("(", ")")
	t.out.put('/', from)
	t.argument("(", ")")
	t.out.put(')', from)
}

// argument copies what a command acts on: a group in braces, a command or one
// rune, in the brackets given.
func (t *untexing) argument(open, closing string) {
	for t.peek(0) == ' ' {
		t.next++
	}
	from := t.in.from(t.next)
	t.out.puts(open, from)
	t.depth++
	switch {
	case t.depth > maxDepth:
		t.next = len(t.in.runes)
	case t.peek(0) == '{':
		end := t.closing()
		for t.next++; t.next < end; {
			t.step()
		}
		t.next = max(t.next, end+1)
	case t.next < len(t.in.runes):
		t.step()
	}
	t.depth--
	t.out.puts(closing, t.in.from(min(t.next, len(t.in.runes))))
}

// closing finds the brace that closes the one at hand; the text's end where there is none.
func (t *untexing) closing() int {
	depth := 0
	for i := t.next; i < len(t.in.runes); i++ {
		switch t.in.runes[i] {
		case '\\':
			i++
		case '{':
			depth++
		case '}':
			depth--
			if depth == 0 {
				return i
			}
		}
	}
	return len(t.in.runes)
}

func (t *untexing) skipGroup() {
	if t.peek(0) == '{' {
		t.next = min(t.closing()+1, len(t.in.runes))
	}
}
