package checker_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
)

// What is said must be true of the line. The lines are made from the problem's own forces,
// without the table of mistakes: every single mistake on every force. The code must be that
// mistake's, or that of another one which gives the same line, and a force that is named must be
// one of those concerned.

// slip is one wrong sum with what was done to it.
type slip struct {
	code  checker.Code
	about []string
	terms []*expr.Node
}

// parts returns the signed component of every force of the body along the axis, zeros left out.
func parts(b *statics.Body, axis statics.Axis) (names []string, terms []*expr.Node) {
	for i := range b.Forces {
		f := &b.Forces[i]
		if f.Factor(axis).Sign != 0 {
			names = append(names, f.Name)
			terms = append(terms, f.Component(axis))
		}
	}
	return names, terms
}

func turnedRound(n *expr.Node) *expr.Node {
	if n.Op == expr.Neg {
		return n.Args[0]
	}
	return expr.Minus(n)
}

func unsigned(n *expr.Node) *expr.Node {
	if n.Op == expr.Neg {
		return n.Args[0]
	}
	return n
}

// slipsOf makes every single mistake on every force of a sum.
func slipsOf(r *checker.Reference, b *statics.Body, axis statics.Axis) []slip {
	names, right := parts(b, axis)
	var all []slip
	with := func(i int, n *expr.Node) []*expr.Node {
		terms := slices.Clone(right)
		terms[i] = n
		return terms
	}
	var letters []string
	for _, v := range r.Variables() {
		if v.Angle {
			letters = append(letters, v.Name)
		}
	}
	var turned []string
	plus := slices.Clone(right)
	for i, name := range names {
		f, _ := b.Force(name)
		about := []string{name}
		all = append(all, slip{checker.Sign, about, with(i, turnedRound(right[i]))})
		if right[i].Op == expr.Neg {
			turned = append(turned, name)
			plus[i] = unsigned(right[i])
		}
		if len(right) > 1 {
			all = append(all, slip{checker.MissingForce, about, slices.Delete(slices.Clone(right), i, i+1)})
		}
		factor := f.Factor(axis)
		sign := func(n *expr.Node) *expr.Node {
			if right[i].Op == expr.Neg {
				return expr.Minus(n)
			}
			return n
		}
		if factor.Function == "" {
			for _, letter := range letters {
				for _, function := range []string{"sin", "cos"} {
					resolved := expr.Join(expr.Mul, expr.Letter(name), expr.Apply(function, expr.Letter(letter)))
					all = append(all, slip{checker.OverResolved, about, with(i, sign(resolved))})
				}
			}
			continue
		}
		if f.Direction != nil {
			continue // its sign is in its angle
		}
		other := map[string]string{"sin": "cos", "cos": "sin"}[factor.Function]
		all = append(all, slip{checker.SineCosine, about, with(i, sign(expr.Join(expr.Mul, expr.Letter(name), expr.Apply(other, factor.Angle))))})
		all = append(all, slip{checker.NotResolved, about, with(i, sign(expr.Letter(name)))})
		all = append(all, slip{checker.Tangent, about, with(i, sign(expr.Join(expr.Mul, expr.Letter(name), expr.Apply("tan", factor.Angle))))})
		for _, letter := range letters {
			if factor.Angle.Op != expr.Name || factor.Angle.Name != letter {
				all = append(all, slip{checker.OtherAngle, about, with(i, sign(expr.Join(expr.Mul, expr.Letter(name), expr.Apply(factor.Function, expr.Letter(letter)))))})
			}
		}
	}
	if len(turned) > 0 {
		all = append(all, slip{checker.Sign, turned, plus})
	}
	if normal, weight := solved.OnlyOf(b, statics.Normal), solved.OnlyOf(b, statics.Weight); normal != nil && weight != nil && slices.Contains(names, normal.Name) && slices.Contains(names, weight.Name) {
		two := []*expr.Node{expr.Letter(normal.Name), expr.Minus(expr.Letter(weight.Name))}
		all = append(all, slip{checker.NormalEqualsWeight, []string{normal.Name}, two})
	}
	return all
}

func added(terms []*expr.Node) *expr.Node {
	sum := terms[0]
	for _, t := range terms[1:] {
		if t.Op == expr.Neg {
			sum = expr.Join(expr.Sub, sum, t.Args[0])
		} else {
			sum = expr.Join(expr.Add, sum, t)
		}
	}
	return sum
}

// workedOut works a sum out at several sets of values, so that equal lines are seen to be equal.
// A sum with every sign turned is another line: the axis is announced.
func workedOut(r *checker.Reference, n *expr.Node) string {
	text := ""
	for k := range 4 {
		letters := map[string]float64{}
		for i, v := range r.Variables() {
			x := math.Mod(float64((i+3)*(k+7))*0.6180339887, 1)
			if v.Dim == quantity.Angle {
				letters[v.Name] = 0.2 + x
			} else {
				letters[v.Name] = 1 + 5*x
			}
		}
		x, err := n.Value(letters)
		if err != nil {
			return ""
		}
		text += fmt.Sprintf("%.9g ", x)
	}
	return text
}

func TestWhatIsSaidIsTrue(t *testing.T) {
	lines, off := 0, 0
	for _, h := range problems.Embedded().List() {
		id := h.ID
		r := reference(t, id)
		for b := range r.Bodies {
			for _, axis := range []statics.Axis{statics.X, statics.Y} {
				stage := map[statics.Axis]checker.Stage{statics.X: checker.XSum, statics.Y: checker.YSum}[axis]
				same := map[string][]slip{}
				all := slipsOf(r, &r.Bodies[b], axis)
				for _, s := range all {
					key := workedOut(r, added(s.terms))
					same[key] = append(same[key], s)
				}
				for _, s := range all {
					line := r.Print(added(s.terms)) + " = 0"
					got := r.Mark(checker.Answer{Stage: stage, Item: r.Bodies[b].Name, Text: line}, nil)
					lines++
					if got.Verdict != checker.Wrong {
						continue // an angle of 45°, or equal angles
					}
					if !explains(got, same[workedOut(r, added(s.terms))]) {
						off++
						if off <= 40 {
							t.Errorf("%s %s %q: %s %q, made as %s %v: %s", id, stage, line, got.Code, got.About, s.code, s.about, got.Message)
						}
					}
				}
			}
		}
	}
	if lines < 2000 {
		t.Errorf("only %d lines were made", lines)
	}
	t.Logf("%d lines, %d told falsely", lines, off)
}

// A given mass, typed for a force in newtons, is called a mass.
func TestMassHandedBackIsCalledOne(t *testing.T) {
	tried := 0
	for _, h := range problems.Embedded().List() {
		r := reference(t, h.ID)
		for _, name := range r.Find {
			if r.Unit(name).Symbol != "N" {
				continue
			}
			for _, g := range r.Givens {
				if g.Unit.Symbol != "kg" || g.Any {
					continue
				}
				text := name + " = " + g.Number.Text + " N"
				got := r.Mark(checker.Answer{Stage: checker.Solve, Text: text}, nil)
				tried++
				if got.Code != checker.MassForWeight && got.Verdict == checker.Wrong {
					t.Errorf("%s %q: %s: %s", h.ID, text, got.Code, got.Message)
				}
			}
		}
	}
	if tried < 50 {
		t.Errorf("only %d were tried", tried)
	}
}

// explains reports whether what was said is one of the mistakes that give the line.
func explains(got checker.Report, ways []slip) bool {
	for _, way := range ways {
		named := got.About == "" || slices.Contains(way.about, got.About)
		if got.Code == way.code && named {
			return true
		}
	}
	return false
}
