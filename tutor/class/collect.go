package class

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"time"
	"unicode/utf8"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

// Taken is what came of one file. Trouble is a sentence where it could not be
// taken at all; Other is true for a file that is neither a hand-in nor a record.
type Taken struct {
	File      string
	Other     bool
	Trouble   string
	Student   string // of a hand-in
	Class     string // the code that a hand-in names
	Entries   int
	Added     int
	Known     int
	Elsewhere int // entries of a record of students who are not on the list
	Aside     int // entries of a hand-in of somebody who is not on the list, kept
	Forgotten int // entries that were forgotten before
	TooLong   int // answers longer than any lesson takes
	Besides   int // entries of somebody else in a student's hand-in
	Refused   int // entries that no record can hold
	Unread    int // lines that are no entries
	FirstBad  int
	Truncated bool
	Remarks   []summary.Remark
}

// Collected is what came of all files.
type Collected struct {
	Files []Taken
	Added int
	Known int
}

// Failed counts the files that could not be taken.
func (c *Collected) Failed() int {
	n := 0
	for _, one := range c.Files {
		if one.Trouble != "" {
			n++
		}
	}
	return n
}

// CollectOptions say what the teacher says about the files. With Mine they are the
// teacher's own, so that acceptances and problem files in them count; those of
// students do not. As is the id of the student to whom what is in the files is given,
// whatever name it has; of a file with several names, From chooses one. Again takes in
// what was forgotten before.
type CollectOptions struct {
	Mine     bool
	As, From string
	Again    bool

	found bool // the files were found in folders, and may be anything
}

// Collect takes in hand-ins and whole records: the files named, and those in the
// folders named. It may be done in any order and any number of times. A file that
// cannot be taken does not keep the others from it. An error is that of the class's
// record, of a path that is not there, of a student to give to who is not on the
// list, or the context's; what was added till then stays.
func (m *Markbook) Collect(ctx context.Context, paths []string, o CollectOptions) (Collected, error) {
	var sum Collected
	c := &collecting{Markbook: m, CollectOptions: o, students: map[string]record.Student{}}
	if o.As != "" {
		s, ok := m.Class.Student(o.As)
		if !ok {
			return sum, fmt.Errorf(saidNobodyToGive, classfile.Shown(o.As))
		}
		c.As = problems.Fold(s.ID)
	}
	files, err := filesIn(paths)
	if err != nil {
		return sum, err
	}
	for _, s := range m.Class.Students {
		c.students[problems.Fold(s.ID)] = s
	}
	for i, file := range files {
		if err := ctx.Err(); err != nil {
			return sum, err
		}
		taken, err := c.file(file)
		if err != nil {
			return sum, err
		}
		// In a folder there may be anything; a file that was named should be a hand-in.
		if taken.Other && slices.Contains(paths, file) && !o.found {
			taken.Trouble = saidNeither
		}
		sum.Files = append(sum.Files, taken)
		sum.Added += taken.Added
		sum.Known += taken.Known
		if m.Progress != nil {
			m.Progress(i+1, len(files))
		}
	}
	return sum, nil
}

type collecting struct {
	*Markbook
	CollectOptions
	students map[string]record.Student
}

// file takes in one file. The error is that of the class's record; what is the
// matter with the file stands in what is returned. A fault of ours spoils the one
// file.
func (c *collecting) file(path string) (taken Taken, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			taken, err = Taken{File: path, Trouble: fmt.Sprintf(saidFaultOfFile, fault)}, nil
		}
	}()
	t := &taking{collecting: c, Taken: Taken{File: path}}
	if c.Record.IsAt(path) {
		t.Other = true // and not to be opened, see IsAt
		return t.Taken, nil
	}
	kind, err := kindOf(path)
	switch {
	case err != nil:
		t.Trouble = saidUnreadable(err)
	case kind == handInFile:
		err = t.handIn()
	case kind == recordFile:
		err = t.record()
	default:
		t.Other = true
	}
	if t.Trouble != "" {
		return t.Taken, nil
	}
	t.Taken.Remarks = t.remarks.list
	return t.Taken, err
}

// taking is one file while it is taken in.
type taking struct {
	*collecting
	Taken
	remarks
	notes []record.Entry // that are not saved yet
	noted int            // that were
}

