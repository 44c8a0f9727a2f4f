package classfile

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/checker/pattern"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// Added is a file with one more student: the class file, or the list that it names.
type Added struct {
	Student record.Student
	File    string
	Text    []byte
}

// Add puts a student at the end of the list of a class file, or of the CSV file that
// it names, and changes nothing else in it. Without an id the name makes one. The
// error is a sentence for the teacher; nothing is written.
func Add(file string, bank *problems.Bank, s record.Student) (added Added, err error) {
	c, found := ReadFile(file, bank)
	if err := found.Err(); err != nil {
		return added, err
	}
	if s.Name = Shown(s.Name); s.Name == "" || len([]rune(s.Name)) > longestName {
		return added, fmt.Errorf("a name must have between 1 and %d characters", longestName)
	}
	// An id is typed at every log-in, so it has only plain letters.
	if s.ID == "" {
		s.ID = PlainName(s.Name, "guest")
	}
	for _, one := range c.Students {
		if problems.Fold(one.ID) == problems.Fold(s.ID) {
			return added, fmt.Errorf("the id %s belongs to %s; choose another id with --id", Shown(s.ID), Shown(one.Name))
		}
	}
	data, err := slurp(file)
	if err != nil {
		return added, err
	}
	added = Added{Student: s, File: file}
	list := studentsNode(data)
	switch {
	case list == nil:
		return added, errors.New(saidNoListToAdd)
	// The class file names a list, so the list gets the new row.
	case list.Kind == yaml.ScalarNode:
		r := &reader{Sheet: &problems.Sheet{Name: file}}
		added.File = r.beside(list.Value)
		added.Text, err = withRow(added.File, s)
	default:
		added.Text, err = withItem(data, list, s)
	}
	return added, err
}

// studentsNode finds the value of the key students in a class file that has been read.
func studentsNode(data []byte) *yaml.Node {
	var root yaml.Node
	if yaml.Unmarshal(data, &root) != nil || len(root.Content) == 0 {
		return nil
	}
	top := root.Content[0]
	for i := 0; i+1 < len(top.Content); i += 2 {
		if top.Content[i].Value == "students" {
			return top.Content[i+1]
		}
	}
	return nil
}

var listItem = pattern.Of(`^(\s*-\s+)`)

// withItem writes the student on a line of their own after the last one, which
// begins as the line before does.
func withItem(data []byte, list *yaml.Node, s record.Student) ([]byte, error) {
	lines := strings.SplitAfter(string(data), "\n")
	first := list.Content[len(list.Content)-1].Line
	begins := listItem().FindString(lines[first-1])
	// A list on one line cannot be added to without rewriting what the teacher has written.
	if list.Style&yaml.FlowStyle != 0 || begins == "" {
		return nil, errors.New(saidNoListToAdd)
	}
	after := lastLine(list)
	end := "\n"
	// The file keeps the line ends of the system on which it was written.
	if strings.HasSuffix(lines[first-1], "\r\n") {
		end = "\r\n"
	}
	if !strings.HasSuffix(lines[after-1], "\n") {
		lines[after-1] += end
	}
	item := fmt.Sprintf("%s{id: %s, name: %s}%s", begins, scalar(s.ID), scalar(s.Name), end)
	return []byte(strings.Join(lines[:after], "") + item + strings.Join(lines[after:], "")), nil
}

func lastLine(n *yaml.Node) int {
	last := n.Line
	for _, c := range n.Content {
		last = max(last, lastLine(c))
	}
	return last
}

// withRow writes the student as a row under a list in a CSV file.
func withRow(file string, s record.Student) ([]byte, error) {
	if info, err := os.Stat(file); err == nil && info.IsDir() || strings.EqualFold(filepath.Ext(file), ".zip") {
		return nil, errors.New(saidRosterToAdd)
	}
	data, err := slurp(file)
	if err != nil {
		return nil, err
	}
	rows, err := rowsOf(data, true)
	if err != nil {
		return nil, err
	}
	comma := commaOf(data[:bytes.IndexByte(append(data, '\n'), '\n')])
	if named, ok := bytes.CutPrefix(bytes.TrimPrefix(data, []byte("\ufeff")), []byte(separatorLine)); ok {
		comma = rune(named[0])
	}
	cells := map[string]string{"id": s.ID, "name": s.Name}
	at := headings(rows[0].cells)
	if at == nil {
		at = map[string]int{"id": 0, "name": 1}
	}
	given, family, _ := strings.Cut(s.Name, " ")
	// The list has two columns for the name; which word is which is a guess that the teacher can see.
	if _, whole := at["name"]; !whole {
		cells["given"], cells["family"] = given, family
	}
	if _, ids := at["id"]; !ids && s.ID != problems.Fold(s.Name) {
		return nil, errors.New(saidNoIDsToAdd)
	}
	row := make([]string, len(rows[0].cells))
	for what, i := range at {
		row[i] = cells[what]
	}
	for i, cell := range row {
		if strings.ContainsAny(cell, `",;`+"\t") {
			row[i] = `"` + strings.ReplaceAll(cell, `"`, `""`) + `"`
		}
	}
	if !bytes.HasSuffix(data, []byte("\n")) {
		data = append(data, '\n')
	}
	return append(data, strings.Join(row, string(comma))+"\n"...), nil
}
