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

// Two numbers are the same for the machine within Same of them: a typed number and a given, the
// end of what a rounding may do. A sum is zero within zeroShare of its largest term.
const (
	Same      = 1e-9
	Felt      = 1e-6 // a change that is seen in what follows, as a share of it
	zeroShare = 1e-9
)

// The steps by which unknowns are found, as shares of what is changed or of the sum that is to
// be zero.
const (
	farther     = 1.25  // the second point of a secant, beside the first
	nudge       = 1e-3  // the same, where the first is zero
	converged   = 1e-12 // where no step is worth taking
	nearlyThere = 1e-10 // where Newton's steps may end
	slopeStep   = 1e-6  // a step to either side that shows a slope
	leastSize   = 1e-3  // what is taken for the size of an unknown that is nearly zero
)
