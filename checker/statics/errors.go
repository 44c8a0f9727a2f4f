package statics

import "errors"

// What a system can be that has no single solution. The texts are for the author
// of the problem; a caller adds the place.
var (
	ErrNoSolution   = errors.New("no values satisfy all the equations")
	ErrOpen         = errors.New("there are more unknowns than equations, so the equations do not determine everything that is asked for")
	ErrSeveral      = errors.New("more than one set of values satisfies all the equations")
	ErrNoUnknown    = errors.New("nothing is unknown, but the forces do not balance")
	ErrIllPosed     = errors.New("the equations barely determine the unknowns: a tiny change in a given value would change the answer completely")
	errNotConverged = errors.New("not converged")
)
