package record

import "errors"

// Forget deletes a student with all entries that carry the id, and the cache,
// which may hold what was computed from them. The bytes are overwritten in the
// file; what the disk itself keeps of them is out of reach. The running
// numbers are not given again. Forget gives the number of entries deleted.
func (r *Record) Forget(student string) (deleted int, err error) {
	err = r.write(func(tx *tx) error {
		result, err := tx.exec("DELETE FROM entry WHERE {=} student = ?", student)
		if err != nil {
			return err
		}
		n, err := result.RowsAffected()
		deleted = int(n)
		return errors.Join(err,
			execute(tx, "DELETE FROM student WHERE {=} id = ?", student),
			execute(tx, "DELETE FROM lease WHERE {=} student = ?", student),
			execute(tx, "DELETE FROM draft WHERE {=} student = ?", student),
			execute(tx, "DELETE FROM setting WHERE {=} key = ? AND value = ?", lastStudent, student),
			execute(tx, "DELETE FROM cache WHERE {=} 1 = 1"))
	})
	if err != nil {
		return 0, err
	}
	return deleted, nil
}
