package derivation

import "example.org/standstill/checker/statics"

// What is said between the equations.
const (
	sayForces        = "Forces"
	sayForcesOn      = "Forces on %s"
	sayParts         = "Components"
	saySum           = "Sum along %s"
	saySolve         = "Solve"
	sayAngle         = "Find the angle from the lengths"
	sayAngleGiven    = "The angle from the given values"
	saySize          = "The magnitude of the force"
	sayEquation      = "ΣF%s = 0"
	sayFrom          = "From "
	sayPut           = "Substitute into "
	sayFollows       = "So"
	sayThen          = "Then"
	sayDivide        = "Divide one equation by the other"
	sayAngleOf       = "The angle"
	sayNumbers       = " with numbers"
	sayNumerical     = "Solved numerically"
	sayCheck         = "Check with "
	sayAnswer        = "Answer"
	sayTheseAxes     = "with these axes, "
	sayLevelAxes     = "with horizontal and vertical axes, "
	saySlopeAxes     = "with one axis along the slope, "
	sayNoneSplit     = "every force acts along one of the axes."
	sayOneSplit      = "only %s has both an x and a y component."
	saySomeSplit     = "only %s have both x and y components."
	sayBeginOne      = "Begin with %s, because its only unknown is %s."
	sayBeginTogether = "Solve the following equations together, because none of them alone is enough to find %s."
	sayCheckSize     = "Check the magnitudes"
	sayLarger        = "%s %s larger than %s, as %s must be, because %s also %s along the %s axis."
	sayAsLarge       = "%s %s equal to %s, as %s must be, because no other force acts along the %s axis."
	sayTogether      = " together"
	sayDropsOut      = "Check: %s cancels, so the answer is the same for every value of %s."
	sayOtherAngle    = "The %s has the same value at %s. That angle is ruled out, because %s must be between 0° and 90°."
	sayOpposite      = "The tangent has the same value at %s. That direction is ruled out, because the magnitude of the force would be negative."
	saySecond        = "The equations have a second solution, %s. It is ruled out, because %s."
	sayOutside       = "%s must be between 0° and 90°"
	sayNegative      = "%s cannot be negative"
	sayAndAlso       = " and "
	sayNothing       = "no force has a component along the %s axis."
)

// sizeNouns begin the line that says what the size of a force follows from.
var sizeNouns = map[statics.Kind]string{
	statics.Tension: "The tension", statics.Weight: "The weight", statics.Friction: "The friction force",
	statics.Spring: "The force of the spring",
}

// functionNames are the functions in words.
var functionNames = map[string]string{"sin": "sine", "cos": "cosine", "tan": "tangent"}
