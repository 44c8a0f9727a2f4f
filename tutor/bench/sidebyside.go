package bench

import (
	"fmt"
	"math"
	"slices"

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
	for _, name := range rowNames(computed) {
		row := []string{name}
		for _, t := range computed {
			row = append(row, t.cell(name))
		}
		table.Rows = append(table.Rows, row)
	}
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

// The rows of the table: inputs by name, then these about each prediction.
const (
	rowPredicted = " predicted"
	rowRead      = " read"
	rowEn        = " Eₙ"
)

func rowNames(computed []Computed) []string {
	var names []string
	add := func(name string) {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, t := range computed {
		for _, in := range t.Inputs {
			add(in.Name())
		}
	}
	for _, t := range computed {
		for _, p := range t.Predicted {
			add(p.Name + rowPredicted)
			for _, c := range t.Compared {
				if c.Letter == p.Letter {
					add(p.Name + rowRead)
					add(p.Name + rowEn)
				}
			}
		}
	}
	return names
}

func (t Computed) cell(row string) string {
	for _, in := range t.Inputs {
		if in.Name() == row {
			return pair(in.Value/in.Unit.Factor, in.U/in.Unit.Factor, func(x string) string { return measure.WithUnit(x, in.Unit) })
		}
	}
	for i := range t.Predicted {
		p := &t.Predicted[i]
		if p.Name+rowPredicted == row {
			return pair(p.Value/p.Unit.Factor, p.reported()/p.Unit.Factor, func(x string) string { return measure.WithUnit(x, p.Unit) })
		}
	}
	for _, c := range t.Compared {
		unit := c.Predicted.Unit
		switch row {
		case c.Predicted.Name + rowRead:
			return pair(c.Value/unit.Factor, c.U/unit.Factor, func(x string) string { return measure.WithUnit(x, unit) })
		case c.Predicted.Name + rowEn:
			return saidEn(c.En)
		}
	}
	return "–"
}

// reported is the standard uncertainty that counts.
func (p *Prediction) reported() float64 {
	if p.Drawn {
		return p.Spread
	}
	return p.U
}

// pair writes a value with its standard uncertainty.
func pair(x, u float64, unit func(string) string) string {
	value, unsure := measure.Quote(x, u)
	if unsure == "" {
		return unit(value)
	}
	return unit(value) + ", u " + unsure
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
			u := math.Hypot(before.Expanded, after.Expanded) / unit.Factor
			read, _ := measure.Quote((after.Value-before.Value)/unit.Factor, u)
			predicted, _ := measure.Quote((after.Predicted.Value-before.Predicted.Value)/unit.Factor, u)
			said = append(said, saidMoved(a.Number, b.Number, after.Name(), measure.WithUnit(read, unit), measure.WithUnit(measure.QuoteU(u), unit), measure.WithUnit(predicted, unit)))
		}
	}
	return said
}
