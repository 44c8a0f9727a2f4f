// Package problems knows what can be practised: the problem files, the bank that
// is built into the program, and each student's own copy of a problem.
//
// Start with Embedded and Bank.Get for a problem of the bank, OpenFolder for a
// teacher's files, Read for one file. Problem.Draw gives a student's own copy. How
// a file is read:
//
//	read.go       from the bytes to a problem or its findings (finding.go)
//	document.go   bytes → YAML, nothing but keys, lists and text; sheet.go the same for other files
//	keys.go       which keys there are; help.go explains them
//	given.go, force.go, weight.go, letter.go, formula.go, system.go   the parts
//	tell.go, figure.go   what is said for sentences and drawings
//	validate.go   the whole: is there exactly one solution, and a physical one; sense.go slips that can be solved;
//	              doubt.go, ask.go slips that may be meant, of which the author is warned
//	locate.go     the place in the file that a message about the whole is about
//	vary.go, draw.go, usable.go   the numbers of a student's own copy; copy.go makes it, stats.go counts them
//
// What is done with problems: bank.go and topics.go list them, reference.go solves one, write.go makes the
// file of a new one.
package problems

import (
	"crypto/sha256"
	"encoding/hex"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/statics"
)

// Heading is what a list of problems shows of one.
type Heading struct {
	ID, Title, Topic string
	Level            int
}

// Problem is one problem with one set of numbers: those of its file, or a
// student's own. It is never changed once made, and may be used by several
// goroutines.
//
// Hash and Raw are of the file whatever the numbers are: Raw is its bytes, Hash
// the SHA-256 of them with every line end a line feed, in hexadecimal. Numbers is a
// hash of what a student's numbers are drawn from: files with the same one give each
// student the same numbers, whatever their words are. Copy holds
// the numbers that were drawn or put in place of the file's, as WithGivens takes
// them, "" for none. AssumedG says that g is the usual one because the file does not give it.
type Problem struct {
	Heading
	Text          string
	Notes, Source string
	System        *statics.System
	Watch         []checker.Own
	Vary          []Vary
	Warnings      Findings          // what of the file can be meant and is more often a slip; only Read looks for it
	Figure        map[string]string // what the picture cannot tell from the forces
	AssumedG      bool
	File          string
	Raw           []byte
	Hash, Numbers string
	Copy          string
	reference     func() (*checker.Reference, error)
	probes        func() []map[misstep]float64
	asWritten     *statics.System // with the numbers of the file
	kin           *checker.Kin    // shared by all copies
	changed       []string        // the givens with other numbers
	letters       map[string]bool // every letter of the problem
}

// subscripted is a letter with a subscript.
var subscripted = pattern.Of(`^[A-Z](\d+|[A-Z])$`)

var placeholder = pattern.Of(`\{([^{}]*)\}`)

// word finds what may be a letter of the problem in its text: T1, theta, mu.
var word = pattern.Of(`\b[A-Za-z]+[0-9]*\b`)

// Statement returns the text of the problem with its numbers and units. Letters in it
// are written as they are on paper.
func (p *Problem) Statement() string {
	return placeholder().ReplaceAllStringFunc(p.Lettered(p.Text), func(marked string) string {
		name := canonical(marked[1 : len(marked)-1])
		g, ok := p.System.Given(name)
		if !ok {
			return setLetter(name) // it follows from givens
		}
		return PrintGiven(g)
	})
}

// Lettered writes the letters of the problem in a text as they are on paper.
func (p *Problem) Lettered(text string) string {
	return word().ReplaceAllStringFunc(text, func(name string) string {
		// Only letters that look different on paper: “a” may be a word of the text.
		if (expr.Glyph(name) != name || subscripted().MatchString(name)) && p.letters[name] {
			return setLetter(name)
		}
		return name
	})
}

// setLetter writes a letter as it stands on paper.
func setLetter(name string) string { return expr.Set(name) }

// hashOf returns the hash of a file that tells its versions apart.
func hashOf(data []byte) string {
	sum := sha256.Sum256(normalNewlines(data))
	return hex.EncodeToString(sum[:])
}

// Vary says from which values a given is drawn: Low, Low+Step, … up to High. The
// numbers are whole multiples of a power of ten, 10^−Places, so that every value
// is exact in decimal.
type Vary struct {
	Name            string
	Low, High, Step int64
	Places          int
}
