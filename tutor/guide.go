package tutor

import "example.org/standstill/checker"

// Step is one stage of the worked solution.
type Step = checker.Step

// Worked returns the worked solution. It keeps nothing: [Lesson.Solution] is what
// a student asks for.
func (g *Page) Worked() []Step { return g.Ref.Worked() }
