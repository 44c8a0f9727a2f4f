package checker_test

import (
	"math/rand/v2"
	"strings"
	"unicode"
)

// style is how one student types.
type style struct {
	minus, dot   string // the marks for minus and times; "" for nothing between factors
	equals       string // " = " or tighter
	degree       string // what stands behind a number of degrees
	greek        bool   // α rather than alpha
	subscript    int    // T1, T_1, T₁, T_{1}
	brackets     bool   // cos(α) rather than cos α
	tight        bool   // cosα, 2T
	comma        bool   // 7,6
	square, root string // ^2 and sqrt
	inverse      string // asin, arcsin, sin^-1
	capital      bool   // COS
	open         string // outer bracket
}

func pick[T any](r *rand.Rand, of ...T) T { return of[r.IntN(len(of))] }

func chance(r *rand.Rand, p float64) bool { return r.Float64() < p }

func newStyle(r *rand.Rand) *style {
	return &style{
		minus: pick(r, "-", "-", "−", "–"), dot: pick(r, "", "", "", "*", "·", "×", " * "),
		equals: pick(r, " = ", " = ", "=", "  =  "), degree: pick(r, "", "", "°", "°", " deg", " degrees"),
		greek: chance(r, 0.7), subscript: pick(r, 0, 0, 0, 1, 2, 3), brackets: chance(r, 0.4),
		tight: chance(r, 0.4), comma: chance(r, 0.12), square: pick(r, "^2", "²", "**2"),
		root: pick(r, "sqrt", "√"), inverse: pick(r, "a", "arc", "^-1", "⁻¹"), capital: chance(r, 0.05),
		open: pick(r, "(", "(", "(", "["),
	}
}

var greekShapes = map[string]string{
	"alpha": "α", "beta": "β", "gamma": "γ", "delta": "δ", "theta": "θ", "phi": "φ", "mu": "μ",
}

func (s *style) letter(name string) string {
	if shape, ok := greekShapes[name]; ok && s.greek {
		return shape
	}
	base := strings.TrimRight(name, "0123456789")
	if digits := name[len(base):]; digits != "" && base != "" {
		return base + s.digits(digits)
	}
	return name
}

func (s *style) digits(digits string) string {
	switch s.subscript {
	case 1:
		return "_" + digits
	case 2:
		return strings.Map(func(d rune) rune { return d - '0' + '₀' }, digits)
	case 3:
		return "_{" + digits + "}"
	}
	return digits
}

func (s *style) bracket(text string) string {
	if s.open == "[" {
		return "[" + text + "]"
	}
	return "(" + text + ")"
}

// line prints a chain of sides.
func (s *style) line(sides []*tree) string {
	var printed []string
	for _, side := range sides {
		printed = append(printed, s.print(side))
	}
	return strings.Join(printed, s.equals)
}

func (s *style) print(t *tree) string {
	switch t.op {
	case 'n':
		return s.number(t)
	case 'v':
		return s.letter(t.name)
	case 'f':
		return s.call(t)
	case '-':
		return s.minus + s.inside(t.args[0], "+-")
	case '+':
		return s.sum(t)
	case '*':
		return s.product(t)
	case '/':
		return s.inside(t.args[0], "+-") + "/" + s.inside(t.args[1], "+-*/")
	}
	return s.power(t)
}

func (s *style) number(t *tree) string {
	text := t.text
	if s.comma {
		text = strings.Replace(text, ".", ",", 1)
	}
	if t.deg {
		text += s.degree
	}
	return text
}

// inside brackets a part that has one of these operations on top.
func (s *style) inside(t *tree, ops string) string {
	if strings.IndexByte(ops, t.op) >= 0 {
		return s.bracket(s.print(t))
	}
	return s.print(t)
}

func (s *style) sum(t *tree) string {
	var b strings.Builder
	for i, a := range t.args {
		sign := " + "
		if a.op == '-' {
			sign, a = " "+s.minus+" ", a.args[0]
			if i == 0 {
				sign = s.minus
			}
		} else if i == 0 {
			sign = ""
		}
		if s.tight {
			sign = strings.TrimSpace(sign)
		}
		b.WriteString(sign + s.inside(a, "+-"))
	}
	return b.String()
}

func (s *style) power(t *tree) string {
	base := s.inside(t.args[0], "+-*/f^")
	if t.args[1].text == "2" {
		return base + s.square
	}
	return base + "^" + s.inside(t.args[1], "+-*/f^")
}

func (s *style) call(t *tree) string {
	name := t.name
	switch {
	case name == "sqrt":
		name = s.root
	case name[0] == 'a' && s.inverse[0] == 'a':
		name = s.inverse + name[1:]
	case name[0] == 'a':
		name = name[1:] + s.inverse
	}
	if s.capital {
		name = strings.ToUpper(name)
	}
	arg := t.args[0]
	if s.brackets || arg.op != 'n' && arg.op != 'v' || arg.op == 'v' && arg.means != nil {
		return name + "(" + s.print(arg) + ")"
	}
	if s.tight && (arg.op == 'n' || s.greek) {
		return name + s.print(arg)
	}
	return name + " " + s.print(arg)
}

// product prints factors. Nothing stands between two where it reads the same.
func (s *style) product(t *tree) string {
	text := ""
	for i, a := range t.args {
		ops := "+-/"
		if i == 0 || i == len(t.args)-1 {
			ops = "+-"
		}
		if i == 0 && a.op == '/' {
			ops = "+-/"
		}
		next := s.inside(a, ops)
		if i == 0 {
			text = next
			continue
		}
		text += s.between(t.args[i-1], a, next) + next
	}
	return text
}

func (s *style) between(before, after *tree, next string) string {
	first := []rune(next)[0]
	switch {
	case s.dot != "":
		return s.dot
	case before.op == 'f' && after.op != 'f', unicode.IsDigit(first), before.op == '/', after.op == '/':
		return "*"
	case before.op == 'n' && after.op == 'v' && strings.Contains("N s m g lb kN E", after.name):
		return "*"
	case s.tight && after.op == 'f' && !(before.op == 'f' && strings.HasPrefix(s.degree, " ")), s.tight && before.op == 'n' && after.op == 'v', before.op == 'v' && before.name == "m" && after.name == "g" && s.tight:
		return ""
	}
	return " "
}