func (t *taking) handIn() error {
	h, err := readHanded(t.File)
	if err != nil {
		if t.Other = errors.Is(err, errNotHandIn); !t.Other {
			t.Trouble = saidHandIn(err)
		}
		return nil
	}
	t.Student, t.Class = h.Student, h.header.Class
	t.Entries, t.Unread, t.FirstBad, t.Truncated = len(h.entries), h.unread, h.firstBad, h.truncated
	// A hand-in is one student's. What it has of others is counted and left out.
	own := slices.DeleteFunc(h.entries, func(e record.Entry) bool { return problems.Fold(e.Student) != problems.Fold(h.Student) })
	t.Besides = t.Entries - len(own)
	if err := t.giveAll(own); err != nil {
		return err
	}
	for _, p := range h.problems {
		if err := t.saveProblem(p.Hash, p.Problem, p.File); err != nil {
			return err
		}
	}
	owner := t.ownerOfFile(own)
	if owner == "" {
		t.Aside = len(own) // kept, but for nobody of the class
	} else {
		// In a file that breaks off, missing numbers say nothing.
		if !t.Truncated {
			for _, gap := range h.missing() {
				t.note(summary.NumbersMissing, owner, record.Entry{Record: h.Record}, gap)
			}
		}
		// Another version of the checker may rightly say something else.
		if h.Marking == checker.Version {
			t.compare(h, owner, own)
		}
	}
	return t.merge(eachOf(own))
}

// giveAll gives the entries to the student whom the teacher names.
func (t *taking) giveAll(entries []record.Entry) error {
	if t.As == "" {
		return nil
	}
	seen := map[gift]bool{}
	for _, e := range entries {
		g := gift{e.Record, problems.Fold(e.Student), t.As}
		if seen[g] || t.gifts[g] {
			continue
		}
		seen[g] = true
		if err := t.give(g); err != nil {
			return err
		}
	}
	return nil
}

func (t *taking) ownerOfFile(entries []record.Entry) string {
	for _, e := range entries {
		if owner, _ := t.ownerOf(e); owner != "" {
			return owner
		}
	}
	return ""
}

func (t *taking) record() error {
	r, err := record.OpenForeign(t.File)
	if err != nil {
		t.Trouble = record.Sentence(err)
		return nil
	}
	defer r.Close()
	if err := t.giveRecord(r); err != nil || t.Trouble != "" {
		return err
	}
	for p, err := range r.Problems() {
		if err != nil {
			t.Trouble = record.Sentence(err)
			return nil
		}
		if err := t.saveProblem(p.Hash, p.ID, p.Text); err != nil {
			return err
		}
	}
	if t.Mine {
		if err := t.know(settingMine, t.Markbook.mine, []string{r.ID()}); err != nil {
			return err
		}
	}
	err = t.merge(t.countedOf(r.Entries(record.Filter{})))
	var fault *record.Error
	// Trouble with the file is told beside the file; trouble with the class's own record stops everything.
	if errors.As(err, &fault) && fault.Path == r.Path() {
		t.Trouble = record.Sentence(err)
		return nil
	}
	return err
}

// giveRecord gives what a whole record holds under one name. Without From it is the
// one name there that is not on the list.
func (t *taking) giveRecord(r *record.Record) error {
	if t.As == "" {
		return nil
	}
	counts, err := r.Counts()
	if err != nil {
		t.Trouble = record.Sentence(err)
		return nil
	}
	var names []string
	for _, name := range slices.Sorted(maps.Keys(counts)) {
		if folded := problems.Fold(name); t.From != "" && folded == problems.Fold(t.From) || t.From == "" && !t.listed[folded] {
			names = append(names, name)
		}
	}
	if len(names) != 1 {
		t.Trouble = saidWhoseRecord(t.From, slices.Sorted(maps.Keys(counts)))
		return nil
	}
	for e, err := range r.Entries(record.Filter{Student: names[0]}) {
		if err != nil {
			t.Trouble = record.Sentence(err)
			return nil
		}
		if err := t.giveAll([]record.Entry{e}); err != nil {
			return err
		}
	}
	return nil
}

func eachOf(entries []record.Entry) iter.Seq2[record.Entry, error] {
	return func(yield func(record.Entry, error) bool) {
		for _, e := range entries {
			if !yield(e, nil) {
				return
			}
		}
	}
}

