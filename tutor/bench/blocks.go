package bench

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/standstill/checker/quantity"
)

// Block is one part of what a run comes to: a title over lines or over a table
// with a heading for each column.
type Block struct {
	Title string
	Lines []string
	Head  []string
	Rows  [][]string
	// Glance says that the block shows at a glance what others say in sentences: it is
	// left out where one line is set after another.
	Glance bool
	// Spare are the columns that are left out, in this order, where the table is too wide.
	Spare []int
}

// Narrower is the table without the next of its spare columns; ok is false where it has
// none.
func (b Block) Narrower() (narrow Block, ok bool) {
	if len(b.Spare) == 0 {
		return b, false
	}
	at := b.Spare[0]
	narrow = Block{Title: b.Title, Head: slices.Delete(slices.Clone(b.Head), at, at+1), Glance: b.Glance}
	for _, row := range b.Rows {
		narrow.Rows = append(narrow.Rows, slices.Delete(slices.Clone(row), at, at+1))
	}
	for _, next := range b.Spare[1:] {
		// The columns behind the one that was left out have moved up.
		if next > at {
			next--
		}
		narrow.Spare = append(narrow.Spare, next)
	}
	return narrow, true
}

// Style is how blocks are set as text.
type Style struct {
	// Width is how many columns there are; 80 if zero.
	Width int
	// Plain sets one line after another, each beginning with the word that
	// matters, without columns: for a listener, for a log.
	Plain bool
}

const usualWidth = 80

func (s Style) width() int {
	// Narrower than this nothing can be set in columns; it is no real terminal.
	if s.Width < 40 {
		return usualWidth
	}
	return s.Width
}

// Set sets blocks as lines of text. Those of empty blocks are left out.
func (s Style) Set(blocks []Block) []string {
	var lines []string
	for _, b := range blocks {
		if len(b.Lines) == 0 && len(b.Rows) == 0 {
			continue
		}
		if s.Plain {
			// The same is said in sentences elsewhere.
			if !b.Glance {
				lines = append(lines, b.spoken()...)
			}
			continue
		}
		lines = append(lines, b.Title)
		for _, line := range b.Lines {
			lines = append(lines, wrap(line, s.width(), "  ")...)
		}
		lines = append(lines, b.columns()...)
	}
	return lines
}

// spoken sets a block line by line: a row of a table as "heading cell, …", or as "word: cell" where
// the only other column has no heading.
func (b Block) spoken() []string {
	var lines []string
	for _, line := range b.Lines {
		lines = append(lines, b.Title+": "+line)
	}
	for _, row := range b.Rows {
		if len(row) == 2 && b.Head[1] == "" {
			lines = append(lines, b.Title+": "+row[0]+": "+row[1])
			continue
		}
		parts := []string{row[0]}
		for i := 1; i < len(row); i++ {
			parts = append(parts, strings.TrimSpace(b.Head[i]+" "+row[i]))
		}
		lines = append(lines, b.Title+": "+strings.Join(parts, ", "))
	}
	return lines
}

// columns sets a table: the first column to the left, numbers to the right.
func (b Block) columns() []string {
	if len(b.Rows) == 0 {
		return nil
	}
	all := append([][]string{b.Head}, b.Rows...)
	wide := make([]int, len(b.Head))
	for _, row := range all {
		for i, cell := range row {
			wide[i] = max(wide[i], utf8.RuneCountInString(cell))
		}
	}
	var lines []string
	for _, row := range all {
		var line strings.Builder
		line.WriteString("  ")
		for i, cell := range row {
			gap := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(cell))
			if i == 0 {
				line.WriteString(cell + gap)
			} else {
				line.WriteString("  " + gap + cell)
			}
		}
		lines = append(lines, strings.TrimRight(line.String(), " "))
	}
	return lines
}

// wrap breaks a line at spaces, but not between a number and its unit; what follows the
// first line stands two columns further in.
func wrap(line string, width int, indent string) []string {
	var lines []string
	now := indent
	for _, chunk := range Chunks(line) {
		long := utf8.RuneCountInString(now) + 1 + utf8.RuneCountInString(chunk)
		switch {
		case strings.TrimSpace(now) == "":
			now += chunk
		case long >= width:
			lines = append(lines, now)
			now = indent + "  " + chunk
		default:
			now += " " + chunk
		}
	}
	return append(lines, now)
}

// Chunks takes a text apart where it may be broken: not between a number and its unit,
// nor between a letter and its value.
func Chunks(text string) []string {
	var chunks []string
	before := ""
	for _, word := range strings.Split(text, " ") {
		tied := endsInDigit(before) && (isUnit(word) || word == "±") || before == "±" ||
			word == "=" && utf8.RuneCountInString(before) <= 2 || before == "=" && strings.ContainsAny(word, "0123456789")
		if n := len(chunks); n > 0 && tied {
			chunks[n-1] += " " + word
		} else {
			chunks = append(chunks, word)
		}
		before = word
	}
	return chunks
}

func endsInDigit(word string) bool {
	last, _ := utf8.DecodeLastRuneInString(word)
	return unicode.IsDigit(last)
}

// isUnit reports whether a word is a unit or a share, with whatever sign ends its part of
// the sentence.
func isUnit(word string) bool {
	word = strings.TrimRight(word, ".,;:)")
	_, found := quantity.Find(strings.Replace(word, "²", "^2", 1))
	return found || word == "%"
}
