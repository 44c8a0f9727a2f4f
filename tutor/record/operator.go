package record

import (
	"fmt"
	"os/user"
	"strings"
)

// Operator says who works with the record, for entries about what a teacher does: the
// user of the database, or the account of this machine where the record is a file. It is
// "" where the machine does not tell.
func (r *Record) Operator() (name string, err error) {
	if r.isDatabase() {
		err = r.queryRow("SELECT session_user", nil, &name)
		return name, r.fault(err)
	}
	account, err := user.Current()
	if err != nil {
		return "", nil // an account without a name is no reason to refuse what is to be done
	}
	_, name, found := strings.Cut(account.Username, `\`) // Windows puts the machine first
	if !found {
		name = account.Username
	}
	return name, nil
}

// OfOneStudent says which entries were deleted, where it was one student's.
const OfOneStudent = "of one student"

// NoteDeleted writes down who deleted entries, how many, and which ([OfOneStudent]). It
// names no student: of somebody who was forgotten nothing stays.
func (r *Record) NoteDeleted(which string, entries int) error {
	operator, err := r.Operator()
	if err != nil {
		return err
	}
	_, err = r.Append(Entry{Kind: Deleted, Text: fmt.Sprintf("%d entries %s", entries, which), Detail: operator})
	return err
}
