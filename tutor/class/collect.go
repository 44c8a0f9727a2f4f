package class

import (
	"cmp"
	"context"
	"errors"
	"iter"
	"os"
	"path/filepath"
	"slices"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
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
	Elsewhere int // entries of students who are not on the list
	Besides   int // entries of somebody else in a student's hand-in
	Refused   int // entries that no record can hold
	Unread    int // lines that are no entries
	FirstBad  int
	Truncated bool
	Remarks   []Remark
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

// Collect takes in hand-ins and whole records: the files named, and those in the
// folders named. It may be done in any order and any number of times. A file that
// cannot be taken does not keep the others from it. With mine the files are the
// teacher's own, so that acceptances and problem files in them count; those of
// students do not. An error is that of the class's record, of a path that is not
// there, or the context's; what was added till then stays.
func (m *Markbook) Collect(ctx context.Context, paths []string, mine bool) (Collected, error) {
	var sum Collected
	files, err := filesIn(paths)
	if err != nil {
		return sum, err
	}
	c := &collecting{Markbook: m, mine: mine, students: map[string]record.Student{}}
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
		if taken.Other && slices.Contains(paths, file) {
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
	mine     bool
	students map[string]record.Student
}

// file takes in one file. The error is that of the class's record; what is the
// matter with the file stands in what is returned.
func (c *collecting) file(path string) (Taken, error) {
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
	notes []record.Entry
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
	if _, ok := t.students[problems.Fold(h.Student)]; !ok {
		t.Elsewhere = len(h.entries)
		return nil
	}
	if !t.Truncated {
		for _, gap := range h.missing() {
			t.note(NumbersMissing, h.Student, record.Entry{Record: h.Record}, gap)
		}
	}
	own := slices.DeleteFunc(h.entries, func(e record.Entry) bool { return problems.Fold(e.Student) != problems.Fold(h.Student) })
	t.Besides = t.Entries - len(own)
	for _, p := range h.problems {
		if err := t.keepProblem(p.Hash, p.Problem, p.File); err != nil {
			return err
		}
	}
	if err := t.merge(eachOf(own)); err != nil {
		return err
	}
	if h.Marking == checker.Version {
		t.compare(h, own)
	}
	return t.keepNotes()
}

func (t *taking) record() error {
	r, err := record.OpenForeign(t.File)
	if err != nil {
		t.Trouble = record.Sentence(err)
		return nil
	}
	defer r.Close()
	for p, err := range r.Problems() {
		if err != nil {
			t.Trouble = record.Sentence(err)
			return nil
		}
		if err := t.keepProblem(p.Hash, p.ID, p.Text); err != nil {
			return err
		}
	}
	if t.mine {
		if err := t.know(settingMine, t.Markbook.mine, []string{r.ID()}); err != nil {
			return err
		}
	}
	err = t.merge(t.countedOf(r.Entries(record.Filter{})))
	var fault *record.Error
	if errors.As(err, &fault) && fault.Path == r.Path() {
		t.Trouble = record.Sentence(err)
		return nil
	}
	return errors.Join(err, t.keepNotes())
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

// countedOf counts entries as they pass, and leaves out those of students who are
// not on the list.
func (t *taking) countedOf(all iter.Seq2[record.Entry, error]) iter.Seq2[record.Entry, error] {
	return func(yield func(record.Entry, error) bool) {
		for e, err := range all {
			if err == nil {
				t.Entries++
				if _, ok := t.students[problems.Fold(e.Student)]; !ok {
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

// merge adds what may be added to the class's record, and notes what is to be said
// about it.
func (t *taking) merge(all iter.Seq2[record.Entry, error]) error {
	latest := t.Now().Add(ahead)
	merged, err := t.Record.Merge(func(yield func(record.Entry, error) bool) {
		for e, err := range all {
			if err == nil && !t.mine && (tutor.OfTeacher(e) || e.Kind == record.Noted) {
				if tutor.OfTeacher(e) && !t.Markbook.mine[e.Record] {
					t.note(Acceptance, e.Student, e, "")
				}
				continue
			}
			if err == nil && e.Time.After(latest) {
				t.note(TimeLater, e.Student, e, e.Time.Format(time.DateTime))
			}
			if !yield(e, err) {
				return
			}
		}
	})
	t.Added, t.Known, t.Refused = merged.Added, merged.Known, len(merged.Refused)
	for _, c := range merged.Conflicts {
		t.note(EntryChanged, c.There.Student, c.Here, shown(cmp.Or(c.There.Text, c.There.Kind)))
	}
	return err
}

// ahead is how far a student's clock may be ahead without a word.
const ahead = 10 * time.Minute

// keepProblem keeps the text of a problem file, if it has the hash that it goes
// by. A teacher's own becomes one that this class knows.
func (t *taking) keepProblem(hash, id, text string) error {
	if _, err := t.Record.Problem(hash); err != nil {
		p, found := problems.ReadKept(filepath.Base(t.File), []byte(text))
		if found.Err() != nil || p.Hash != hash || p.ID != id {
			return nil
		}
		if err := t.Record.KeepProblem(hash, id, text); err != nil {
			return err
		}
	}
	if !t.mine {
		return nil
	}
	return t.know(settingVersions, t.versions, []string{hash})
}

// compare marks the answers of a hand-in that was made with the marking of today,
// and notes those of which the file says otherwise.
func (t *taking) compare(h *handed, own []record.Entry) {
	byID := map[string]record.Entry{}
	for _, e := range own {
		byID[e.ID] = e
	}
	for _, a := range attemptsOf(own) {
		// What cannot be marked is told in the report.
		if fault := tutor.Fenced(func() { t.judge(h.Student, a) }); fault != nil || a.Page == nil {
			continue
		}
		for _, l := range a.Page.Lines() {
			said, ok := h.said[l.ID]
			if ok && l.Kind == tutor.Typed && said != saying(l.Report) {
				t.note(VerdictOther, h.Student, byID[l.ID], shown(said)+" → "+saying(l.Report))
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
