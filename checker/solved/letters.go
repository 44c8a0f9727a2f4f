package solved

import (
	"strings"

	"example.org/standstill/checker/expr"
)

// LettersFor returns the vocabulary for an item: a body's for a body or one of its
// components, everything for none.
func (s *System) LettersFor(item string) *expr.Letters {
	body, _, _ := strings.Cut(item, ".")
	if l, ok := s.Readers[body]; ok {
		return l
	}
	if len(s.Bodies) == 1 {
		return s.Readers[s.Bodies[0].Name]
	}
	return s.Readers[""]
}

// Owner names the force that a letter speaks of: itself, or the force that a
// given is the size of.
func (s *System) Owner(name string) string {
	if _, ok := s.Force(name); ok {
		return name
	}
	for _, b := range s.Bodies {
		for _, f := range b.Forces {
			if f.Size != nil && f.Size.Op == expr.Name && f.Size.Name == name {
				return f.Name
			}
		}
	}
	return name
}

// LetterOf returns the letter or component that a text names and does no more,
// read as in a line about the item.
func (s *System) LetterOf(text, item string) (name string, ok bool) {
	reading, err := s.LettersFor(item).Read(text)
	if err != nil {
		return "", false
	}
	sides := reading.Lines[0].Sides
	if len(sides) != 1 || sides[0].Op != expr.Name || sides[0].Unknown {
		return "", false
	}
	return sides[0].Name, true
}
