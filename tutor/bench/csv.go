package bench

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/bench/measure"
	"example.org/standstill/tutor/door"
)

// Columns of a table of runs: "run" and "group", then for every field its name and unit,
// as "m / kg", "T1 read / N", "hanger m / g", and its standard uncertainty, "u(m) / kg";
// then what is predicted, "T1 predicted / N" and "u(T1 predicted) / N", which is not read
// in again; last the notes and the conclusion.
const (
	columnRun        = "run"
	columnGroup      = "group"
	columnNotes      = "notes"
	columnConclusion = "conclusion"
	predictedMark    = " predicted"
	readMark         = " read"
)

// Export is runs of one apparatus as a table with commas between, one row for each run.
func Export(computed []Computed) ([]byte, error) {
	if why := oneApparatus(computed); why != "" {
		return nil, errors.New(why)
	}
	f := computed[0].form
	head := []string{columnRun, columnGroup}
	var fields, predicted []int
	for i := range f.Fields {
		// A column for what any of the runs has measured; givens always, since the prediction depends on them.
		if slices.ContainsFunc(computed, func(t Computed) bool { e := t.form.Fields[i]; return e.Good() && e.Value.Measured || e.Kind == Measure }) {
			fields = append(fields, i)
			head = append(head, f.columns(i, "")...)
		}
	}
	for i := range f.Fields {
		if f.isAsked(&f.Fields[i]) {
			predicted = append(predicted, i)
			head = append(head, f.columns(i, predictedMark)...)
		}
	}
	rows := [][]string{append(head, columnNotes, columnConclusion)}
	for _, t := range computed {
		row := []string{fmt.Sprint(t.Number), inert(t.About.group())}
		for _, i := range fields {
			row = append(row, t.measuredCells(i)...)
		}
		for _, i := range predicted {
			row = append(row, t.predictedCells(i)...)
		}
		rows = append(rows, append(row, inert(strings.Join(t.form.Notes, "; ")), inert(t.form.Conclusion)))
	}
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	err := w.WriteAll(rows)
	return b.Bytes(), err
}

// columns head a field: its value and its standard uncertainty.
func (f *Form) columns(i int, mark string) []string {
	e := &f.Fields[i]
	if mark == "" && e.Kind == Reading {
		mark = readMark
	}
	unit := ""
	if s := measure.Symbol(e.Want.Unit); s != "" {
		unit = " / " + bracketed(s)
	}
	return []string{e.ascii() + mark + unit, "u(" + e.ascii() + mark + ")" + unit}
}

func (t Computed) measuredCells(i int) []string {
	e := &t.form.Fields[i]
	if e.Good() && e.Value.Measured {
		return cells(e.Value.Estimate/e.Want.Unit.Factor, e.Value.U()/e.Want.Unit.Factor)
	}
	for _, in := range t.Inputs {
		if in.Kind == Measure && in.Letter == e.Letter && e.Kind == Measure {
			return cells(in.Estimate/e.Want.Unit.Factor, 0)
		}
	}
	return []string{"", ""}
}

func (t Computed) predictedCells(i int) []string {
	for k := range t.Predicted {
		if p := &t.Predicted[k]; p.Letter == t.form.Fields[i].Letter {
			return cells(p.Value/p.Unit.Factor, p.reported()/p.Unit.Factor)
		}
	}
	return []string{"", ""}
}

func cells(x, u float64) []string {
	const figures = 12 // more than was ever measured, less than the dust of arithmetic
	write := func(x float64) string { return strconv.FormatFloat(x, 'g', figures, 64) }
	return []string{write(x), write(u)}
}

// inert is a text as a cell that no spreadsheet works out.
func inert(text string) string { return door.Inert(expr.Clean(text)) }

// importing are the columns of a table as they were understood.
type importing struct {
	form              *Form
	value             []int // column → field, −1 for none
	unsure            []int // column → field whose standard uncertainty it holds
	notes, conclusion int
	units             []string
}

// most is how many rows and columns of a table are read.
const mostRows, mostColumns = 1000, 200

// Import makes a form of every row of a table with a head of letters and units, as
// Export writes it. why is one sentence for each thing that cannot be read; then nothing
// is returned.
func Import(p *problems.Problem, table io.Reader) (forms []*Form, why []string, err error) {
	reader := csv.NewReader(table)
	// Spreadsheets leave out empty cells at the end of a row.
	reader.FieldsPerRecord = -1
	reader.TrimLeadingSpace = true
	var rows [][]string
	for {
		row, err := reader.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, []string{saidNoTable(err)}, nil
		}
		if rows = append(rows, row); len(rows) > mostRows || len(row) > mostColumns {
			return nil, []string{saidTableTooLarge}, nil
		}
	}
	if len(rows) < 2 {
		return nil, []string{saidEmptyTable}, nil
	}
	f, err := NewForm(p)
	if err != nil {
		return nil, nil, err
	}
	columns, why := f.importing(rows[0])
	for i, row := range rows[1:] {
		form, wrong, err := columns.row(p, row)
		if err != nil {
			return nil, nil, err
		}
		for _, said := range wrong {
			why = append(why, saidInRow(i+2, said))
		}
		forms = append(forms, form)
	}
	if why != nil {
		return nil, why, nil
	}
	return forms, nil, nil
}

