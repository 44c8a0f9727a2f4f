package class

import (
	"bufio"
	"bytes"
	"cmp"
	"compress/gzip"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"time"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// What can be the matter with a file that should be a hand-in.
var (
	errNotHandIn = errors.New("no hand-in")
	errNewerForm = errors.New("hand-in from a newer version")
	errTooLarge  = errors.New("hand-in is too large")
)

// handed is what a hand-in holds.
type handed struct {
	header
	problems  []problemLine
	entries   []record.Entry
	said      map[string]string // by entry
	unread    int               // lines that are no entries
	firstBad  int               // the first of these, counted from 1
	truncated bool
}

// readHanded reads a hand-in as far as it goes. Errors are those above, or of the
// disk; a file that breaks off, and lines that cannot be read, are told in what is
// returned.
func readHanded(name string) (*handed, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.Size() > largestHandIn {
		return nil, errTooLarge
	}
	return readHandedFrom(f)
}

func readHandedFrom(r io.Reader) (*handed, error) {
	buffered := bufio.NewReaderSize(r, 64<<10)
	if magic, _ := buffered.Peek(2); bytes.Equal(magic, []byte("\x1f\x8b")) {
		z, err := gzip.NewReader(buffered)
		if err != nil {
			return nil, errNotHandIn
		}
		// One compressed stream: what is put behind it could go on for ever.
		z.Multistream(false)
		buffered = bufio.NewReaderSize(z, 64<<10)
	}
	h := &handed{said: map[string]string{}}
	return h, h.read(&lineReader{in: buffered, left: largestUnpacked})
}

func (h *handed) read(in *lineReader) error {
	first, err := in.next()
	// Some editors on Windows put this mark in front when they save a file.
	first = bytes.TrimPrefix(first, []byte("\ufeff"))
	if json.Unmarshal(first, &h.header) != nil || h.Standstill != handInMark {
		return errNotHandIn
	}
	if h.Form > handInForm {
		return errNewerForm
	}
	for number := 2; err == nil; number++ {
		var line []byte
		if line, err = in.next(); len(bytes.TrimSpace(line)) == 0 {
			continue
		}
		if !h.take(line) {
			h.unread++
			if h.firstBad == 0 {
				h.firstBad = number
			}
		}
		if len(h.entries) > mostEntries || h.unread > mostUnread || len(h.problems) > mostProblems {
			return errTooLarge
		}
	}
	return h.end(err)
}

// end says how the file ended.
func (h *handed) end(err error) error {
	switch {
	case errors.Is(err, errTooLarge):
		return err
	case err != io.EOF, len(h.entries) < h.Entries:
		h.truncated = true
	}
	return nil
}

// take reads one line. A line of a kind that is not known is no entry.
func (h *handed) take(line []byte) bool {
	var p problemLine
	if json.Unmarshal(line, &p) == nil && p.File != "" {
		if len(p.File) > problems.LargestFile || p.Hash == "" {
			return false
		}
		h.problems = append(h.problems, p)
		return true
	}
	var l entryLine
	if json.Unmarshal(line, &l) != nil || l.Kind == "" || l.ID == "" {
		return false
	}
	at, err := time.Parse(time.RFC3339, l.Time)
	if err != nil {
		return false
	}
	h.entries = append(h.entries, record.Entry{ID: strings.ToLower(l.ID), Record: strings.ToLower(l.Record), Number: l.Number, Time: at.UTC(),
		Student: l.Student, Kind: l.Kind, Problem: l.Problem, Hash: l.Hash, Copy: l.Copy, Givens: l.Givens,
		Stage: l.Stage, Item: l.Item, Text: l.Text, Ref: l.Ref, Detail: l.Detail})
	if l.Said != "" {
		h.said[strings.ToLower(l.ID)] = l.Said
	}
	return true
}

// lineReader reads lines up to a bound.
type lineReader struct {
	in   *bufio.Reader
	left int
}

// next returns a line without its end. With the last line, or what there is of it,
// comes an error: io.EOF at the end, another where the file breaks off.
func (r *lineReader) next() ([]byte, error) {
	var line []byte
	for {
		part, err := r.in.ReadSlice('\n')
		if r.left -= len(part); r.left < 0 {
			return nil, errTooLarge
		}
		// A line that is too long is read to its end, so that the next one is found, but not kept.
		if len(line) <= longestHanded {
			line = append(line, part...)
		}
		if err == bufio.ErrBufferFull {
			continue
		}
		return bytes.TrimRight(line, "\r\n"), err
	}
}

// missing lists the running numbers of the record that neither the student nor
// anybody else has, as "5-8", up to the last that is known.
func (h *handed) missing() []string {
	runs := slices.Clone(h.Others)
	last := int64(0)
	for _, e := range h.entries {
		if e.Record == h.Record {
			runs = append(runs, [2]int64{e.Number, e.Number})
			last = max(last, e.Number)
		}
	}
	slices.SortFunc(runs, func(a, b [2]int64) int { return cmp.Compare(a[0], b[0]) })
	var gaps []string
	next := int64(1)
	for _, run := range runs {
		if run[0] > last || len(gaps) == mostGaps {
			break
		}
		if run[0] > next {
			gaps = append(gaps, fmt.Sprintf("%d-%d", next, run[0]-1))
		}
		// Runs may overlap in a file that somebody edited.
		next = max(next, run[1]+1)
	}
	return gaps
}

// mostGaps bounds what is said about one file.
const mostGaps = 20
