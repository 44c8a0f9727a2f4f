package class

import (
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/summary"
)

// understand adds what the page of an attempt says of ideas.
func (s *sheeting) understand(a *Attempt) {
	s.past.Pages = append(s.past.Pages, tutor.PastOf(a.Attempt, a.Page))
}

// understandings are the ideas that the student has had a chance at.
func (s *sheeting) understandings() (all []summary.Understanding) {
	for _, held := range s.past.Ideas() {
		if len(held.Chances) == 0 {
			continue
		}
		one := summary.Understanding{Idea: held.Idea, State: held.State, Chances: len(held.Chances)}
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
func ideasOf(rows []summary.Row) (columns []summary.IdeaColumn) {
	for _, idea := range tutor.Ideas() {
		c := summary.IdeaColumn{Idea: idea}
		for _, row := range rows {
			switch row.StateOf(idea) {
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
