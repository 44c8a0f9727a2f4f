package expr

import "strings"

// numberScan reads a number from its place on. take says whether "1,200" is a number with digit
// groups, met that it could be one; alone says that a space does not join digit groups.
type numberScan struct {
	runes []rune
	at    int
	take  choice
	met   choice
	alone bool
	text  strings.Builder
}

// read reads "9.8", ".5", "5.", "7,6", "1,200", "1 275", "1e3", "1.2×10^3". Points that
// say that digits go on are left out.
func (n *numberScan) read() string {
	n.digits()
	thousands := n.groups() || n.spacedGroups()
	if r := n.peek(0); !n.goesOn() && (r == '.' || r == ',' && !thousands && isDigit(n.peek(1))) {
		n.text.WriteByte('.')
		n.at++
		n.digits()
	}
	if n.goesOn() {
		n.at = skip(n.runes, n.at, ".…")
	}
	n.power()
	return strings.TrimSuffix(n.text.String(), ".")
}

func (n *numberScan) peek(ahead int) rune { return at(n.runes, n.at+ahead) }

// goesOn reports whether the points stand here that say that digits go on.
func (n *numberScan) goesOn() bool {
	return n.peek(0) == '…' || n.peek(0) == '.' && n.peek(1) == '.'
}

// spacedGroups reads digit groups with a space between them, as in 1 275: one to three
// figures, then threes.
func (n *numberScan) spacedGroups() bool {
	length := n.text.Len()
	// 0 275 is no number with groups, and 1234 567 has its groups wrong.
	if length == 0 || length > 3 || n.text.String()[0] == '0' || n.alone {
		return false
	}
	found := false
	for n.peek(0) == ' ' && isDigit(n.peek(1)) && isDigit(n.peek(2)) && isDigit(n.peek(3)) && !isDigit(n.peek(4)) {
		n.at++
		n.digits()
		found = true
	}
	return found
}

func (n *numberScan) digits() {
	for isDigit(n.peek(0)) {
		n.text.WriteRune(n.peek(0))
		n.at++
	}
}

// groups reads the digit groups of "1,200" and "1,200,000". One comma before
// three figures has two readings; two commas, or a point after one, have one.
func (n *numberScan) groups() bool {
	length := n.text.Len()
	if length == 0 || length > 3 || !n.group(0) || n.text.String()[0] == '0' {
		return false
	}
	// Two commas are no decimal comma, nor is one with a point behind its three figures.
	certain := n.group(4) || n.peek(4) == '.' && isDigit(n.peek(5))
	if !certain {
		n.met |= chooseThousands
		if n.take&chooseThousands == 0 {
			return false
		}
	}
	for n.group(0) {
		n.at++
		n.digits()
	}
	return true
}

// group reports whether a comma and exactly three digits stand ahead.
func (n *numberScan) group(ahead int) bool {
	return n.peek(ahead) == ',' && isDigit(n.peek(ahead+1)) && isDigit(n.peek(ahead+2)) &&
		isDigit(n.peek(ahead+3)) && !isDigit(n.peek(ahead+4))
}

// power reads the power of ten behind a number: "e3", "×10^3", "x 10³".
func (n *numberScan) power() {
	// Without a digit behind it the e is a letter, as in 3 e.
	if r := n.peek(0); r == 'e' || r == 'E' {
		sign := 0
		if n.peek(1) == '-' || n.peek(1) == '+' || n.peek(1) == '−' {
			sign = 1
		}
		if isDigit(n.peek(1 + sign)) {
			n.at++
			n.signed("e")
		}
		return
	}
	rest := n.runes[n.at:]
	i := skip(rest, 0, " ")
	if i >= len(rest) || !strings.ContainsRune("×*·xX⋅∙", rest[i]) {
		return
	}
	i = skip(rest, i+1, " ")
	if i+2 >= len(rest) || rest[i] != '1' || rest[i+1] != '0' {
		return
	}
	i = skip(rest, i+2, " ")
	switch {
	case at(rest, i) == '^':
		n.raised(rest, i+1)
	case at(rest, i) == '*' && at(rest, i+1) == '*':
		n.raised(rest, i+2)
	case superscript(at(rest, i)) != 0:
		n.text.WriteString("×10^")
		for n.at += i; superscript(n.peek(0)) != 0; n.at++ {
			n.text.WriteRune(superscript(n.peek(0)))
		}
	}
}

// raised reads the exponent of a power of ten from the i-th rune of the rest: 3, -3, {3}.
func (n *numberScan) raised(rest []rune, i int) {
	i = skip(rest, i, " ")
	closing := map[rune]rune{'{': '}', '(': ')'}[at(rest, i)]
	if closing != 0 {
		i++
	}
	end := i
	if r := at(rest, end); r == '-' || r == '−' || r == '–' || r == '+' {
		end++
	}
	digits := end
	for isDigit(at(rest, end)) {
		end++
	}
	if end == digits || closing != 0 && at(rest, end) != closing {
		return
	}
	n.at += i
	n.signed("×10^")
	if closing != 0 {
		n.at++
	}
}

func (n *numberScan) signed(mark string) {
	n.text.WriteString(mark)
	switch n.peek(0) {
	case '-', '−', '–':
		n.text.WriteByte('-')
		n.at++
	case '+':
		n.at++
	}
	n.digits()
}
