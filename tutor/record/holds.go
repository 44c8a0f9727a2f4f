package record

import (
	"errors"
	"os"
)

// Holds looks whether what was appended through this handle is still in the file that
// the path leads to, so that nobody is promised what is not so. The error is
// [ErrMoved] where the file was moved, deleted or written over meanwhile.
func (r *Record) Holds() error {
	if r.info != nil {
		now, err := os.Stat(r.path)
		// Somebody may have put another file under the name while this one is open.
		if err != nil || !os.SameFile(now, r.info) {
			return &Error{Kind: ErrMoved, Path: r.path}
		}
	}
	last := r.last.Load()
	if last == nil {
		return nil
	}
	var there int
	err := r.queryRow("SELECT count(*) FROM entry WHERE {=} record = ? AND number = ? AND id = ?",
		[]any{idBytes(last.Record), last.Number, idBytes(last.ID)}, &there)
	switch {
	case errors.Is(err, ErrStopped) || passes(err):
		return r.fault(err)
	case err != nil || there == 0:
		return &Error{Kind: ErrMoved, Path: r.path, Cause: err}
	}
	return nil
}
