// Package draw knows by which rules a student's numbers are drawn and thrown back.
// The rules are frozen: once a student has numbers, the same seed gives the same
// ones in every later version of the program. So nothing here looks at the table of
// mistakes that lines are judged by; the mistakes that a number must tell apart are
// copied here (changes.go, answers.go), with the solver that works them out.
//
// A rule that has to change gets a new version beside the old one, and Rules counts
// them. Start with Paths:
//
//	numbers.go, dice.go   from what the numbers depend on to a fixed row of random numbers
//	paths.go              the numbers that mistakes lead to: changes.go in the equations, answers.go in the answer
//	term.go, solve.go     the equations and their solver
package draw

// Rules names the rules of this package.
const Rules = 2

// Code names a mistake, by the same word as the judgement does.
type Code string

// The mistakes that a drawn number must tell apart from the right one.
const (
	Sign               Code = "sign"
	SineCosine         Code = "sine-cosine"
	Tangent            Code = "tangent"
	NotResolved        Code = "not-resolved"
	MissingForce       Code = "missing-force"
	MassForWeight      Code = "mass-for-weight"
	EqualTensions      Code = "equal-tensions"
	SharedWeight       Code = "shared-weight"
	Factor             Code = "factor"
	OtherAngle         Code = "other-angle"
	NormalEqualsWeight Code = "normal-equals-weight"
)
