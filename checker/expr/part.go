package expr

import "strings"

// ReadPart reads a line that is still being typed: what is open at the end is
// closed, and a sign or function with nothing behind it yet is left out. A text
// of which nothing can be read is a *ReadError, as with Read.
func (l *Letters) ReadPart(text string) (Reading, error) {
	reading, first := l.Read(text)
	if first == nil {
		return reading, nil
	}
	part := strings.TrimRight(Clean(text), " ")
	for part != "" && len(part) <= maxLength {
		// Three brackets are as many as are open at once in what is typed by hand.
		for _, closing := range []string{"", ")", "))", ")))", "|"} {
			if reading, err := l.Read(part + closing); err == nil {
				return reading, nil
			}
		}
		runes := []rune(part)
		part = strings.TrimRight(string(runes[:dropLast(runes)]), " ")
	}
	return Reading{Text: Clean(text)}, first
}

// dropLast returns the length without the last sign, bracket or word, 0 where
// the end is no loose end.
func dropLast(runes []rune) int {
	n := len(runes) - 1
	if !isRun(runes[n]) {
		if strings.ContainsRune("+-−–—*·×/÷^=≈([{|√", runes[n]) {
			return n
		}
		return 0
	}
	word := n
	for word > 0 && isRun(runes[word-1]) {
		word--
	}
	for _, f := range functions {
		if strings.HasSuffix(strings.ToLower(string(runes[word:])), f.spelling) {
			return len(runes) - len([]rune(f.spelling))
		}
	}
	return 0
}
