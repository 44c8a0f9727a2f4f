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
	sayNothing       = "No force has a component along %s."
)

// sizeNouns begin the line that says what the size of a force follows from.
var sizeNouns = map[statics.Kind]string{
	statics.Tension: "The tension", statics.Weight: "The weight", statics.Friction: "The friction",
	statics.Spring: "The force of the spring",
}
