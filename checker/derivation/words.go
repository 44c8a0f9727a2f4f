package derivation

import "example.org/standstill/checker/statics"

// What is said between the equations.
const (
	sayForces        = "Forces"
	sayForcesOn      = "Forces on %s"
	sayParts         = "Components"
	saySum           = "Sum along %s"
	saySolve         = "Solve"
	sayAngle         = "The angle follows from the lengths"
	saySize          = "The size of the force"
	sayFrom          = "From the sum along "
	sayPut           = "Insert into the sum along "
	sayFollows       = "So"
	sayThen          = "Then"
	sayDivide        = "Divide one equation by the other"
	sayAngleOf       = "The angle"
	sayNumbers       = "With numbers, the sum along "
	sayNumerical     = "Solved numerically"
	sayCheck         = "Check with the sum along "
	sayAnswer        = "Answer"
	sayTheseAxes     = "With these axes "
	sayLevelAxes     = "With a horizontal and a vertical axis "
	saySlopeAxes     = "With one axis along the slope "
	sayNoneSplit     = "every force is along an axis."
	sayOneSplit      = "only %s has two components."
	saySomeSplit     = "only %s have two components."
	sayBeginOne      = "Begin with the sum along %s, because %s is the only unknown there."
	sayBeginTogether = "Take these equations together, because no single one is enough for %s."
	sayCheckSize     = "Check of size"
	sayLarger        = "%s %s larger than %s, as %s must be, because %s also %s along %s."
	sayAsLarge       = "%s %s as large as %s, as %s must be, because no other force acts along %s."
	sayTogether      = " together"
	sayDropsOut      = "Check: %s has dropped out, so the answer is the same for every %s."
	sayOtherAngle    = "The %s is the same at %s. This angle is not meant, because %s is between 0° and 90°."
	sayOpposite      = "The tangent is the same at %s. This direction is not meant, because it makes the force negative."
	saySecond        = "The equations have a second solution, %s. It is not meant, because %s."
	sayOutside       = "%s is between 0° and 90°"
	sayNegative      = "%s cannot be negative"
	sayAndAlso       = " and "
	sayNothing       = "No force has a component along %s."
)

// sizeNouns begin the line that says what the size of a force follows from.
var sizeNouns = map[statics.Kind]string{
	statics.Tension: "The tension", statics.Weight: "The weight", statics.Friction: "The friction",
	statics.Spring: "The force of the spring",
}

// functionNames are the functions in words.
var functionNames = map[string]string{"sin": "sine", "cos": "cosine", "tan": "tangent"}
