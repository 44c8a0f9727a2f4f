package class

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"

	"example.org/standstill/tutor/record"
)

// Roster is where a class's list came from, if it came from a OneRoster folder:
// the version of the standard, 1.1 or 1.2, and the ids that results must name. The
// zero value is no roster.
type Roster struct {
	Version string
	Class   string // sourcedId of the class
	School  string
	Term    string // of the academic session
}

// readRoster reads a folder of OneRoster 1.1 or 1.2 files in CSV: of users their
// names, of enrollments who is a student of the class, of classes the title.
func readRoster(folder fs.FS, classID string) (*List, error) {
	list := &List{Roster: Roster{Version: rosterVersion(folder)}}
	if list.Roster.Version == "" {
		return nil, errors.New("manifest.csv does not name OneRoster 1.1 or 1.2")
	}
	class, err := rosterClass(folder, classID)
	if err != nil {
		return nil, err
	}
	list.Name = shown(class["title"])
	list.Roster.Class, list.Roster.School = class["sourcedId"], class["schoolSourcedId"]
	list.Roster.Term, _, _ = strings.Cut(class["termSourcedIds"], ",")
	names, err := rosterNames(folder)
	if err != nil {
		return nil, err
	}
	seen := map[string]bool{}
	err = eachRow(folder, "enrollments.csv", func(row map[string]string) {
		id := row["userSourcedId"]
		name, known := names[id]
		if row["classSourcedId"] == list.Roster.Class && row["role"] == "student" && known && !seen[id] {
			seen[id] = true
			list.Students = append(list.Students, record.Student{ID: id, Name: name})
		}
	})
	if err == nil && len(list.Students) == 0 {
		err = fmt.Errorf("the class %s has no students", shown(list.Roster.Class))
	}
	return list, err
}

func rosterVersion(folder fs.FS) (version string) {
	_ = eachRow(folder, "manifest.csv", func(row map[string]string) {
		if row["propertyName"] == "oneroster.version" && (row["value"] == "1.1" || row["value"] == "1.2") {
			version = row["value"]
		}
	})
	return version
}

// rosterClass finds the class with an id, or the only one.
func rosterClass(folder fs.FS, id string) (found map[string]string, err error) {
	var ids []string
	err = eachRow(folder, "classes.csv", func(row map[string]string) {
		ids = append(ids, row["sourcedId"])
		if row["sourcedId"] == id || id == "" && len(ids) == 1 {
			found = row
		}
	})
	switch {
	case err != nil:
		return nil, err
	case found == nil:
		return nil, fmt.Errorf("it has no class %q; its classes are %s", shown(id), shown(strings.Join(ids, ", ")))
	case id == "" && len(ids) > 1:
		return nil, fmt.Errorf("it has several classes, %s; one must be named", shown(strings.Join(ids, ", ")))
	}
	return found, nil
}

// rosterNames reads the names of everybody who is active.
func rosterNames(folder fs.FS) (map[string]string, error) {
	names := map[string]string{}
	err := eachRow(folder, "users.csv", func(row map[string]string) {
		given := row["preferredGivenName"]
		if given == "" {
			given = row["givenName"]
		}
		family := row["preferredFamilyName"]
		if family == "" {
			family = row["familyName"]
		}
		if row["enabledUser"] != "false" {
			names[row["sourcedId"]] = shown(strings.TrimSpace(given + " " + family))
		}
	})
	return names, err
}

// eachRow gives every row of a file by its headings; rows to be deleted are left
// out.
func eachRow(folder fs.FS, name string, each func(map[string]string)) error {
	f, err := folder.Open(name)
	if err != nil {
		return fmt.Errorf("there is no %s in it", name)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, largestRoster))
	if err != nil {
		return fmt.Errorf("%s cannot be read", name)
	}
	rows, err := rowsOf(data)
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	for _, cells := range rows[1:] {
		row := map[string]string{}
		for i, cell := range cells[:min(len(cells), len(rows[0]))] {
			row[strings.TrimSpace(rows[0][i])] = strings.TrimSpace(cell)
		}
		if row["status"] != "tobedeleted" {
			each(row)
		}
	}
	return nil
}

// largestRoster is the most that is read of one file.
const largestRoster = 64 << 20
