// Package derivation writes the worked solution of a solved system.
//
// Start with Worked:
//
//	unknowns.go   which sums are solved for which unknowns, in which order
//	values.go     the ends of lines: numbers, checks, the answer
//	sensible.go   a check of size, and second solutions
//	algebra.go    sums as polynomials
//	paper.go      trees as they stand on paper, with numbers in the place of letters
//	words.go      what is said between the equations
package derivation

import (
	"fmt"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// The worked solution, as a teacher writes it: the forces in words, the parts and
// the sums in letters, and the unknowns one after the other, each in letters,
// then with numbers, then with its value and unit.
//
// Every equation stands behind the last ": " of its line, several of them with
// "; " between, and is true at the solution.

// Step is one stage of the worked solution.
type Step struct {
	Stage solved.Stage
	Title string
	Lines []string
}

// Worked returns the worked solution, stage by stage. forces are, for each body, its forces in
// words; isFormula says of a letter that only a formula can answer it.
func Worked(s *solved.System, forces [][]string, isFormula func(name string) bool) []Step {
	p := On(s)
	steps := []Step{}
	for i, lines := range forces {
		step := Step{Stage: solved.Diagram, Title: sayForces, Lines: lines}
		if len(s.Bodies) > 1 {
			step.Title = strings.Replace(sayForcesOn, "%s", statics.Called(s.Bodies[i].Name), 1)
		}
		steps = append(steps, step)
	}
	steps = append(steps, Step{solved.Components, sayParts, p.workedParts()})
	for _, axis := range []statics.Axis{statics.X, statics.Y} {
		stage := [...]solved.Stage{solved.XSum, solved.YSum}[axis]
		title := strings.Replace(saySum, "%s", axis.String(), 1)
		steps = append(steps, Step{stage, title, p.workedSums(axis)})
	}
	return append(steps, Step{solved.Solve, saySolve, workedUnknowns(s, isFormula)})
}

// axes says for each body what is good about its axes: how few forces have two components.
func (p Page) axes() (lines []string) {
	for i := range p.solved.Bodies {
		b := &p.solved.Bodies[i]
		if text := p.axesOf(b); text != "" {
			lines = append(lines, p.sentence(b, text))
		}
	}
	return lines
}

// head names the body that a line is about, where there are several.
func (p Page) head(b *statics.Body) string {
	if len(p.solved.Bodies) == 1 {
		return ""
	}
	return b.Name + ": "
}

// sentence begins with the body that it is about, or else with a capital.
func (p Page) sentence(b *statics.Body, text string) string {
	if head := p.head(b); head != "" {
		return head + text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// axesOf is empty where every force of the body has two components.
func (p Page) axesOf(b *statics.Body) string {
	var split []string
	weight := false
	for i := range b.Forces {
		f := &b.Forces[i]
		weight = weight || f.Kind == statics.Weight
		if !p.isNothing(f, statics.X) && !p.isNothing(f, statics.Y) {
			split = append(split, expr.Set(f.Name))
		}
	}
	along := sayTheseAxes
	switch {
	// Only a weight shows which way is down. A drawing from above has no vertical axis.
	case weight && b.Tilt == nil:
		along = sayLevelAxes
	// Axes can be turned without a slope. Only a normal force shows that there is one.
	case slices.ContainsFunc(b.Forces, func(f statics.Force) bool { return b.Tilt != nil && f.Kind == statics.Normal }):
		along = saySlopeAxes
	}
	switch len(split) {
	case 0:
		return along + sayNoneSplit
	case len(b.Forces):
		return ""
	case 1:
		return along + fmt.Sprintf(sayOneSplit, split[0])
	}
	return along + fmt.Sprintf(saySomeSplit, listed(split))
}

func (p Page) isNothing(f *statics.Force, axis statics.Axis) bool {
	return p.Write(p.Tidy(f.Component(axis))) == "0"
}

func (p Page) workedParts() []string {
	lines := p.axes()
	for _, tree := range p.lengthAngles() {
		lines = append(lines, sayAngle+": "+p.angleChain(tree))
	}
	for b := range p.solved.Bodies {
		for i := range p.solved.Bodies[b].Forces {
			f := &p.solved.Bodies[b].Forces[i]
			parts := make([]string, 2)
			for _, axis := range []statics.Axis{statics.X, statics.Y} {
				parts[axis] = p.ComponentEquation(f, axis)
			}
			lines = append(lines, p.head(&p.solved.Bodies[b])+strings.Join(parts, "; "))
		}
	}
	return lines
}

// ComponentEquation writes "T₁x = −T₁ cos α".
func (p Page) ComponentEquation(f *statics.Force, axis statics.Axis) string {
	return expr.Set(f.Name) + axis.String() + " = " + p.Write(p.Tidy(f.Component(axis)))
}

func (p Page) workedSums(axis statics.Axis) []string {
	var lines []string
	for b := range p.solved.Bodies {
		head := p.head(&p.solved.Bodies[b])
		tree := p.solved.Bodies[b].Sum(axis)
		if tree == nil {
			lines = append(lines, p.sentence(&p.solved.Bodies[b], fmt.Sprintf(sayNothing, axis)))
			continue
		}
		lines = append(lines, head+p.Write(p.Tidy(tree))+" = 0")
	}
	return lines
}
