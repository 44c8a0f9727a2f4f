package classfile

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"time"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// The keys of a class file, part by part.
var (
	classKeys = problems.Keys{Needed: []string{"name", "students", "problems"},
		Optional: []string{keyNumbers, keyCode, keyFrom, keyFiles, "settings", "oneroster", "teacher"}, Example: "name: Physics 10b"}
	fileKeys    = problems.Keys{Needed: []string{"name", "text"}, Example: "{name: quay-lantern.yaml, text: …}"}
	studentKeys = problems.Keys{Needed: []string{"id", "name"}, Example: "{id: s01, name: Ada Berg}"}
	workKeys    = problems.Keys{Optional: []string{"problem", "topic", "level", "due", "weight"}, Example: "{problem: canal-lantern, due: 2026-03-09}"}
	settingKeys = problems.Keys{Optional: settingNames(), Example: "{g: 9.81 m/s^2}"}
	rosterKeys  = problems.Keys{Needed: []string{"version", "class"}, Optional: []string{"school", "term"}, Example: "{version: 1.1, class: phys-10b}"}
)

func settingNames() []string {
	names := []string{"g", "tolerance"}
	for _, c := range choices {
		names = append(names, c.key)
	}
	return names
}

// Keys with a history: the number key was called code, which still reads.
const (
	keyNumbers = "number key"
	keyCode    = "code"
	keyFrom    = "problems_from"
	keyFiles   = "problem_files"
)

// Bounds of a class.
const (
	mostStudents  = 10_000
	longestID     = 255
	longestName   = 80
	leastTolerate = 0.001
	mostTolerate  = 0.1
	LeastWeight   = 0.1
	mostWeight    = 100
)

// ReadFile reads a class file. A list of students that it names is looked for from
// the folder of the file.
func ReadFile(name string, bank *problems.Bank) (*Class, problems.Findings) {
	data, err := slurp(name)
	if err != nil {
		return nil, problems.Findings{{File: name, What: plainCause(err), Expected: "a class file that can be read"}}
	}
	return Read(name, data, bank)
}

var (
	errNoFile    = errors.New("it is a folder or a device, not a file")
	errLargeFile = errors.New("it is larger than 4 MB")
)

// largestFile is the most that is read of a class file or a list.
const largestFile = 4 << 20

func slurp(name string) ([]byte, error) {
	if info, err := os.Stat(name); err != nil || !info.Mode().IsRegular() {
		return nil, cmp.Or(err, errNoFile)
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, largestFile+1))
	if err == nil && len(data) > largestFile {
		return nil, errLargeFile
	}
	return data, err
}

// Read reads a class file: the class, or everything that is wrong with the file.
// The problems that it sets must be in the bank, in the file itself, or in a folder
// beside it that the file names; the class's own Bank has them all.
func Read(name string, data []byte, bank *problems.Bank) (*Class, problems.Findings) {
	r := &reader{Sheet: &problems.Sheet{Name: name, Holds: "class", Begins: classKeys.Example}, class: &Class{Bank: bank}}
	if root := r.Sheet.Read(data); root != nil {
		r.whole(root)
	}
	if found := r.Found(); len(found) > 0 {
		return nil, found
	}
	return r.class, nil
}

type reader struct {
	*problems.Sheet
	class *Class
}

func (r *reader) whole(root *yaml.Node) {
	v := r.Fields(root, "the class", classKeys)
	r.class.Name = r.name(v["name"], `"name"`, "Physics 10b")
	r.numberKey(root, v[keyNumbers], v[keyCode])
	// Before the set work, which may name them.
	r.ownProblems(v[keyFrom], v[keyFiles])
	// Before the students, because a list from a OneRoster folder needs to know the class.
	r.roster(v["oneroster"])
	if n := v["students"]; n != nil && n.Kind == yaml.ScalarNode {
		r.listed(n)
	} else {
		r.students(n)
	}
	r.work(v["problems"])
	r.settings(v["settings"])
	// After the students, among whom the teacher must not be.
	r.teacher(v["teacher"])
}

