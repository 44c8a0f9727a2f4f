package lines

import "strings"

// Forces takes a force diagram in words apart: one entry for each force, between ; or
// commas or full stops or on lines of their own. "and" stands between two forces where
// each side of it, by says, is a force with its side.
func Forces(text string, says func(entry string) bool) []Line {
	s := newSplitter(text, Vocabulary{})
	var all []Line
	start := 0
	end := func(to int) {
		for _, p := range joinedForces(s.cut(start, to), says) {
			if p = p.trimmed(); !p.isEmpty() {
				all = append(all, p.line())
			}
		}
	}
	for i, r := range s.runes {
		// A full stop counts only before a space, because 2.5 has one, too.
		if strings.ContainsRune(";,\n；，", r) || r == '.' && (s.rune(i+1) == ' ' || s.rune(i+1) == 0 || s.rune(i+1) == '\n') {
			end(i)
			start = i + 1
		}
	}
	end(len(s.runes))
	return all
}

// mostJoined is how often "and" is looked at in one piece, and longestForce how many runes of
// a force beside it: no body has so many forces, and no force so long a name.
const (
	mostJoined   = 16
	longestForce = 120
)

// joinedForces cuts a piece at each "and" that stands between two forces.
func joinedForces(p piece, says func(string) bool) []piece {
	var all []piece
	start, looked := 0, 0
	for i := range p.runes {
		length := 0
		switch {
		case i <= start || looked == mostJoined:
		case p.runes[i] == '&':
			length = 1
		case p.runes[i-1] == ' ' && prefix(p.runes[i:], "and ") > 0:
			length = 3
		}
		if length == 0 {
			continue
		}
		looked++
		before, behind := p.runes[start:i], p.runes[i+length:]
		if says(string(before[max(0, len(before)-longestForce):])) && says(string(behind[:min(len(behind), longestForce)])) {
			all = append(all, p.part(start, i))
			start = i + length
		}
	}
	return append(all, p.part(start, len(p.runes)))
}