// importing finds what each column holds.
func (f *Form) importing(head []string) (c importing, why []string) {
	c = importing{form: f, notes: -1, conclusion: -1}
	known := 0
	for i, cell := range head {
		// A spreadsheet puts this mark in front of the first cell.
		name, unit := columnOf(strings.TrimPrefix(cell, "\ufeff"))
		c.value, c.unsure, c.units = append(c.value, -1), append(c.unsure, -1), append(c.units, unit)
		of, isU := strings.CutPrefix(name, "u(")
		of = strings.TrimSuffix(of, ")")
		switch {
		// Predictions are worked out again, and runs get new numbers.
		case name == "" || strings.EqualFold(name, columnRun) || strings.EqualFold(name, columnGroup) || strings.HasSuffix(of, predictedMark):
			continue
		case strings.EqualFold(name, columnNotes):
			c.notes = i
			continue
		case strings.EqualFold(name, columnConclusion):
			c.conclusion = i
			continue
		}
		field, said := f.columnField(of)
		if said != "" {
			why = append(why, said)
			continue
		}
		if known++; isU {
			c.unsure[i] = field
		} else {
			c.value[i] = field
		}
	}
	if known == 0 && why == nil {
		why = []string{saidEmptyTable}
	}
	return c, why
}

// columnOf takes a head apart: "m / kg", "m [kg]", "g / (m/s^2)".
func columnOf(head string) (name, unit string) {
	name, unit, found := strings.Cut(head, " / ")
	if !found {
		name, unit, _ = strings.Cut(head, "[")
	}
	return strings.TrimSpace(name), strings.Trim(strings.TrimSpace(unit), "()[]")
}

func (f *Form) columnField(name string) (field int, why string) {
	if letter, found := strings.CutSuffix(name, readMark); found {
		return f.Find(Reading, letter)
	}
	kind, rest := f.kindOf(name + "=")
	return f.Find(kind, strings.TrimSuffix(rest, "="))
}

// row makes a form of one row.
func (c importing) row(p *problems.Problem, row []string) (f *Form, why []string, err error) {
	if f, err = NewForm(p); err != nil {
		return nil, nil, err
	}
	unsure := map[int]string{}
	for i, cell := range row {
		// First all uncertainties: a column may come before that of its value.
		if cell = strings.TrimSpace(cell); i < len(c.unsure) && c.unsure[i] >= 0 && cell != "" {
			unsure[c.unsure[i]] = quality(cell, c.units[i])
		}
	}
	for i, cell := range row {
		cell = strings.TrimSpace(cell)
		switch {
		case i >= len(c.value) || cell == "":
		case i == c.notes:
			f.Notes = strings.Split(door.Plain(cell), "; ")
		case i == c.conclusion:
			f.Conclusion = door.Plain(cell)
		case c.value[i] >= 0:
			if said := f.typeCell(c.value[i], cell, c.units[i], unsure[c.value[i]]); said != "" {
				why = append(why, said)
			}
		}
	}
	return f, why, nil
}

// typeCell types a cell into a field: as it is, or with the column's unit behind the
// first number or behind everything.
func (f *Form) typeCell(field int, cell, unit, unsure string) (why string) {
	number := leadingNumber().FindString(cell)
	// A cell may be “0.5”, “0.5 ± 1 %” or “35; 34.5”, and the unit belongs to a different place in each.
	for _, text := range []string{withColumnUnit(cell, unit), number + " " + unit + cell[len(number):], cell + " " + unit} {
		if f.Type(field, strings.TrimSpace(text+" "+unsure)) {
			return ""
		}
		if why == "" {
			why = saidAbout(&f.Fields[field], f.Fields[field].Why)
		}
	}
	return why
}

var leadingNumber = pattern.Of(`^[-−]?[\d.,]+`)

// quality is a standard uncertainty as it is typed; none is exact.
func quality(cell, unit string) string {
	if x, err := strconv.ParseFloat(strings.Replace(cell, ",", ".", 1), 64); err == nil && (x == 0 || math.IsNaN(x)) {
		return "exact"
	}
	return "u " + withColumnUnit(cell, unit)
}

// withColumnUnit puts the column's unit behind a number that has none.
func withColumnUnit(cell, unit string) string {
	if _, err := strconv.ParseFloat(strings.Replace(cell, ",", ".", 1), 64); err == nil && unit != "" {
		return cell + " " + unit
	}
	return cell
}