// teacher reads the name under which the teacher comes to a host. No student may have it.
func (r *reader) teacher(n *yaml.Node) {
	if n == nil {
		return
	}
	name, ok := r.Word(n, `"teacher"`, "kim")
	for _, s := range r.class.Students {
		if ok && problems.Fold(s.ID) == problems.Fold(name) {
			r.At(n, fmt.Sprintf("%q is the id of a student", name), "an id that no student has, such as kim")
			return
		}
	}
	r.class.Teacher = name
}

// numberKey reads what the numbers come from.
func (r *reader) numberKey(root, now, before *yaml.Node) {
	n := now
	if n == nil {
		n = before
	}
	if n == nil {
		if hasUnknown(root, classKeys) {
			return // it may be the one that is missing, and has been told
		}
		r.At(root, fmt.Sprintf("the class has no %q", keyNumbers), "a number key, such as harbour-2")
		return
	}
	r.class.Code, _ = r.Word(n, `"`+keyNumbers+`"`, "harbour-2")
}

func hasUnknown(n *yaml.Node, keys problems.Keys) bool {
	known := slices.Concat(keys.Needed, keys.Optional)
	for i := 0; i+1 < len(n.Content); i += 2 {
		if !slices.Contains(known, n.Content[i].Value) {
			return true
		}
	}
	return false
}

// name reads a name, which may not be endless.
func (r *reader) name(n *yaml.Node, what, example string) string {
	text, ok := r.Word(n, what, example)
	if ok && len([]rune(text)) > longestName {
		r.At(n, fmt.Sprintf("%s has more than %d characters", what, longestName), "a shorter one")
	}
	return text
}

func (r *reader) students(n *yaml.Node) {
	first := map[string]int{}
	for _, item := range r.List(n, `"students"`, "- {id: s01, name: Ada Berg}") {
		v := r.Fields(item, "a student", studentKeys)
		id, ok := r.Word(v["id"], `"id"`, "s01")
		name := r.name(v["name"], `"name"`, "Ada Berg")
		if !ok {
			continue
		}
		if len(id) > longestID {
			r.At(v["id"], "the id is too long", fmt.Sprintf("at most %d characters", longestID))
		}
		if line, twice := first[problems.Fold(id)]; twice {
			r.At(v["id"], fmt.Sprintf("the id %s is also on line %d", Shown(id), line), "a different id for each student")
			continue
		}
		first[problems.Fold(id)] = v["id"].Line
		r.class.Students = append(r.class.Students, record.Student{ID: id, Name: name})
	}
	if len(r.class.Students) > mostStudents {
		r.At(n, fmt.Sprintf("the class has %d students", len(r.class.Students)), fmt.Sprintf("at most %d", mostStudents))
	}
}

// listed reads the students from a list that the file names.
func (r *reader) listed(n *yaml.Node) {
	name, ok := r.Word(n, `"students"`, "students.csv")
	if !ok {
		return
	}
	path := name
	if !filepath.IsAbs(path) {
		path = filepath.Join(filepath.Dir(r.Sheet.Name), path)
	}
	list, err := ReadList(path, r.class.Roster.Class)
	if err != nil {
		r.At(n, fmt.Sprintf("the list %s cannot be used: %s", Shown(name), err), "a CSV file with the columns id and name, or a OneRoster folder")
		return
	}
	r.class.Students = list.Students
	if list.Roster.Version != "" {
		r.class.Roster = list.Roster
	}
}

func (r *reader) work(n *yaml.Node) {
	for _, item := range r.List(n, `"problems"`, "- problem: canal-lantern") {
		v := r.Fields(item, "a set problem", workKeys)
		how := tutor.Set{Due: r.due(v["due"]), Weight: r.weight(v["weight"])}
		switch {
		case v["problem"] != nil && v["topic"] != nil:
			r.At(v["topic"], "both a problem and a topic are given", "one of them")
		case v["problem"] != nil:
			r.problem(v["problem"], how)
		case v["topic"] != nil:
			r.topic(v["topic"], v["level"], how)
		default:
			r.At(item, "neither a problem nor a topic is given", "problem: or topic:")
		}
	}
}

