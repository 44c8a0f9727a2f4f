package classfile

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"

	"golang.org/x/text/cases"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// List is a list of students from outside, and where it came from.
type List struct {
	Students []record.Student
	Name     string // of the class, if the list knows it
	Roster   Roster
}

// ReadList reads students from a CSV file, or from a folder of OneRoster files or a
// zip file of them; of one with several classes the one with that id. Nothing but ids and names is
// taken. The error is a fragment for whoever made the list, with the line.
func ReadList(path, classID string) (*List, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, errors.New(plainCause(err))
	}
	if info.IsDir() {
		return readRoster(os.DirFS(path), classID)
	}
	data, err := slurp(path)
	if err != nil {
		return nil, errors.New(plainCause(err))
	}
	// By its first bytes and not by its name, because a download may have any name.
	if bytes.HasPrefix(data, []byte("PK\x03\x04")) {
		folder, err := unzipped(data)
		if err != nil {
			return nil, err
		}
		return readRoster(folder, classID)
	}
	students, err := readCSV(data)
	return &List{Students: students}, err
}

// columns says what a heading may be called.
var columns = []struct {
	what  string
	names []string
}{
	{"id", []string{"id", "student", "student id", "studentid", "number", "no", "code", "login", "username", "sourcedid"}},
	{"name", []string{"name", "student name", "full name", "display name"}},
	{"given", []string{"given name", "givenname", "first name", "firstname", "first", "forename"}},
	{"family", []string{"family name", "familyname", "last name", "lastname", "last", "surname"}},
}

// readCSV reads a list with or without headings. One column holds names, two hold
// ids and names. Without ids, names serve as ids.
func readCSV(data []byte) ([]record.Student, error) {
	rows, err := rowsOf(data, true)
	if err != nil {
		return nil, err
	}
	at := headings(rows[0].cells)
	if at == nil {
		at = map[string]int{"name": 0}
		if len(rows[0].cells) > 1 {
			at = map[string]int{"id": 0, "name": 1}
		}
	} else {
		rows = rows[1:]
	}
	var students []record.Student
	first := map[string]int{}
	for _, row := range rows {
		s, ok := studentOf(row.cells, at)
		if !ok {
			continue
		}
		if line, twice := first[problems.Fold(s.ID)]; twice {
			return nil, fmt.Errorf("line %d: the id %s is also on line %d", row.line, Shown(s.ID), line)
		}
		first[problems.Fold(s.ID)] = row.line
		students = append(students, s)
	}
	if len(students) == 0 {
		return nil, errors.New("there are no students in it")
	}
	return students, nil
}

// headings finds the columns by their names; nil if the row is no heading.
func headings(row []string) map[string]int {
	at := map[string]int{}
	for i, cell := range row {
		cell = cases.Fold().String(strings.TrimSpace(cell))
		for _, c := range columns {
			// If two columns could be meant, the first is taken.
			if _, taken := at[c.what]; !taken && slices.Contains(c.names, cell) {
				at[c.what] = i
			}
		}
	}
	_, name := at["name"]
	_, family := at["family"]
	// Without one of these the first row is a student, and must not be left out.
	if !name && !family {
		return nil
	}
	return at
}

func studentOf(row []string, at map[string]int) (s record.Student, ok bool) {
	cell := func(what string) string {
		if i, ok := at[what]; ok && i < len(row) {
			return Shown(row[i])
		}
		return ""
	}
	s.ID, s.Name = cell("id"), cell("name")
	if s.Name == "" {
		s.Name = strings.TrimSpace(cell("given") + " " + cell("family"))
	}
	if s.ID == "" {
		// Folded, as students who sit down without a class get their id.
		s.ID = problems.Fold(s.Name)
	}
	if s.Name == "" {
		s.Name = s.ID
	}
	if runes := []rune(s.Name); len(runes) > longestName {
		s.Name = string(runes[:longestName])
	}
	return s, s.ID != "" && len(s.ID) <= longestID
}
