package statics

import "errors"

// What a system can be that has no single solution. The texts are for the author
// of the problem; a caller adds the place.
var (
	ErrNoSolution   = errors.New("no values satisfy all equations")
	ErrOpen         = errors.New("there are more unknowns than equations: they do not determine everything that is asked")
	ErrSeveral      = errors.New("more than one set of values satisfies all equations")
	ErrNoUnknown    = errors.New("nothing is unknown, and the forces do not balance")
	ErrIllPosed     = errors.New("the equations hardly determine the unknowns: a tiny change of a given would change the answer completely")
	errNotConverged = errors.New("not converged")
)
