package trial

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
)

// fractionsOf finds the whole numbers of a line that make up fractions. In 12 F = 13 W
// the fraction goes across the equals sign.
func (nums *Numbers) fractionsOf(sides []*expr.Node) []*expr.Node {
	if len(sides) == 2 && len(sides[0].Names()) > 0 && len(sides[1].Names()) > 0 {
		return nums.fractions(expr.Join(expr.Div, sides[0], sides[1]), nil)
	}
	var all []*expr.Node
	for _, side := range sides {
		all = nums.fractions(side, all)
	}
	return all
}

// fractions appends the whole numbers that stand as a fraction in a product: the 12
// and the 13 of 12 F/13. They are exact, unless a size of the problem rounds to one of
// them.
func (nums *Numbers) fractions(n *expr.Node, into []*expr.Node) []*expr.Node {
	if n.Op != expr.Mul && n.Op != expr.Div {
		for _, a := range n.Args {
			into = nums.fractions(a, into)
		}
		return into
	}
	var above, below, rest []*expr.Node
	expr.Factors(n, &above, &below)
	whole := func(n *expr.Node) bool {
		isWhole := n.Op == expr.Number && n.Unit == "" && !Structural(n) && n.Num.Value == math.Trunc(n.Num.Value) && n.Num.Half >= 0.5
		if !isWhole {
			rest = append(rest, n) // a bracket, say
		}
		return isWhole && !nums.isRounded(n.Num)
	}
	above, below = slices.DeleteFunc(above, not(whole)), slices.DeleteFunc(below, not(whole))
	if len(above) > 0 && len(below) > 0 {
		into = append(append(into, above...), below...)
	}
	for _, n := range rest {
		for _, a := range n.Args {
			into = nums.fractions(a, into)
		}
	}
	return into
}

func not(is func(*expr.Node) bool) func(*expr.Node) bool {
	return func(n *expr.Node) bool { return !is(n) }
}

// isRounded reports whether a size of the problem rounds to the number.
func (nums *Numbers) isRounded(num quantity.Number) bool {
	return slices.ContainsFunc(nums.solved.Values, func(x float64) bool {
		return math.Abs(math.Abs(x)-num.Value) <= num.Half*(1+Same)
	})
}
