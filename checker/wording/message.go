package wording

import (
	"slices"

	"example.org/standstill/checker/solved"
)

// Said holds what is said first, by what was typed: a component; a term of a sum or of a line
// of working (about one force); the line where several forces or none are named; the value of
// an unknown; a force diagram. Negative is for a value with a minus sign, SignTwice and SignNever
// for a letter that an earlier line made a signed component or a size, Stranger for a force that
// the problem does not have, NoForce for a letter that is none, Instead for a component in a diagram
// in the place of its force. Words in braces are filled in from the problem. An empty sentence is
// taken from the row of Unexplained.
type Said struct {
	Component, Line, Lines, Value, List      string
	Negative, SignTwice, SignNever, Stranger string
	NoForce, Instead                         string
}

// Line words what is to be said of a line: the first of the texts that serves for what was typed.
// What holds of the line as it was written, whatever its mistake, comes first; asWritten is then
// the text before it was filled in.
func (s *Subject) Line(all []Said) (text, asWritten string) {
	for _, said := range all {
		if raw := s.asWritten(said); raw != "" {
			return s.Fill(raw), raw
		}
	}
	for _, said := range all {
		for _, text := range s.sentences(said) {
			if text != "" {
				return s.Fill(text), ""
			}
		}
	}
	return "", ""
}

// asWritten takes the sentence for a value with a minus sign, for a letter that already has its
// sign or has none, and for a force that the problem does not have.
func (s *Subject) asWritten(said Said) string {
	switch {
	case s.Valued && s.Minus && said.Negative != "":
		return said.Negative
	// Even if this gives nothing: the other sentences of such a row depend on the same letters.
	case said.SignTwice != "":
		return s.ofLetter(said)
	case s.NoForce && said.NoForce != "":
		return said.NoForce
	case s.Instead && said.Instead != "":
		return said.Instead
	case s.Force == nil && s.Stranger != "" && said.Stranger != "":
		return said.Stranger
	}
	return ""
}

// ofLetter says that a sign is counted twice, or never, because of what the student's own
// component stands for. It is empty where the line has no letter of a force concerned.
func (s *Subject) ofLetter(said Said) string {
	for _, c := range s.Letters {
		concerned := c.Force == s.Force || s.Force == nil && slices.Contains(s.Among, c.Force.Name)
		if !concerned || &s.solved.Bodies[c.Body] != s.Body || c.Component.Axis != s.axis {
			continue
		}
		// Both sentences name the force, and the evidence may have named none.
		s.Force = c.Force
		if c.IsSigned {
			return said.SignTwice
		}
		return said.SignNever
	}
	return ""
}

// sentences lists a mistake's sentences that may serve, the best first.
func (s *Subject) sentences(said Said) []string {
	switch {
	case s.Stage == solved.Diagram:
		return []string{said.List}
	case s.Valued:
		return []string{said.Value}
	// A sentence about one force would blame it alone for a line in which several are concerned.
	case s.Force == nil || s.Stage == solved.Components && len(s.Among) > 1:
		return []string{said.Lines, said.Line}
	case s.Stage == solved.Components:
		return []string{said.Component, said.Line}
	}
	return []string{said.Line, said.Lines}
}
