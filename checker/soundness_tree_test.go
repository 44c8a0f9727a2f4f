package checker_test

import (
	"math"
	"slices"
	"strconv"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
)

// The search for wrong judgements builds its lines from trees of its own and gives
// them a value by itself, so that a mistake of the reader, of the evaluator or of
// the comparison cannot hide in it.

// tree is an expression. op is n (number), v (letter), f (function) or one of
// + * / ^ and - for a minus sign in front. means is what a letter stands for
// where that is no plain letter of the problem (a component, a usual letter).
type tree struct {
	op    byte
	name  string
	text  string // a number as it is typed
	num   float64
	deg   bool // a number of degrees: num is in radians
	means *tree
	args  []*tree
}

// env holds a value in SI for every letter.
type env map[string]float64

func letter(name string) *tree { return &tree{op: 'v', name: name} }

// stands returns a letter that means an expression.
func stands(name string, means *tree) *tree { return &tree{op: 'v', name: name, means: means} }

func typed(text string, num float64) *tree { return &tree{op: 'n', text: text, num: num} }

func whole(n int) *tree { return typed(strconv.Itoa(n), float64(n)) }

func degrees(text string) *tree {
	x, _ := strconv.ParseFloat(text, 64)
	return &tree{op: 'n', text: text, num: x * math.Pi / 180, deg: true}
}

// rounded returns a number with so many figures.
func rounded(x float64, figures int) *tree {
	text := strconv.FormatFloat(x, 'g', figures, 64)
	y, _ := strconv.ParseFloat(text, 64)
	if decimals := figures - 1 - int(math.Floor(math.Log10(math.Abs(y)))); decimals > 0 {
		text = strconv.FormatFloat(y, 'f', decimals, 64)
	} else {
		text = strconv.FormatFloat(y, 'f', 0, 64)
	}
	return typed(text, y)
}

func apply(function string, arg *tree) *tree {
	return &tree{op: 'f', name: function, args: []*tree{arg}}
}

func negative(a *tree) *tree {
	if a.op == '-' {
		return a.args[0]
	}
	return &tree{op: '-', args: []*tree{a}}
}

func plus(args ...*tree) *tree {
	switch len(args) {
	case 0:
		return whole(0)
	case 1:
		return args[0]
	}
	return &tree{op: '+', args: args}
}

func times(args ...*tree) *tree {
	switch len(args) {
	case 0:
		return whole(1)
	case 1:
		return args[0]
	}
	return &tree{op: '*', args: args}
}

func over(a, b *tree) *tree { return &tree{op: '/', args: []*tree{a, b}} }

func squared(a *tree) *tree { return &tree{op: '^', args: []*tree{a, whole(2)}} }

// value evaluates the tree; not a number where it has no value.
func (t *tree) value(at env) float64 {
	switch t.op {
	case 'n':
		return t.num
	case 'v':
		if t.means != nil {
			return t.means.value(at)
		}
		x, known := at[t.name]
		if !known {
			return math.NaN()
		}
		return x
	case 'f':
		return functions(t.name)(t.args[0].value(at))
	case '-':
		return -t.args[0].value(at)
	}
	x := t.args[0].value(at)
	for _, a := range t.args[1:] {
		x = operate(t.op, x, a.value(at))
	}
	return x
}

func operate(op byte, x, y float64) float64 {
	switch op {
	case '+':
		return x + y
	case '*':
		return x * y
	case '/':
		return x / y
	}
	return math.Pow(x, y)
}

func functions(name string) func(float64) float64 {
	return map[string]func(float64) float64{
		"sin": math.Sin, "cos": math.Cos, "tan": math.Tan, "sqrt": math.Sqrt,
		"asin": math.Asin, "acos": math.Acos, "atan": math.Atan,
	}[name]
}

// letters returns the problem's own letters that the tree depends on.
func (t *tree) letters() []string {
	var names []string
	switch {
	case t.op == 'v' && t.means != nil:
		return t.means.letters()
	case t.op == 'v':
		return []string{t.name}
	}
	for _, a := range t.args {
		for _, name := range a.letters() {
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	return names
}

// same reports whether both are one letter.
func (t *tree) same(u *tree) bool {
	return t.op == 'v' && u.op == 'v' && t.name == u.name && (t.means == nil) == (u.means == nil)
}

// hasFunction reports whether there is a function in the tree.
func (t *tree) hasFunction() bool {
	return t.op == 'f' || slices.ContainsFunc(t.args, (*tree).hasFunction)
}

// replace returns the tree with every letter of that name exchanged.
func (t *tree) replace(name string, by *tree) *tree {
	if t.op == 'v' && t.name == name && t.means == nil {
		return by
	}
	c := *t
	c.args = make([]*tree, len(t.args))
	for i, a := range t.args {
		c.args[i] = a.replace(name, by)
	}
	if t.means != nil {
		c.means = t.means.replace(name, by)
	}
	return &c
}

// treeOf copies an expression of a problem file.
func treeOf(n *expr.Node) *tree {
	var args []*tree
	for _, a := range n.Args {
		args = append(args, treeOf(a))
	}
	switch n.Op {
	case expr.Number:
		return numberOf(n)
	case expr.Name:
		return letter(n.Name)
	case expr.Neg:
		return negative(args[0])
	case expr.Add:
		return plus(args...)
	case expr.Sub:
		return plus(args[0], negative(args[1]))
	case expr.Mul:
		return times(args...)
	case expr.Div:
		return over(args[0], args[1])
	case expr.Pow:
		return &tree{op: '^', args: args}
	case expr.Call:
		return apply(n.Name, args[0])
	}
	panic("an expression that the search does not know: " + n.Name)
}

// String prints the tree in a plain form, for comparing.
func (t *tree) String() string {
	return (&style{minus: "-", dot: "*", equals: "=", square: "^2", root: "sqrt", inverse: "a", brackets: true}).print(t)
}

// numberOf copies a number of a problem file, in SI if it has a unit.
func numberOf(n *expr.Node) *tree {
	unit, known := quantity.Find(n.Unit)
	switch {
	case n.Unit == "deg":
		return degrees(n.Num.Text)
	case known && unit.Factor != 1:
		x := n.Num.Value * unit.Factor
		return typed(strconv.FormatFloat(x, 'f', -1, 64), x)
	}
	return typed(n.Num.Text, n.Num.Value)
}
