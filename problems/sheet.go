package problems

import (
	"go.yaml.in/yaml/v4"
)

// Sheet reads a file that somebody writes by hand, as strictly as a problem file:
// text in UTF-8, keys that are known, values written out, each complaint with its
// line and column. What is wrong is gathered; reading goes on. Holds says what such
// a file holds ("class"), Begins is a line that it could begin with.
type Sheet struct {
	Name, Holds, Begins string
	r                   *reader
}

// Keys are the keys of a part of a file, with an example of it.
type Keys struct {
	Needed, Optional []string
	Example          string
}

// Read reads the bytes as keys with values; nil if they are none.
func (s *Sheet) Read(data []byte) *yaml.Node {
	s.r = &reader{name: s.Name, sheet: s}
	return s.r.document(data)
}

// Found lists what is wrong, by line.
func (s *Sheet) Found() Findings {
	s.r.found.sort()
	return s.r.found
}

// At notes that something is wrong with a value.
func (s *Sheet) At(n *yaml.Node, what, expected string) { s.r.at(n, what, expected) }

// Fields reads a part with fixed keys.
func (s *Sheet) Fields(n *yaml.Node, what string, keys Keys) map[string]*yaml.Node {
	return s.r.fields(n, what, section{keys.Needed, keys.Optional, keys.Example}).values
}

// List returns the items of a list; none for nil.
func (s *Sheet) List(n *yaml.Node, what, example string) []*yaml.Node {
	return s.r.list(n, what, example)
}

// Word returns a value that is one line of text; ok is false for nil, and for
// anything else, which is noted.
func (s *Sheet) Word(n *yaml.Node, what, example string) (text string, ok bool) {
	return s.r.word(n, what, example)
}

// OneOf returns a word of a list of known ones, and offers the nearest for another.
func (s *Sheet) OneOf(n *yaml.Node, what string, known []string) (word string, ok bool) {
	return s.r.oneOf(n, what, known)
}

func (r *reader) holds() string {
	if r.sheet != nil {
		return r.sheet.Holds
	}
	return "problem"
}

func (r *reader) begins() string {
	if r.sheet != nil {
		return r.sheet.Begins
	}
	return problemKeys.example
}
