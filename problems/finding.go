package problems

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/standstill/checker/wording"
)

// Finding is one thing that is wrong with a problem file, in words for its
// author. Line and Column count from 1, columns in characters; both are 0 for
// what concerns the whole file.
type Finding struct {
	File         string
	Line, Column int
	What         string
	Expected     string
	source       string
}

// String prints "file:line:col: what is wrong; what was expected".
func (f Finding) String() string {
	place := f.File
	if f.Line > 0 {
		place = fmt.Sprintf("%s:%d:%d", f.File, f.Line, f.Column)
	}
	if f.Expected == "" {
		return place + ": " + f.What
	}
	return place + ": " + f.What + "; expected " + f.Expected
}

// Widest excerpt of a line, and how much of it stands before the caret.
const (
	excerptWidth = 76
	excerptLead  = 50
)

// Excerpt draws the line with a caret under the place, "" for a finding about
// the whole file. Of a long line it shows the part around the place.
func (f Finding) Excerpt() string {
	if f.Line == 0 || f.Column == 0 {
		return ""
	}
	line := []rune(strings.Map(visible, f.source))
	column := min(f.Column-1, len(line))
	start := 0
	if len(line) > excerptWidth && column > excerptLead {
		start = column - excerptLead
	}
	end := min(len(line), start+excerptWidth)
	// A copy, because dots will replace its ends.
	shown := append([]rune(nil), line[start:end]...)
	if start > 0 {
		shown[0] = '…'
	}
	if end < len(line) {
		shown[len(shown)-1] = '…'
	}
	return "  " + string(shown) + "\n  " + strings.Repeat(" ", column-start) + "^"
}

// visible gives every character of a line one cell, so that the caret fits.
func visible(r rune) rune {
	switch {
	case r == '\t':
		return ' '
	case r < ' ' || r == 0x7f || r == '\ufeff':
		return '·'
	}
	return r
}

// Findings is all that is wrong with one or several files, by place.
type Findings []Finding

// Err returns the findings as one error, nil if there are none.
func (f Findings) Err() error {
	if len(f) == 0 {
		return nil
	}
	return findingsError{f}
}

type findingsError struct{ Findings }

func (e findingsError) Error() string {
	lines := make([]string, len(e.Findings))
	for i, f := range e.Findings {
		lines[i] = f.String()
	}
	return strings.Join(lines, "\n")
}

func (f Findings) sort() {
	slices.SortStableFunc(f, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
}

// nearest returns the known word that a mistyped one most likely means, "" if
// none is near. Words of one or two letters are all near to each other.
func nearest(word string, known []string) string {
	best, distance := "", 0
	for _, k := range known {
		if len(k) < 3 {
			continue
		}
		d := wording.Apart(strings.ToLower(word), strings.ToLower(k))
		if d <= max(len(k)/3, 1) && (best == "" || d < distance) {
			best, distance = k, d
		}
	}
	return best
}

// offer returns the nearest known word, or the only one that there is.
func offer(word string, known []string) string {
	if len(known) == 1 {
		return known[0]
	}
	return nearest(word, known)
}

// listed joins words with commas and a conjunction before the last.
func listed(words []string, conjunction string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		return strings.Join(words[:n-1], ", ") + " " + conjunction + " " + words[n-1]
	}
}

// instead words what was expected in place of an unknown word: the nearest known
// one, else all of them.
func instead(word string, known []string) string {
	if near := offer(word, known); near != "" {
		return fmt.Sprintf("%q", near)
	}
	return "one of " + strings.Join(known, " ")
}

// misread says what is wrong with a value and what was expected.
type misread struct{ what, expected string }
