package classfile

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
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
		return nil, errors.New("manifest.csv does not give the version of OneRoster, which has to be 1.1 or 1.2")
	}
	class, err := rosterClass(folder, classID)
	if err != nil {
		return nil, err
	}
	list.Name = Shown(class["title"])
	list.Roster.Class, list.Roster.School = class["sourcedId"], class["schoolSourcedId"]
	// A class may run over several terms; results can name only one.
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
		err = fmt.Errorf("the class %s has no students", Shown(list.Roster.Class))
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
		return nil, fmt.Errorf("it contains no class %q; it contains these classes: %s", Shown(id), Shown(strings.Join(ids, ", ")))
	case id == "" && len(ids) > 1:
		return nil, fmt.Errorf("it contains several classes; choose one of these: %s", Shown(strings.Join(ids, ", ")))
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
		// An empty cell means that the school does not use the column.
		if row["enabledUser"] != "false" {
			names[row["sourcedId"]] = Shown(strings.TrimSpace(given + " " + family))
		}
	})
	return names, err
}

// eachRow gives every row of a file by its headings; rows to be deleted are left
// out.
func eachRow(folder fs.FS, name string, each func(map[string]string)) error {
	if info, err := fs.Stat(folder, name); err != nil || !info.Mode().IsRegular() {
		return fmt.Errorf("there is no file %s in it", name)
	}
	f, err := folder.Open(name)
	if err != nil {
		return fmt.Errorf("%s cannot be read", name)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, largestRoster+1))
	if err != nil {
		return fmt.Errorf("%s cannot be read", name)
	}
	if len(data) > largestRoster {
		return fmt.Errorf("%s is larger than 32 MB", name)
	}
	rows, err := rowsOf(data, false)
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	head := rows[0].cells
	for _, one := range rows[1:] {
		row := map[string]string{}
		for i, cell := range one.cells[:min(len(one.cells), len(head))] {
			row[strings.TrimSpace(head[i])] = strings.TrimSpace(cell)
		}
		if row["status"] != "tobedeleted" {
			each(row)
		}
	}
	return nil
}

// largestRoster is the most that is read of one file.
const largestRoster = 32 << 20

// unzipped gives the folder of a zip file in which the manifest lies, at its top or
// in the one folder that it holds.
func unzipped(data []byte) (fs.FS, error) {
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, errors.New("the zip file is damaged")
	}
	for _, f := range z.File {
		if path.Base(f.Name) == "manifest.csv" && strings.Count(f.Name, "/") <= 1 {
			return fs.Sub(z, path.Dir(f.Name))
		}
	}
	return nil, errors.New("the zip file contains no manifest.csv, so it is not a OneRoster file")
}
