package mistake

import (
	"slices"
	"sync"
)

// table holds every row. It is put together once and never changed.
var table = slices.Concat(resolving, forces, sizes, numbers, form)

// Table returns the rows of all mistakes. They are everybody's: nobody changes one.
func Table() []Row { return slices.Clip(table) }

// mains holds the row that says what a code means, for each.
var mains = sync.OnceValue(func() map[Code]*Row {
	all := map[Code]*Row{}
	for i := range table {
		if row := &table[i]; row.Meaning != "" && all[row.Code] == nil {
			all[row.Code] = row
		}
	}
	return all
})

// main returns the row that says what a code means; an empty one for a code that is not known.
func (c Code) main() *Row {
	if row := mains()[c]; row != nil {
		return row
	}
	return &Row{}
}

// Meaning says in a teacher's words what a code stands for: "sine and cosine swapped".
// It is the code itself for one that is not known.
func (c Code) Meaning() string {
	if meaning := c.main().Meaning; meaning != "" {
		return meaning
	}
	return string(c)
}

// IsOpen reports whether the code names no mistake: the line is wrong, and nothing explains it.
func (c Code) IsOpen() bool { return c.main().Open }

// IsPassing reports whether the code is no sign of a habit: two such lines are not the same
// mistake twice.
func (c Code) IsPassing() bool { return c.main().Passing }

// IsOfKind reports whether such a mistake with a force of one kind is another one than with a force
// of another kind.
func (c Code) IsOfKind() bool { return c.main().OfKind }

// IsOtherInList reports whether such a mistake in a force diagram is another one than in an equation.
func (c Code) IsOtherInList() bool { return c.main().OtherList }

// IsUnitOnly reports whether the number of such a line is right, and only its unit is not.
func (c Code) IsUnitOnly() bool { return c.main().UnitOnly }

// IsElsewhere reports whether such a line is true and is kept, though something else was asked.
func (c Code) IsElsewhere() bool { return c.main().Elsewhere }

// IsAbsent reports whether the force of such a mistake is one that the line does not speak of.
func (c Code) IsAbsent() bool { return c.main().Absent }

// IsOfAxis reports whether a line for the other axis looks like such a mistake.
func (c Code) IsOfAxis() bool { return c.main().OfAxis }

// IsOfValue reports whether such a line is taken for the value of what is asked.
func (c Code) IsOfValue() bool { return c.main().OfValue }
