package tutor

import "example.org/standstill/problems"

// OpenCopy goes on with the student's last attempt at this very copy of a problem,
// or begins it. The copy's numbers were measured in a bench run, run being that
// run's entry in the record; the problem may be one that the bank has not. Such an
// attempt is credited like any other, but it is no place to come back to: the bench
// is.
func (d *Desk) OpenCopy(p *problems.Problem, run string) (*Lesson, error) {
	if a := d.attemptAt(p); a != nil {
		// An attempt of an older version of the program may not open; then a new one begins.
		if page, err := d.pageOf(a); err == nil {
			return &Lesson{Page: page, desk: d, attempt: a}, nil
		}
	}
	return d.start(p, d.nextCopy(p.ID), run)
}

// ProgressOf says how the student stands with this very copy of a problem.
func (d *Desk) ProgressOf(p *problems.Problem) Progress {
	a := d.attemptAt(p)
	if a == nil {
		return Progress{}
	}
	page, err := d.pageOf(a)
	if err != nil {
		return Progress{}
	}
	return page.Progress()
}

// attemptAt finds the last attempt at a copy that was measured; nil for none.
func (d *Desk) attemptAt(p *problems.Problem) *Attempt {
	attempts := d.history.Of(p.ID)
	for i := len(attempts) - 1; i >= 0; i-- {
		if a := attempts[i]; a.Measured() && a.Hash == p.Hash && a.Givens == p.Copy {
			return a
		}
	}
	return nil
}
