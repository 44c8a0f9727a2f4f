package checker

import (
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
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
	Stage Stage
	Title string
	Lines []string
}

// What is said between the equations.
const (
	sayForces    = "Forces"
	sayForcesOn  = "Forces on %s"
	sayParts     = "Components"
	saySum       = "Sum along %s"
	saySolve     = "Solve"
	sayAngle     = "The angle follows from the lengths"
	saySize      = "The size of the force"
	sayFrom      = "From the sum along "
	sayPut       = "Insert into the sum along "
	sayFollows   = "So"
	sayThen      = "Then"
	sayDivide    = "Divide one equation by the other"
	sayAngleOf   = "The angle"
	sayNumbers   = "With numbers, the sum along "
	sayNumerical = "Solved numerically"
	sayCheck     = "Check with the sum along "
	sayAnswer    = "Answer"
	sayNothing   = "No force has a component along %s."
)

// Worked returns the worked solution, stage by stage.
func (r *Reference) Worked() []Step {
	steps := []Step{}
	for i := range r.solved.Bodies {
		s := r.setting(Diagram, r.solved.Bodies[i].Name)
		step := Step{Stage: Diagram, Title: sayForces}
		if len(r.solved.Bodies) > 1 {
			step.Title = strings.Replace(sayForcesOn, "%s", s.bodyName(), 1)
		}
		for k := range s.body.Forces {
			step.Lines = append(step.Lines, s.describe(&s.body.Forces[k]))
		}
		steps = append(steps, step)
	}
	steps = append(steps, Step{Components, sayParts, r.workedParts()})
	for _, axis := range []statics.Axis{statics.X, statics.Y} {
		stage := [...]Stage{XSum, YSum}[axis]
		title := strings.Replace(saySum, "%s", axis.String(), 1)
		steps = append(steps, Step{stage, title, r.workedSums(axis)})
	}
	return append(steps, Step{Solve, saySolve, r.workedUnknowns()})
}

func (r *Reference) workedParts() []string {
	var lines []string
	for _, tree := range r.lengthAngles() {
		lines = append(lines, sayAngle+": "+r.angleChain(tree))
	}
	for b := range r.solved.Bodies {
		for i := range r.solved.Bodies[b].Forces {
			f := &r.solved.Bodies[b].Forces[i]
			parts := make([]string, 2)
			for _, axis := range []statics.Axis{statics.X, statics.Y} {
				parts[axis] = r.componentEquation(f, axis)
			}
			head := ""
			if len(r.solved.Bodies) > 1 {
				head = r.solved.Bodies[b].Name + ": "
			}
			lines = append(lines, head+strings.Join(parts, "; "))
		}
	}
	return lines
}

// componentEquation writes "T₁x = −T₁ cos α".
func (r *Reference) componentEquation(f *statics.Force, axis statics.Axis) string {
	return expr.Set(f.Name) + axis.String() + " = " + r.write(r.tidy(f.Component(axis)))
}

func (r *Reference) workedSums(axis statics.Axis) []string {
	var lines []string
	for b := range r.solved.Bodies {
		head := ""
		if len(r.solved.Bodies) > 1 {
			head = r.solved.Bodies[b].Name + ": "
		}
		tree := r.solved.Bodies[b].Sum(axis)
		if tree == nil {
			lines = append(lines, head+strings.Replace(sayNothing, "%s", axis.String(), 1))
			continue
		}
		lines = append(lines, head+r.write(r.tidy(tree))+" = 0")
	}
	return lines
}

// describe says in words where a force comes from and where it points.
func (s *setting) describe(f *statics.Force) string {
	s.force = f
	where := strings.Join(slices.DeleteFunc([]string{s.points(), s.slant()}, func(w string) bool { return w == "" }), ", ")
	return s.nameOf(f) + ", " + s.nounOf(f) + ", points " + where + "."
}

// nounOf says what a force is, by what exerts it where the problem says that.
func (s *setting) nounOf(f *statics.Force) string {
	by := s.solved.Words.ByOn(f.On, f.Name)
	noun, told := byNouns[f.Kind]
	if by == "" || !told {
		return kindNouns[f.Kind]
	}
	// "cord A" and "your pull" take no article.
	last := by[strings.LastIndexByte(by, ' ')+1:]
	if !(len(last) == 1 && last[0] >= 'A' && last[0] <= 'Z') && !strings.HasPrefix(by, "your ") {
		by = "the " + by
	}
	return noun + " of " + by
}

// byNouns name a force before what exerts it.
var byNouns = map[statics.Kind]string{
	statics.Tension: "the pull", statics.Normal: "the normal force", statics.Friction: "the friction", statics.Spring: "the force",
	statics.Push: "the push", statics.Pull: "the pull", statics.Strut: "the force",
}

var kindNouns = map[statics.Kind]string{
	statics.Tension: "a tension", statics.Weight: "the weight", statics.Normal: "the normal force",
	statics.Friction: "the friction", statics.Spring: "the force of a spring", statics.Push: "a push",
	statics.Pull: "a pull", statics.Strut: "the force of a strut",
}

// sizeNouns begin the line that says what the size of a force follows from.
var sizeNouns = map[statics.Kind]string{
	statics.Tension: "The tension", statics.Weight: "The weight", statics.Friction: "The friction",
	statics.Spring: "The force of the spring",
}
