package expr

import (
	"math"

	"example.org/standstill/checker/quantity"
)

// Program is a tree made ready to be evaluated many times. It is safe for use by
// several goroutines.
type Program struct {
	code  []instruction
	depth int
}

type instruction struct {
	op    Op
	slot  int
	value float64
	call  func(float64) float64
}

// callables is the table of functions that can be evaluated.
var callables = map[string]func(float64) float64{
	"sin": math.Sin, "cos": math.Cos, "tan": math.Tan,
	"asin": math.Asin, "acos": math.Acos, "atan": math.Atan,
	"sqrt": math.Sqrt,
	"cot":  func(x float64) float64 { return 1 / math.Tan(x) },
	"sec":  func(x float64) float64 { return 1 / math.Cos(x) },
	"csc":  func(x float64) float64 { return 1 / math.Sin(x) },
}

// Compile makes a program of the tree. slot gives the place of each letter in the
// environment that Run is given; a letter without one has the value NaN.
func Compile(n *Node, slot func(name string) (int, bool)) Program {
	p := Program{code: make([]instruction, 0, n.Size())}
	p.emit(n, slot)
	level := 0
	for _, i := range p.code {
		switch i.op {
		case Number, Name:
			level++
		// Two values become one; the others leave as many as they find.
		case Add, Sub, Mul, Div, Pow:
			level--
		}
		p.depth = max(p.depth, level)
	}
	return p
}

func (p *Program) emit(n *Node, slot func(string) (int, bool)) {
	for _, a := range n.Args {
		p.emit(a, slot)
	}
	i := instruction{op: n.Op}
	switch n.Op {
	case Number:
		i.value = n.Num.Value * factor(n.Unit)
	case Measured:
		i.value = factor(n.Unit)
	case Name:
		at, ok := slot(n.Name)
		if !ok {
			// NaN runs on through the whole tree, so that no value comes of a letter that nobody knows.
			i.op, i.value = Number, math.NaN()
		}
		i.slot = at
	case Call:
		i.call = callables[n.Name]
	}
	p.code = append(p.code, i)
}

// factor turns a number in the unit into SI.
func factor(symbol string) float64 {
	if symbol == "" {
		return 1
	}
	unit, ok := quantity.Find(symbol)
	if !ok {
		return math.NaN()
	}
	return unit.Factor
}

const smallStack = 40

// Run returns the value in the environment; NaN or ±Inf where there is none.
func (p Program) Run(env []float64) float64 {
	// On the goroutine's own stack: this runs for every sample
	// of every line, and would keep the collector busy.
	if p.depth <= smallStack {
		var room [smallStack]float64
		return p.run(env, room[:])
	}
	return p.run(env, make([]float64, p.depth))
}

func (p Program) run(env, stack []float64) float64 {
	top := -1
	for k := range p.code {
		i := &p.code[k]
		switch i.op {
		case Number:
			top++
			stack[top] = i.value
		case Name:
			top++
			stack[top] = env[i.slot]
		case Neg:
			stack[top] = -stack[top]
		case Size:
			stack[top] = math.Abs(stack[top])
		case Measured:
			stack[top] *= i.value
		case Call:
			stack[top] = i.call(stack[top])
		default:
			top--
			stack[top] = binary(i.op, stack[top], stack[top+1])
		}
	}
	return stack[0]
}

func binary(op Op, a, b float64) float64 {
	switch op {
	case Add:
		return a + b
	case Sub:
		return a - b
	case Mul:
		return a * b
	case Div:
		return a / b
	}
	return math.Pow(a, b)
}