// countedOf counts the entries of a record as they pass, and leaves out those of
// students who are not on the list: they handed in nothing.
func (t *taking) countedOf(all iter.Seq2[record.Entry, error]) iter.Seq2[record.Entry, error] {
	return func(yield func(record.Entry, error) bool) {
		for e, err := range all {
			if err == nil {
				t.Entries++
				if owner, _ := t.ownerOf(e); owner == "" {
					t.Elsewhere++
					continue
				}
			}
			if !yield(e, err) {
				return
			}
		}
	}
}

// merge adds what may be added to the class's record together with what is to be
// said about it, in one transaction.
func (t *taking) merge(all iter.Seq2[record.Entry, error]) error {
	merge := t.Record.Merge
	if t.Again {
		merge = t.Record.Recall
	}
	merged, err := merge(func(yield func(record.Entry, error) bool) {
		for e, err := range all {
			if err == nil && !t.mayAdd(e) {
				continue
			}
			if !yield(e, err) {
				return
			}
		}
		for _, note := range t.freshNotes() {
			t.noted++
			if !yield(note, nil) {
				return
			}
		}
	})
	for _, c := range merged.Conflicts {
		t.note(summary.EntryChanged, c.There.Student, c.Here, noteOf(c.There))
	}
	t.Added, t.Known, t.Refused = merged.Added-t.noted, merged.Known, len(merged.Refused)
	t.Forgotten += merged.Forgotten
	return errors.Join(err, t.keepNotes())
}

// mayAdd leaves out what only the teacher can say, what was forgotten, and what no
// lesson can have kept, and notes what is to be looked at.
func (t *taking) mayAdd(e record.Entry) bool {
	switch {
	case !t.Mine && e.Kind == record.Noted:
		return false
	// Only the teacher can accept. A student's record with an acceptance in it is worth a look.
	case !t.Mine && tutor.OfTeacher(e):
		if !t.Markbook.mine[e.Record] {
			t.note(summary.Acceptance, e.Student, e, "")
		}
		return false
	case t.wasForgotten(e) && !t.Again:
		t.Forgotten++
		return false
	case e.Kind == record.Answer && utf8.RuneCountInString(e.Text) > tutor.LongestText:
		t.TooLong++
		return false
	}
	if e.Time.After(t.Now().Add(ahead)) {
		t.note(summary.TimeLater, e.Student, e, e.Time.Format(time.DateTime))
	}
	return true
}

// ahead is how far a student's clock may be ahead without a word.
const ahead = 10 * time.Minute

// saveProblem saves the text of a problem file, if it has the hash that it goes
// by. A teacher's own becomes one that this class knows.
func (t *taking) saveProblem(hash, id, text string) error {
	if _, err := t.Record.Problem(hash); err != nil {
		p, found := problems.ReadSaved(filepath.Base(t.File), []byte(text))
		// Left out silently: entries about it are told of as about an unknown version.
		if found.Err() != nil || p.Hash != hash || p.ID != id {
			return nil
		}
		if err := t.Record.SaveProblem(hash, id, text); err != nil {
			return err
		}
	}
	if !t.Mine {
		return nil
	}
	return t.know(settingVersions, t.versions, []string{hash})
}

// compare marks the answers of a hand-in that was made with the marking of today,
// and notes those of which the file says otherwise. It stops where that takes long:
// what counts is marked again for the report in any case.
func (t *taking) compare(h *handed, owner string, own []record.Entry) {
	until := time.Now().Add(patienceOfFile)
	byID := map[string]record.Entry{}
	for _, e := range own {
		byID[e.ID] = e
	}
	for _, a := range attemptsOf(own) {
		// What cannot be marked is told in the report.
		if t.judge(owner, a, until); a.Page == nil {
			continue
		}
		for _, l := range a.Page.Lines() {
			said, ok := h.said[l.ID]
			if ok && l.Kind == tutor.Typed && said != saying(l.Report) {
				t.note(summary.VerdictOther, h.Student, byID[l.ID], classfile.Shown(said)+" → "+saying(l.Report))
			}
		}
	}
}

// saidUnreadable says why a file could not be opened.
func saidUnreadable(err error) string {
	if os.IsPermission(err) {
		return saidNoRight
	}
	return saidNotOpened
}
