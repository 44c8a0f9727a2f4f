package tutor

import (
	"strings"

	"example.org/standstill/checker"
)

// Step is one stage of the worked solution.
type Step = checker.Step

// Worked returns the worked solution. It keeps nothing: [Lesson.Solution] is what
// a student asks for.
func (g *Page) Worked() []Step { return g.Ref.Worked() }

// hint words a hint about what was typed last.
func hint(ref *checker.Reference, a checker.Answer, r checker.Report, level int) string {
	general := map[checker.Stage][lastLevel]string{
		checker.Diagram:    {"What touches the body, and what pulls at it without touching?", "Every rope, every surface and the earth make one force each.", "Name each force of the problem with its side."},
		checker.Components: {"Which side of the triangle lies along the axis?", "The side next to the angle goes with the cosine, the side across from it with the sine.", "Draw the triangle of the force and read the two sides off."},
		checker.XSum:       {"Which forces have a part along x?", "What points one way along x is as large as what points the other way.", "Write the parts along x, those against the axis with a minus, equal to zero."},
		checker.YSum:       {"Which forces have a part along y?", "What points one way along y is as large as what points the other way.", "Write the parts along y, those against the axis with a minus, equal to zero."},
		checker.Solve:      {"How many unknowns stand in each sum?", "Take one unknown out of one sum and put it into the other.", "Put the numbers into both sums."},
	}
	return strings.TrimSpace(general[a.Stage][level-1])
}
