package bench

import (
	"fmt"
	"math"
	"slices"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/tutor/bench/measure"
)

// Compare lays runs of one apparatus side by side: what was put in, what was
// predicted, what was read, and from each run to the next how far prediction and
// reading moved. why is a sentence where the runs are not of one apparatus.
func Compare(computed []Computed) (blocks []Block, why string) {
	if len(computed) < 2 {
		return nil, saidTwoRuns
	}
	if why := oneApparatus(computed); why != "" {
		return nil, why
	}
	table := Block{Title: "Runs side by side", Head: []string{""}}
	for _, t := range computed {
		table.Head = append(table.Head, fmt.Sprintf("run %d", t.Number))
	}
	table.Rows = rowsOf(computed)
	moved := Block{Title: "From run to run"}
	for i := 1; i < len(computed); i++ {
		moved.Lines = append(moved.Lines, changes(computed[i-1], computed[i])...)
	}
	return []Block{table, moved}, ""
}

// oneApparatus says which run is of another apparatus than the first, "" if none is.
func oneApparatus(computed []Computed) string {
	first := computed[0].form.problem
	for _, t := range computed[1:] {
		if t.form.problem.ID != first.ID {
			return saidOtherApparatus(computed[0].Number, first.ID, t.Number, t.form.problem.ID)
		}
	}
	return ""
}

// rowsOf are the inputs by name, then what is predicted and read of each letter, with a
// cell for every run.
func rowsOf(computed []Computed) (rows [][]string) {
	place := map[string]int{}
	put := func(name string, run int, cell string) {
		at, known := place[name]
		if !known {
			at = len(rows)
			place[name] = at
			rows = append(rows, append([]string{name}, slices.Repeat([]string{"–"}, len(computed))...))
		}
		rows[at][run+1] = cell
	}
	for run, t := range computed {
		for _, in := range t.Inputs {
			put(in.Name(), run, pair(in.Estimate, in.U, in.Unit))
		}
	}
	for run, t := range computed {
		for i := range t.Predicted {
			p := &t.Predicted[i]
			put(p.Name+" predicted", run, pair(p.Value, p.reported(), p.Unit))
			for _, c := range t.Compared {
				if c.Letter == p.Letter {
					put(p.Name+" read", run, pair(c.Read, c.U, p.Unit))
					put(p.Name+" Eₙ", run, saidEn(c.En))
				}
			}
		}
	}
	return rows
}

// pair writes a value with its standard uncertainty.
func pair(x, u float64, unit quantity.Unit) string {
	value, unsure := measure.Quote(x/unit.Factor, u/unit.Factor)
	if value = measure.WithUnit(value, unit); unsure == "" {
		return value
	}
	return value + ", u " + unsure
}

// changes says how far each reading moved between two runs, and how far the sums say
// that it should have.
func changes(a, b Computed) []string {
	var said []string
	for _, before := range a.Compared {
		for _, after := range b.Compared {
			if before.Letter != after.Letter {
				continue
			}
			unit := after.Predicted.Unit
			// The two readings are taken as independent: what they share, such as a scale, is not subtracted.
			u := math.Hypot(before.Expanded, after.Expanded) / unit.Factor
			read, _ := measure.Quote((after.Read-before.Read)/unit.Factor, u)
			predicted, _ := measure.Quote((after.Predicted.Value-before.Predicted.Value)/unit.Factor, u)
			said = append(said, saidMoved(a.Number, b.Number, after.Name(), measure.WithUnit(read, unit), measure.WithUnit(measure.QuoteU(u), unit), measure.WithUnit(predicted, unit)))
		}
	}
	return said
}
