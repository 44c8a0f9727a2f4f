package mistake

import "slices"

// table holds every row. It is put together once and never changed.
var table = slices.Concat(resolving, forces, sizes, numbers, form)

// Table returns the rows of all mistakes.
func Table() []Row { return slices.Clone(table) }

// Meaning says in a teacher's words what a code stands for: "sine and cosine exchanged".
// It is the code itself for one that is not known.
func (c Code) Meaning() string {
	for _, row := range table {
		if row.Code == c && row.Meaning != "" {
			return row.Meaning
		}
	}
	return string(c)
}
