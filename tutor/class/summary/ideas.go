package summary

import (
	"strings"

	"example.org/standstill/tutor"
)

// Understanding is how far a student has come with one idea, from the set work that
// counts: Right of the Chances were right.
type Understanding struct {
	Idea    tutor.Idea      `json:"idea"`
	State   tutor.IdeaState `json:"state"`
	Chances int             `json:"chances"`
	Right   int             `json:"right"`
	Slipped string          `json:"slipped,omitempty"` // the problem where it went wrong last
}

// IdeaColumn is one idea with who has come how far: names in the order of the list.
type IdeaColumn struct {
	tutor.Idea
	Steady, Learning, Slipping, New []string // ids
}

// StateOf is how far a student has come with an idea, "" where there was no chance.
func (r *Row) StateOf(idea tutor.Idea) tutor.IdeaState {
	for _, one := range r.Ideas {
		if one.Idea == idea {
			return one.State
		}
	}
	return ""
}

// MarkOf is the letter of a state in a table; what it means stands below.
func MarkOf(state tutor.IdeaState) string {
	switch state {
	case tutor.Steady:
		return "s"
	case tutor.Learning:
		return "l"
	case tutor.Slipping:
		return "!"
	case tutor.NewIdea:
		return "n"
	}
	// No chance at it yet, which is not the same as new.
	return "-"
}

// names are students' names with commas between them.
func (r *Report) names(ids []string) string {
	all := make([]string, len(ids))
	for i, id := range ids {
		all[i] = r.nameOf(id)
	}
	return strings.Join(all, ", ")
}
