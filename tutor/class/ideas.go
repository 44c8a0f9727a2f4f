package class

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

// understand adds what the page of an attempt says of ideas.
func (s *sheeting) understand(a *Attempt) {
	s.past.Pages = append(s.past.Pages, tutor.PastOf(a.Attempt, a.Page))
}

// understandings are the ideas that the student has had a chance at.
func (s *sheeting) understandings() (all []Understanding) {
	for _, held := range s.past.Ideas() {
		if len(held.Chances) == 0 {
			continue
		}
		one := Understanding{Idea: held.Idea, State: held.State, Chances: len(held.Chances)}
		for _, c := range held.Chances {
			if c.Right {
				one.Right++
			}
		}
		if c, ok := held.Slipped(); ok {
			one.Slipped = c.Problem
		}
		all = append(all, one)
	}
	return all
}

// ideasOf sums up who has come how far with the ideas that somebody had a chance at.
func ideasOf(rows []Row) (columns []IdeaColumn) {
	for _, idea := range tutor.Ideas() {
		c := IdeaColumn{Idea: idea}
		for _, row := range rows {
			switch row.stateOf(idea) {
			case tutor.Steady:
				c.Steady = append(c.Steady, row.ID)
			case tutor.Learning:
				c.Learning = append(c.Learning, row.ID)
			case tutor.Slipping:
				c.Slipping = append(c.Slipping, row.ID)
			case tutor.NewIdea:
				c.New = append(c.New, row.ID)
			}
		}
		if len(c.Steady)+len(c.Learning)+len(c.Slipping)+len(c.New) > 0 {
			columns = append(columns, c)
		}
	}
	return columns
}

// stateOf is how far a student has come with an idea, "" where there was no chance.
func (r *Row) stateOf(idea tutor.Idea) tutor.IdeaState {
	for _, one := range r.Ideas {
		if one.Idea == idea {
			return one.State
		}
	}
	return ""
}

// markOf is the letter of a state in a table; what it means stands below.
func markOf(state tutor.IdeaState) string {
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
