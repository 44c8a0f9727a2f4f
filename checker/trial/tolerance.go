package trial

// Tolerances, as shares of the largest term of the line. Letters and exact
// numbers must agree to rounding of the machine; a line with rounded numbers may
// be off by what the rounding can do, and by one part in a hundred in any case.
// A mistake must fit better than that to be named.
const (
	ExactShare   = 1e-7
	RoundedShare = 0.01
	MistakeShare = 0.003
	SlipShare    = 0.05
	mostRounding = 0.05  // of the largest force
	Hair         = 1e-11 // of what a sum that is zero is worth to the machine
	Tries        = 3
	mostTries    = 12
)
