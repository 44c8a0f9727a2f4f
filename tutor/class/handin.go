package class

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"io"
	"strings"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/record"
)

// A hand-in is text, one JSON object on a line: first a header, then the problem
// files that were worked on, then the entries in order. handInForm is raised when
// a program of today could no longer read it.
const (
	handInMark = "hand-in"
	handInForm = 1
)

// HandInMark begins every hand-in that is not compressed.
const HandInMark = `{"standstill":"hand-in"`

// header says what the file is. Entries is how many should follow; Others are the
// running numbers of the record that belong to somebody else, so that a number
// that is missing shows.
type header struct {
	Standstill string     `json:"standstill"`
	Form       int        `json:"form"`
	Class      string     `json:"class"`
	Student    string     `json:"student"`
	Name       string     `json:"name"`
	Time       string     `json:"time"`
	Marking    string     `json:"marking"`
	Entries    int        `json:"entries"`
	Record     string     `json:"record"`
	Others     [][2]int64 `json:"others,omitempty"`
}

// problemLine is a problem file that was worked on.
type problemLine struct {
	Problem string `json:"problem"`
	Hash    string `json:"hash"`
	File    string `json:"file"`
}

// entryLine is one entry; what a person wants to read stands first. Said is what
// was made of an answer when it was handed in: for reading only, since every
// answer is marked again.
type entryLine struct {
	Time    string `json:"time"`
	Kind    string `json:"kind"`
	Problem string `json:"problem,omitempty"`
	Stage   string `json:"stage,omitempty"`
	Item    string `json:"item,omitempty"`
	Text    string `json:"text,omitempty"`
	Said    string `json:"said,omitempty"`
	Detail  string `json:"detail,omitempty"`
	Copy    int    `json:"copy,omitempty"`
	Givens  string `json:"givens,omitempty"`
	Ref     string `json:"ref,omitempty"`
	Student string `json:"student"`
	Number  int64  `json:"number"`
	ID      string `json:"id"`
	Record  string `json:"record"`
	Hash    string `json:"hash,omitempty"`
}

// timeForm is how times are written: in UTC, to the millisecond, as they are kept.
const timeForm = "2006-01-02T15:04:05.000Z"

// HandIn is what one student hands in: what the Tutor's record holds of the Student,
// judged as the Tutor's class has it.
type HandIn struct {
	Tutor   *tutor.Tutor
	Student record.Student
	Now     time.Time
}

// compressAbove is how many bytes a hand-in may have before it is compressed.
const compressAbove = 256 << 10

// ErrNothing says that there is nothing to hand in.
var ErrNothing = errors.New("nothing to hand in")

// File makes the hand-in: its bytes, the name that it should have, and how many
// entries are in it. The error is ErrNothing, or that of the record.
func (h *HandIn) File() (data []byte, name string, entries int, err error) {
	all, head, err := h.gather()
	if err != nil {
		return nil, "", 0, err
	}
	if len(all) == 0 {
		return nil, "", 0, ErrNothing
	}
	var b bytes.Buffer
	if err := h.write(&b, head, all); err != nil {
		return nil, "", 0, err
	}
	name = h.name()
	if b.Len() <= compressAbove {
		return b.Bytes(), name, len(all), nil
	}
	var small bytes.Buffer
	if err := squeeze(&small, b.Bytes()); err != nil {
		return nil, "", 0, err
	}
	return small.Bytes(), name + ".gz", len(all), nil
}

func squeeze(w io.Writer, data []byte) error {
	z := gzip.NewWriter(w)
	if _, err := z.Write(data); err != nil {
		return err
	}
	return z.Close()
}

// gather finds the student's entries, and which numbers of the record are others'.
func (h *HandIn) gather() ([]record.Entry, header, error) {
	head := header{Standstill: handInMark, Form: handInForm, Class: h.Tutor.Class.Code, Student: h.Student.ID, Name: h.Student.Name,
		Time: h.Now.UTC().Format(timeForm), Marking: checker.Version, Record: h.Tutor.Record.ID()}
	var all []record.Entry
	for e, err := range h.Tutor.Record.Entries(record.Filter{}) {
		switch {
		case err != nil:
			return nil, head, err
		case problems.Fold(e.Student) == problems.Fold(h.Student.ID):
			all = append(all, e)
		case e.Record == head.Record:
			head.Others = addNumber(head.Others, e.Number)
		}
	}
	head.Entries = len(all)
	return all, head, nil
}

// addNumber adds a number to runs of numbers, which come in order.
func addNumber(runs [][2]int64, n int64) [][2]int64 {
	if last := len(runs) - 1; last >= 0 && n <= runs[last][1]+1 {
		runs[last][1] = n
		return runs
	}
	return append(runs, [2]int64{n, n})
}

func (h *HandIn) write(w io.Writer, head header, all []record.Entry) error {
	encoder := json.NewEncoder(w)
	// Or a student's “<” and “>” could not be read in the file.
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(head); err != nil {
		return err
	}
	// Written for whoever opens the file; the class marks everything again.
	said := h.said(all)
	seen := map[string]bool{}
	for _, e := range all {
		if e.Hash == "" || seen[e.Hash] {
			continue
		}
		seen[e.Hash] = true
		if kept, err := h.Tutor.Record.Problem(e.Hash); err == nil {
			if err := encoder.Encode(problemLine{kept.ID, kept.Hash, kept.Text}); err != nil {
				return err
			}
		}
	}
	for _, e := range all {
		if err := encoder.Encode(lineOf(e, said[e.ID])); err != nil {
			return err
		}
	}
	return nil
}

func lineOf(e record.Entry, said string) entryLine {
	return entryLine{Time: e.Time.UTC().Format(timeForm), Kind: e.Kind, Problem: e.Problem, Stage: e.Stage, Item: e.Item, Text: e.Text,
		Said: said, Detail: e.Detail, Copy: e.Copy, Givens: e.Givens, Ref: e.Ref, Student: e.Student, Number: e.Number,
		ID: e.ID, Record: e.Record, Hash: e.Hash}
}

// said marks every answer, for the reader.
func (h *HandIn) said(all []record.Entry) map[string]string {
	said := map[string]string{}
	for _, a := range attemptsOf(all) {
		page, err := h.Tutor.Review(a.Entries)
		if err != nil {
			continue
		}
		for _, l := range page.Lines() {
			if l.Kind == tutor.Typed {
				said[l.ID] = saying(l.Report)
			}
		}
	}
	return said
}

// saying is a verdict in one or two words.
func saying(r checker.Report) string {
	return strings.TrimSpace(string(r.Verdict) + " " + string(r.Code))
}

// name makes a file name of who hands in what from where. Nothing in it can be a
// part of a path, whatever the class and the student are called.
func (h *HandIn) name() string {
	return strings.Join([]string{"standstill", classfile.PlainName(h.Tutor.Class.Code, "alone"), classfile.PlainName(h.Student.ID, "student"), h.Tutor.Record.ID()[:8]}, "_") + ".jsonl"
}

// RecordName is the name of the file that a class's record has, whatever the code
// is made of: two codes that differ have two names.
func RecordName(code string) string {
	sum := sha256.Sum256([]byte(problems.Fold(code)))
	return classfile.PlainName(code, "class") + "_" + hex.EncodeToString(sum[:4]) + ".db"
}
