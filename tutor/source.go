package tutor

import (
	"fmt"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// ProblemOf finds the problem file that an entry was made on, with the numbers of the
// file: the one in the bank, or the text that the record has of an older one.
func ProblemOf(e record.Entry, bank *problems.Bank, r *record.Record) (*problems.Problem, error) {
	// The file in the bank may have changed since.
	if p, err := bank.Get(e.Problem); err == nil && p.Hash == e.Hash {
		return p, nil
	}
	return SavedProblem(e.Hash, r)
}

// SavedProblem reads the problem file that a record has under a hash.
func SavedProblem(hash string, r *record.Record) (*problems.Problem, error) {
	saved, err := r.Problem(hash)
	if err != nil {
		return nil, err
	}
	p, found := problems.ReadSaved(saved.ID, []byte(saved.Text))
	if err := found.Err(); err != nil {
		return nil, err
	}
	// A record may come from anywhere, so its text is not believed.
	if p.Hash != hash {
		return nil, fmt.Errorf("the text of the problem %s in the record is not the text that was used", saved.ID)
	}
	return p, nil
}

// copyOf finds the problem of an entry with the numbers that it was asked with.
func (t *Tutor) copyOf(e record.Entry) (*problems.Problem, error) {
	p, err := ProblemOf(e, t.Bank, t.Record)
	if err != nil {
		return nil, err
	}
	return p.WithGivens(e.Givens)
}
