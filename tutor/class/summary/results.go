package summary

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"example.org/standstill/checker/pattern"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/classfile"
)

// The files of a OneRoster folder that the manifest must name, and those that only
// 1.2 knows.
var (
	rosterFiles   = strings.Fields("academicSessions categories classes classResources courseResources courses demographics enrollments lineItems orgs resources results users")
	rosterFiles12 = strings.Fields("lineItemLearningObjectiveIds lineItemScoreScales resultLearningObjectiveIds resultScoreScales roles scoreScales userProfiles userResources")
)

// rosterID is what the standard takes as an id.
var rosterID = pattern.Of(`^[0-9A-Za-z./@_-]{1,255}$`)

// rosterTimeForm is how the standard writes a time: in UTC, to the millisecond.
const rosterTimeForm = "2006-01-02T15:04:05.000Z"

// RosterMark is in the manifest of every folder that OneRoster writes.
const RosterMark = "source.systemName,Standstill"

// OneRoster makes the files of a OneRoster folder: the set problems as line items in
// one category, and a result for every student and problem. In bulk mode they replace
// what a school system has; with delta they are changes to it, each with the time of
// the report. The score is the weight of a problem done, 0 for one that is not; ids are those
// of the roster. Refused are the ids of students that the standard does not take; they
// are left out, because an id that was changed would lead nowhere.
func (r *Report) OneRoster(delta bool) (files map[string][]byte, refused []string) {
	items, results := r.lineItems(), [][]string{resultHead(r.Roster.Version)}
	for _, row := range r.Students {
		if !rosterID().MatchString(row.ID) {
			refused = append(refused, classfile.Shown(row.ID))
			continue
		}
		for i, c := range row.Cells {
			results = append(results, r.result(row.ID, i, c))
		}
	}
	mode := "bulk"
	tables := map[string][][]string{"categories.csv": r.categories(), "lineItems.csv": items, "results.csv": results}
	if delta {
		mode = "delta"
		for _, rows := range tables {
			for _, row := range rows[1:] {
				// In bulk mode the standard wants both cells empty.
				row[1], row[2] = "active", r.At.UTC().Format(rosterTimeForm)
			}
		}
	}
	files = map[string][]byte{"manifest.csv": rosterCSV(manifest(r.Roster.Version, mode))}
	for name, rows := range tables {
		files[name] = rosterCSV(rows)
	}
	return files, refused
}

func (r *Report) categories() [][]string {
	rows := [][]string{{"sourcedId", "status", "dateLastModified", "title"}, {r.category(), "", "", "Standstill"}}
	if r.Roster.Version == "1.2" {
		rows[0], rows[1] = append(rows[0], "weight"), append(rows[1], "")
	}
	return rows
}

func manifest(version, mode string) [][]string {
	rows := [][]string{{"propertyName", "value"}, {"manifest.version", "1.0"}, {"oneroster.version", version}}
	here := map[string]bool{"categories": true, "lineItems": true, "results": true}
	names := rosterFiles
	if version == "1.2" {
		names = append(append([]string(nil), rosterFiles...), rosterFiles12...)
	}
	for _, name := range names {
		state := "absent"
		if here[name] {
			state = mode
		}
		rows = append(rows, []string{"file." + name, state})
	}
	return append(rows, []string{"source.systemName", "Standstill"})
}

// category and lineItem are ids of our own, which begin with a letter.
func (r *Report) category() string { return "standstill-" + classfile.PlainName(r.Code, "class") }

func (r *Report) lineItem(at int) string { return r.category() + "-" + r.Work[at].ID }

func (r *Report) lineItems() [][]string {
	head := strings.Split("sourcedId,status,dateLastModified,title,description,assignDate,dueDate,classSourcedId,categorySourcedId,gradingPeriodSourcedId,resultValueMin,resultValueMax", ",")
	if r.Roster.Version == "1.2" {
		head[9] = "academicSessionSourcedId"
		head = append(head, "schoolSourcedId")
	}
	rows := [][]string{head}
	for i, c := range r.Work {
		due := c.Due
		if due.IsZero() {
			// The standard demands a date for every line item.
			due = r.At
		}
		row := []string{r.lineItem(i), "", "", classfile.Shown(c.Title), "", r.At.Local().Format(classfile.DateForm), due.Local().Format(classfile.DateForm),
			r.Roster.Class, r.category(), r.Roster.Term, "0", classfile.Number(c.Weight)}
		if r.Roster.Version == "1.2" {
			row = append(row, r.Roster.School)
		}
		rows = append(rows, row)
	}
	return rows
}

func resultHead(version string) []string {
	head := strings.Split("sourcedId,status,dateLastModified,lineItemSourcedId,studentSourcedId,scoreStatus,score,scoreDate,comment", ",")
	if version == "1.2" {
		head = append(head, "textScore", "classSourcedId", "inProgress", "incomplete", "late", "missing")
	}
	return head
}

// result is a row. Where nothing was begun there is no score, but 1.1 demands one.
func (r *Report) result(student string, at int, c Cell) []string {
	score, status, date := "0", "partially graded", c.Last
	switch {
	case c.Status.Done():
		score, status, date = classfile.Number(r.Work[at].Weight), "fully graded", c.Done
	// Looking at the solution ends the work on a problem without a point.
	case c.Status == tutor.Shown:
		status = "fully graded"
	case c.Status == tutor.NotBegun:
		status, date = "not submitted", r.At
		if r.Roster.Version == "1.2" {
			score = ""
		}
	}
	row := []string{r.lineItem(at) + "-" + student, "", "", r.lineItem(at), student, status, score, date.Local().Format(classfile.DateForm), c.Status.String()}
	if r.Roster.Version == "1.2" {
		begun, over := c.Status == tutor.Begun, c.Overdue
		row = append(row, "", r.Roster.Class, strconv.FormatBool(begun), strconv.FormatBool(begun),
			strconv.FormatBool(c.Late || begun && over), strconv.FormatBool(c.Status == tutor.NotBegun && over))
	}
	return row
}

// rosterCSV writes rows; the texts in them are ours, or ids that were looked at.
func rosterCSV(rows [][]string) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	_ = w.WriteAll(rows) // a Buffer takes everything
	return b.Bytes()
}
