package class

import (
	"maps"
	"slices"
	"strings"

	"example.org/standstill/tutor/class/summary"
)

// remarks gathers remarks, one for all entries of which the same is to be said.
type remarks struct {
	list []summary.Remark
}

func (r *remarks) add(one summary.Remark) {
	for i := range r.list {
		same := &r.list[i]
		if same.Notice == one.Notice && same.Student == one.Student && same.Problem == one.Problem && same.Whose == one.Whose {
			same.Count += one.Count
			return
		}
	}
	r.list = append(r.list, one)
}

// lines takes a remembered list apart; joined puts it together.
func lines(text string) []string {
	return slices.DeleteFunc(strings.Split(text, "\n"), func(s string) bool { return s == "" })
}

func joined(set map[string]bool) string {
	return strings.Join(slices.Sorted(maps.Keys(set)), "\n")
}
