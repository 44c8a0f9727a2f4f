package summary

import (
	"encoding/csv"
	"io"
	"strconv"
	"time"

	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/door"
)

// byteOrderMark makes some spreadsheets read a file as UTF-8.
const byteOrderMark = "\ufeff"

// WriteCSV writes one record for every student and set problem (RFC 4180). Texts
// that a spreadsheet would take for a formula get an apostrophe before them;
// numbers are written as numbers.
func (r *Report) WriteCSV(w io.Writer, mark bool) error {
	if mark {
		if _, err := io.WriteString(w, byteOrderMark); err != nil {
			return err
		}
	}
	out := csv.NewWriter(w)
	// As RFC 4180 has it.
	out.UseCRLF = true
	head := []string{"class", "student", "name", "problem", "title", "standing", "stage", "item", "attempts", "lines", "refused", "hints",
		"stepsShown", "minutes", "begun", "done", "due", "late", "overdue", "days", "items", "firstGo", "weight"}
	if err := out.Write(head); err != nil {
		return err
	}
	for _, row := range r.Students {
		for i, c := range row.Cells {
			if err := out.Write(r.csvRow(&row, i, c)); err != nil {
				return err
			}
		}
	}
	out.Flush()
	return out.Error()
}

func (r *Report) csvRow(row *Row, at int, c Cell) []string {
	set := r.Work[at]
	return []string{inert(r.Code), inert(row.ID), inert(row.Name), inert(set.ID), inert(set.Title), c.Status.Key(), string(c.Stage), inert(c.Item),
		strconv.Itoa(c.Attempts), strconv.Itoa(c.Lines), strconv.Itoa(c.Refused), strconv.Itoa(c.Hints), strconv.Itoa(c.Shown),
		strconv.FormatFloat(tenths(c.Spent.Minutes()), 'f', 1, 64), stamp(c.Begun), stamp(c.Done), stamp(set.Due), strconv.FormatBool(c.Late),
		strconv.FormatBool(c.Overdue), strconv.Itoa(c.Days), strconv.Itoa(c.Items), strconv.Itoa(c.RightFirst), classfile.Number(set.Weight)}
}

// inert writes a text so that no spreadsheet works it out.
func inert(text string) string { return door.Inert(classfile.Shown(text)) }

// stamp writes a time, nothing for none.
func stamp(at time.Time) string {
	if at.IsZero() {
		return ""
	}
	return at.UTC().Format(time.RFC3339)
}
