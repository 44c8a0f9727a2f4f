package expr

import (
	"errors"
	"fmt"
	"math"

	"github.com/Knetic/govaluate"
)

// ErrNoValue says that a tree divides by zero, takes a root that does not exist,
// or grows out of reach.
var ErrNoValue = errors.New("the expression has no value")

// Value evaluates the tree with govaluate. Tokens are handed over, never text,
// and every node stands in brackets: as text govaluate reads −2² as 4 and ^ as
// exclusive-or, and knows neither 1e3 nor T₁.
func (n *Node) Value(letters map[string]float64) (value float64, err error) {
	defer func() {
		// govaluate panics on some tokens; a student's line must not end the program.
		if r := recover(); r != nil {
			value, err = 0, fmt.Errorf("internal error: evaluate: %v", r)
		}
	}()
	compiled, err := govaluate.NewEvaluableExpressionFromTokens(tokensOf(nil, n))
	if err != nil {
		return 0, fmt.Errorf("internal error: tokens: %w", err)
	}
	parameters := make(map[string]any, len(letters))
	for name, x := range letters {
		parameters[name] = x
	}
	result, err := compiled.Evaluate(parameters)
	if err != nil {
		return 0, err
	}
	value, ok := result.(float64)
	// govaluate divides by zero without an error.
	if !ok || math.IsNaN(value) || math.IsInf(value, 0) {
		return 0, ErrNoValue
	}
	return value, nil
}

var (
	openToken  = govaluate.ExpressionToken{Kind: govaluate.CLAUSE, Value: '('}
	closeToken = govaluate.ExpressionToken{Kind: govaluate.CLAUSE_CLOSE, Value: ')'}
	signs      = map[Op]string{Add: "+", Sub: "-", Mul: "*", Div: "/", Pow: "**"}
)

// tokensOf appends the tree as govaluate tokens, every operation in brackets.
func tokensOf(tokens []govaluate.ExpressionToken, n *Node) []govaluate.ExpressionToken {
	switch n.Op {
	case Number:
		return append(tokens, number(n.Num.Value*factor(n.Unit)))
	case Name:
		return append(tokens, govaluate.ExpressionToken{Kind: govaluate.VARIABLE, Value: n.Name})
	case Neg:
		tokens = append(tokens, openToken, govaluate.ExpressionToken{Kind: govaluate.PREFIX, Value: "-"}, openToken)
		tokens = tokensOf(tokens, n.Args[0])
		return append(tokens, closeToken, closeToken)
	case Call, Size:
		tokens = append(tokens, govaluate.ExpressionToken{Kind: govaluate.FUNCTION, Value: function(n)}, openToken)
		tokens = tokensOf(tokens, n.Args[0])
		return append(tokens, closeToken)
	case Measured:
		tokens = append(tokens, openToken)
		tokens = tokensOf(tokens, n.Args[0])
		return append(tokens, modifier(Mul), number(factor(n.Unit)), closeToken)
	}
	tokens = append(tokens, openToken)
	tokens = tokensOf(tokens, n.Args[0])
	tokens = append(tokens, modifier(n.Op))
	tokens = tokensOf(tokens, n.Args[1])
	return append(tokens, closeToken)
}

func number(x float64) govaluate.ExpressionToken {
	return govaluate.ExpressionToken{Kind: govaluate.NUMERIC, Value: x}
}

func modifier(op Op) govaluate.ExpressionToken {
	return govaluate.ExpressionToken{Kind: govaluate.MODIFIER, Value: signs[op]}
}

// function wraps one of our functions for govaluate, which checks neither how
// many arguments there are nor what they are.
func function(n *Node) govaluate.ExpressionFunction {
	f := callables[n.Name]
	if n.Op == Size {
		f = math.Abs
	}
	return func(args ...any) (any, error) {
		if len(args) != 1 {
			return nil, errors.New("a function takes one argument")
		}
		x, ok := args[0].(float64)
		if !ok {
			return nil, errors.New("a function takes a number")
		}
		return f(x), nil
	}
}
