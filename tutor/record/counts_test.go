// Inside the package: it uses the records of record_test.go.

package record

import (
	"fmt"
	"testing"
)

func TestCountsByStudent(t *testing.T) {
	r := mustMemory(t)
	for i := range 7 {
		mustAppend(t, r, Entry{Student: fmt.Sprint("s", i%3), Kind: Answer})
	}
	counts, err := r.Counts()
	if err != nil || len(counts) != 3 || counts["s0"] != 3 || counts["s1"] != 2 || counts["s2"] != 2 {
		t.Fatal(counts, err)
	}
	if _, err := r.Forget("s0"); err != nil {
		t.Fatal(err)
	}
	if counts, err = r.Counts(); err != nil || len(counts) != 2 {
		t.Fatal(counts, err)
	}
}

func TestFindsByTheBeginningOfAnID(t *testing.T) {
	r := mustMemory(t)
	var ids []string
	for range 200 {
		ids = append(ids, mustAppend(t, r, Entry{Student: "s", Kind: Answer}).ID)
	}
	for _, id := range ids {
		for _, prefix := range []string{id, id[:15]} {
			found, err := r.Find(prefix)
			if err != nil || len(found) != 1 || found[0].ID != id {
				t.Fatalf("%s finds %v, %v", prefix, found, err)
			}
		}
	}
	for prefix, n := range map[string]int{"": 2, "xyz": 0, "%": 0, "0123456789abcdef0123456789abcdef0": 0} {
		if found, err := r.Find(prefix); err != nil || len(found) != n {
			t.Errorf("%q finds %d, %v; want %d", prefix, len(found), err, n)
		}
	}
}
