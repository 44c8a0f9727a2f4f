package record

import "errors"

// Copied is what became of a copy.
type Copied struct {
	Merged
	Students int
	Problems int
}

// Copy adds everything that one record holds to another: entries with their ids and
// numbers, problem files, students, settings that the other has not, half-typed lines and
// doors that the other has not. It may be done again at any time, while others write to
// either, and adds only what is new.
func Copy(from, to *Record) (sum Copied, err error) {
	// Problem files first, so that a copy that is broken off has no entry without the file that it is about.
	for p, err := range from.Problems() {
		if err == nil {
			err = to.SaveProblem(p.Hash, p.ID, p.Text)
		}
		if err != nil {
			return sum, err
		}
		sum.Problems++
	}
	if sum.Students, err = copyStudents(from, to); err != nil {
		return sum, err
	}
	if sum.Merged, err = to.Merge(from.Entries(Filter{})); err != nil {
		return sum, err
	}
	return sum, copySettings(from, to)
}

func copyStudents(from, to *Record) (int, error) {
	students, err := from.Students()
	if err != nil {
		return 0, err
	}
	doors := map[string]Door{}
	for _, s := range students {
		drafts, err1 := from.Drafts(s.ID)
		there, err2 := to.Drafts(s.ID)
		own, err3 := from.Door(s.ID)
		other, err4 := to.Door(s.ID)
		if err := errors.Join(err1, err2, err3, err4, to.AddStudent(s.ID, s.Name)); err != nil {
			return 0, err
		}
		// Half-typed lines that are there already may be the newer ones.
		if len(there) == 0 {
			for _, d := range drafts {
				if err := to.SaveDraft(d); err != nil {
					return 0, err
				}
			}
		}
		if other.Hash == "" && other.Keys == nil && (own.Hash != "" || own.Keys != nil) {
			doors[s.ID] = own
		}
	}
	if len(doors) == 0 {
		return len(students), nil
	}
	return len(students), to.SetDoors(doors)
}

func copySettings(from, to *Record) error {
	settings := map[string]string{}
	err := from.query("SELECT key, value FROM setting WHERE {=} 1 = 1", nil, func(scan scan) error {
		var key, value string
		err := scan(&key, &value)
		settings[key] = value
		return err
	})
	if err != nil {
		return from.fault(err)
	}
	for key, value := range settings {
		there, err := to.Setting(key)
		if err == nil && there == "" {
			err = to.SetSetting(key, value)
		}
		if err != nil {
			return err
		}
	}
	return nil
}
