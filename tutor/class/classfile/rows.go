package classfile

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"
)

// row is one row of a table in a file, with the line that it begins on.
type row struct {
	line  int
	cells []string
}

// Bounds of a table: cells of one row, rows, and bytes of one line. A row of a list
// has a few cells, so that a file of commas is told for what it is before it takes
// the memory of the machine.
const (
	mostCells   = 500
	mostRows    = 500_000
	longestLine = 64 << 10
)

// separatorLine begins a list in which some spreadsheets name what stands between
// the cells.
const separatorLine = "sep="

// rowsOf reads a table with commas, semicolons or tabs between the cells: what its
// first line says, or else what the first line has most of. A quotation mark that is
// out of place belongs to its cell and swallows no other; with lines a cell never
// goes over the end of its line.
func rowsOf(data []byte, lines bool) ([]row, error) {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if !utf8.Valid(data) || bytes.IndexByte(data, 0) >= 0 {
		return nil, errors.New("the file is not UTF-8 text")
	}
	// A line end of an old kind would hide all lines but one.
	data = bytes.ReplaceAll(bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n")), []byte("\r"), []byte("\n"))
	first := 1
	head, rest, _ := bytes.Cut(data, []byte("\n"))
	comma := commaOf(head)
	if named, ok := bytes.CutPrefix(bytes.TrimSpace(head), []byte(separatorLine)); ok && len(named) == 1 {
		comma, data, first = rune(named[0]), rest, 2
	}
	if err := bounded(data, comma, first); err != nil {
		return nil, err
	}
	rows, ok := strictRows(data, comma, first)
	// A stray quotation mark would take the following students into one cell.
	if !ok || lines && slices.ContainsFunc(rows, goesOver) {
		rows = looseRows(data, comma, first)
	}
	if len(rows) == 0 {
		return nil, errors.New("the file is empty")
	}
	return rows, nil
}

func commaOf(head []byte) rune {
	comma := ','
	for _, other := range ";\t" {
		if bytes.Count(head, []byte(string(other))) > bytes.Count(head, []byte(string(comma))) {
			comma = other
		}
	}
	return comma
}

// bounded refuses what is no list, by its line.
func bounded(data []byte, comma rune, first int) error {
	if n := bytes.Count(data, []byte("\n")); n > mostRows {
		return fmt.Errorf("it has %d lines, but the limit is %d", n, mostRows)
	}
	for line := first; len(data) > 0; line++ {
		var one []byte
		one, data, _ = bytes.Cut(data, []byte("\n"))
		if n := bytes.Count(one, []byte(string(comma))); n > mostCells || len(one) > longestLine {
			return fmt.Errorf("line %d has %d characters and %d cells, which is too many for a list of students", line, len(one), n+1)
		}
	}
	return nil
}

// strictRows reads a table as the standard has it (RFC 4180); ok is false for one
// that is not.
func strictRows(data []byte, comma rune, first int) (rows []row, ok bool) {
	r := csv.NewReader(bytes.NewReader(data))
	// Rows may have different lengths: spreadsheets leave out empty cells at the end.
	r.FieldsPerRecord, r.Comma = -1, comma
	for {
		cells, err := r.Read()
		if err == io.EOF {
			return rows, true
		}
		if err != nil {
			return nil, false
		}
		line, _ := r.FieldPos(0)
		rows = append(rows, row{line + first - 1, cells})
	}
}

func goesOver(r row) bool {
	return slices.ContainsFunc(r.cells, func(cell string) bool { return strings.Contains(cell, "\n") })
}

// looseRows reads each line on its own. In one that is not as the standard has it
// quotation marks are characters like others.
func looseRows(data []byte, comma rune, first int) (rows []row) {
	for i, line := range strings.Split(string(data), "\n") {
		if strings.TrimSpace(line) == "" {
			continue
		}
		one, ok := strictRows([]byte(line), comma, first+i)
		if !ok || len(one) != 1 {
			one = []row{{first + i, strings.Split(line, string(comma))}}
		}
		rows = append(rows, one...)
	}
	return rows
}
