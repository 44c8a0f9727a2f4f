package draw

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

// Numbers returns a hash of what a student's numbers depend on: the givens, the
// axes, the forces with the body that each acts on, equal sizes, what is asked for,
// and the ranges, each as "name low high step places". It does not depend on the
// order in which a file lists them, on names of bodies or on any word of the text.
func Numbers(s *statics.System, ranges []string) string {
	sum := sha256.Sum256([]byte(strings.Join(numberLines(s, ranges), "\n")))
	return hex.EncodeToString(sum[:])
}

// numberLines writes all that, one fact a line, in a form that is part of the rules.
func numberLines(s *statics.System, ranges []string) []string {
	var lines []string
	add := func(format string, parts ...any) { lines = append(lines, fmt.Sprintf(format, parts...)) }
	for _, g := range s.Givens {
		add("given %s %s", g.Name, writeGiven(g))
	}
	for _, f := range s.Formulas {
		add("formula %s %s", f.Name, write(f.Tree))
	}
	for i, b := range s.Bodies {
		if b.XLeft {
			add("axes %d x left", i)
		}
		if b.Tilt != nil {
			add("axes %d %s", i, write(b.Tilt))
		}
		for _, f := range b.Forces {
			add("force %d %s", i, writeForce(f))
		}
	}
	for _, e := range s.Equal {
		names := slices.Sorted(slices.Values(e.Names))
		add("equal %s %s", e.Letter, strings.Join(names, " "))
	}
	for _, name := range s.Find {
		add("find %s", name)
	}
	for _, r := range ranges {
		add("vary %s", r)
	}
	// Sorted, so that moving lines in the file changes nobody's numbers.
	slices.Sort(lines)
	return lines
}

func writeGiven(g statics.Given) string {
	switch {
	case g.Any:
		return "any " + g.Unit.Symbol
	case g.Minus:
		return "-" + g.Number.Text + " " + g.Unit.Symbol
	}
	// The text as it was typed: a printed float could differ from one Go version to the next.
	return g.Number.Text + " " + g.Unit.Symbol
}

func writeForce(f statics.Force) string {
	parts := []string{f.Name, string(f.Kind)}
	if f.Direction != nil {
		parts = append(parts, "direction "+write(f.Direction))
	} else {
		parts = append(parts, fmt.Sprintf("points %d %d", f.Points[statics.X], f.Points[statics.Y]))
	}
	if f.Angle != nil {
		parts = append(parts, fmt.Sprintf("angle %s from %d", write(f.Angle), f.From))
	}
	if f.Size != nil {
		parts = append(parts, "size "+write(f.Size))
	}
	return strings.Join(parts, " ")
}

// words names the operations of a tree.
var words = map[expr.Op]string{
	expr.Neg: "neg", expr.Add: "add", expr.Sub: "sub", expr.Mul: "mul", expr.Div: "div", expr.Pow: "pow",
	expr.Size: "size", expr.Measured: "measured",
}

// write writes a tree with the operation first: (mul 4 (mul k s)).
func write(n *expr.Node) string {
	switch n.Op {
	case expr.Name:
		return n.Name
	case expr.Number:
		return strings.TrimSpace(n.Num.Text + " " + n.Unit)
	}
	word := words[n.Op]
	if n.Op == expr.Call {
		word = n.Name
	}
	parts := []string{word}
	for _, a := range n.Args {
		parts = append(parts, write(a))
	}
	if n.Unit != "" {
		parts = append(parts, n.Unit)
	}
	return "(" + strings.Join(parts, " ") + ")"
}
