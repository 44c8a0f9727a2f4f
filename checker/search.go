package checker

import (
	"slices"

	"example.org/standstill/checker/trial"
)

// finding is what explains a wrong line. about is empty where the evidence does
// not say which force it is.
type finding struct {
	code  Code
	about string
	all   []string // the forces that are concerned, for the words
}

// search finds the change of a sum, or the two changes, after which the equation
// would be right. The simplest wins; one that is about fewer forces; then the
// table's order.
func (r *Reference) search(e *trial.Equation, at trial.Place, tied string) (finding, bool) {
	if found := r.matching(e, r.singles(at), tied); len(found) > 0 {
		return r.simplest(r.alikeInTerms(e, found, tied)), true
	}
	// A number that stands for nothing known can be met by chance once there are
	// two changes to choose.
	if e.Stray {
		return finding{}, false
	}
	for i := range r.singles(at) {
		first := r.singles(at)[i]
		if first.apart || first.code == WrongAxis || first.code == SharedWeight || first.code == Radians || first.code == OtherG {
			continue
		}
		if found := r.matchingPairs(e, at, first, tied); len(found) > 0 {
			return r.simplest(found), true
		}
	}
	return finding{}, false
}

// matchingPairs tries a second change, up to the first one's place in the table.
func (r *Reference) matchingPairs(e *trial.Equation, at trial.Place, first variant, tied string) []variant {
	var found []variant
	scratch := slices.Clone(first.row)
	for rank := range first.rank + 1 {
		r.eachTerm(at, first.row, scratch, rank, func(second variant) {
			if carries(e.Form, second.code, 1) && r.Matches(e, second.row, tied, trial.MistakeShare) {
				second.row = slices.Clone(second.row)
				found = append(found, both(first, second))
			}
		})
	}
	return found
}

func (r *Reference) matching(e *trial.Equation, variants []variant, tied string) []variant {
	var found []variant
	for _, v := range variants {
		if len(found) > 0 && len(found[0].about) < len(v.about) {
			continue
		}
		if carries(e.Form, v.code, len(v.about)) && r.Matches(e, v.row, tied, trial.MistakeShare) {
			found = append(found, v)
		}
	}
	return found
}

// alikeInTerms keeps those whose terms stand in the line as they are, if there
// are any: T1 cos γ = T2 cos γ shows which angle was taken for the other, though
// the same equation comes out of another mistake too.
func (r *Reference) alikeInTerms(e *trial.Equation, found []variant, tied string) []variant {
	var alike []variant
	for _, v := range found {
		if r.SameTerms(e, v.row, tied, e.Fit()) {
			alike = append(alike, v)
		}
	}
	if len(alike) == 0 {
		return found
	}
	return alike
}

// both names what two changes say together: the same code of several forces, or
// the one that stands first in the table. A force that is not there, or one too many,
// says more than a sign beside it, which may have been turned to make up for it.
func both(first, second variant) variant {
	if (first.code == MissingForce || first.code == ExtraForce) && second.code == Sign {
		first.row = second.row
		return first
	}
	v := variant{code: second.code, rank: second.rank, about: slices.Clone(first.about), row: second.row}
	for _, name := range second.about {
		if !slices.Contains(v.about, name) {
			v.about = append(v.about, name)
		}
	}
	return v
}

// simplest picks the finding. Where several with the same code remain, the force
// is left open unless they agree on it.
func (r *Reference) simplest(found []variant) finding {
	best := found[0]
	for _, v := range found[1:] {
		if len(v.about) < len(best.about) || len(v.about) == len(best.about) && v.rank < best.rank {
			best = v
		}
	}
	f := finding{code: best.code, all: slices.Clone(best.about)}
	for _, v := range found {
		if v.code == best.code && len(v.about) == len(best.about) {
			for _, name := range v.about {
				if !slices.Contains(f.all, name) {
					f.all = append(f.all, name)
				}
			}
		}
	}
	if len(f.all) == 1 {
		f.about = f.all[0]
	}
	return f
}
