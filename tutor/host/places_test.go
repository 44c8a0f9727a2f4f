// Inside the package: it hands places over without connections.

package host

import (
	"testing"
	"time"

	"example.org/standstill/tutor/record"
)

// A visit that gets its place while the record is asked is not taken for one that lost it; a
// visit whose lease has another token by then is. From inside, because the moment between
// question and answer cannot be met from outside.
func TestLeaseThatComesMeanwhileStands(t *testing.T) {
	comes := newVisit(record.Student{ID: "s01"}, func() error { return nil }, time.Now())
	loses := newVisit(record.Student{ID: "s02"}, func() error { return nil }, time.Now())
	loses.hold(record.Lease{Student: "s02", Token: "old"})
	lookForTaken([]*visit{comes, loses}, func() (map[string]record.Lease, error) {
		comes.hold(record.Lease{Student: "s01", Token: "new"})
		return map[string]record.Lease{"s02": {Student: "s02", Token: "another"}}, nil
	})
	if comes.ctx.Err() != nil {
		t.Error("a visit was ended by what the record said before it came")
	}
	if loses.ctx.Err() == nil {
		t.Error("a visit that was taken over elsewhere goes on")
	}
	close(comes.done)
	close(loses.done)
}