func (r *reader) problem(n *yaml.Node, how tutor.Set) {
	list := r.class.Bank.List()
	ids := make([]string, len(list))
	for i, h := range list {
		ids[i] = h.ID
	}
	if id, ok := r.OneOf(n, "the problem", ids); ok {
		r.set(n, list[slices.Index(ids, id)], how)
	}
}

func (r *reader) topic(n, level *yaml.Node, how tutor.Set) {
	list := r.class.Bank.List()
	var topics []string
	for _, h := range list {
		if !slices.Contains(topics, h.Topic) {
			topics = append(topics, h.Topic)
		}
	}
	topic, ok := r.OneOf(n, "the topic", topics)
	wanted := ""
	if level != nil {
		wanted, _ = r.OneOf(level, "the level", []string{"1", "2", "3"})
	}
	if !ok {
		return
	}
	for _, h := range list {
		if h.Topic == topic && (wanted == "" || strconv.Itoa(h.Level) == wanted) {
			r.set(n, h, how)
		}
	}
}

// set adds a problem with its date and weight. One that is set twice keeps the place and
// all that was first: so single problems may stand before their topic.
func (r *reader) set(n *yaml.Node, h problems.Heading, how tutor.Set) {
	for _, s := range r.class.Work {
		if s.ID == h.ID {
			return
		}
	}
	if _, err := r.class.Bank.Get(h.ID); err != nil {
		r.At(n, fmt.Sprintf("the problem %s cannot be used", h.ID), "a problem file without errors; standstill bank check finds them")
		return
	}
	how.Heading = h
	r.class.Work = append(r.class.Work, how)
}

// weight reads how much a problem counts beside the others.
func (r *reader) weight(n *yaml.Node) float64 {
	text, ok := r.Word(n, `"weight"`, "2")
	if !ok {
		return 0
	}
	weight, err := strconv.ParseFloat(text, 64)
	if err != nil || !(weight >= LeastWeight && weight <= mostWeight) {
		r.At(n, fmt.Sprintf("%q is not a weight", Shown(text)), "a number from 0.1 to 100; if you do not give a weight, it is 1")
		return 0
	}
	return weight
}

// due reads a day, which lasts to its end, or a time.
func (r *reader) due(n *yaml.Node) time.Time {
	text, ok := r.Word(n, `"due"`, "2026-03-09")
	if !ok {
		return time.Time{}
	}
	at, err := readDue(text)
	if err != nil {
		r.At(n, fmt.Sprintf("%q is not a date", Shown(text)), "a date such as 2026-03-09, or 2026-03-09 14:00")
	}
	return at
}

const (
	DateForm = "2006-01-02"
	hourForm = "2006-01-02 15:04"
)

func readDue(text string) (time.Time, error) {
	if at, err := time.ParseInLocation(DateForm, text, time.Local); err == nil {
		// Work that is due on a day may be done until its end. A day added, because not every day has 24 hours.
		return at.AddDate(0, 0, 1).Add(-time.Second), nil
	}
	return time.ParseInLocation(hourForm, text, time.Local)
}

func (r *reader) roster(n *yaml.Node) {
	if n == nil {
		return
	}
	v := r.Fields(n, `"oneroster"`, rosterKeys)
	r.class.Roster.Version, _ = r.OneOf(v["version"], "the version", []string{"1.1", "1.2"})
	r.class.Roster.Class, _ = r.Word(v["class"], `"class"`, "phys-10b")
	r.class.Roster.School, _ = r.Word(v["school"], `"school"`, "harbour-school")
	r.class.Roster.Term, _ = r.Word(v["term"], `"term"`, "2026-spring")
}

// plainCause says why a file cannot be read, without the path and the call.
func plainCause(err error) string {
	switch {
	case os.IsNotExist(err):
		return "there is no such file"
	case os.IsPermission(err):
		return "this account is not allowed to read the file"
	case errors.Is(err, errNoFile), errors.Is(err, errLargeFile):
		return err.Error()
	}
	return "the file cannot be read"
}
