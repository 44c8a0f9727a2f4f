package bench

import (
	"strconv"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
)

// choose has the students choose the problem that is built like their apparatus: a topic,
// then one of its problems, or an id at once.
func (g *Guide) choose() (*problems.Problem, error) {
	var topics []string
	sections := tutor.SectionsOf(g.Tutor.Bank, nil)
	for _, section := range sections {
		topics = append(topics, section.Title)
	}
	for {
		line, topic, err := g.pick(saidChooseTopic, topics)
		if err != nil {
			return nil, err
		}
		if topic >= 0 {
			var titles []string
			list := sections[topic].Problems
			for _, h := range list {
				titles = append(titles, h.Title+" ("+h.ID+")")
			}
			at := 0
			if line, at, err = g.pick(saidChooseProblem, titles); err != nil {
				return nil, err
			}
			if at >= 0 {
				line = list[at].ID
			}
		}
		// An id at either question leads straight to the problem.
		if p, err := g.Tutor.Bank.Get(expr.Clean(line)); err == nil {
			return p, nil
		}
	}
}

// pick lists things and takes the number of one of them, or a line that is none: −1.
func (g *Guide) pick(question string, of []string) (line string, at int, err error) {
	g.say(question)
	for i, one := range of {
		g.say(strconv.Itoa(i+1) + ". " + one)
	}
	line, err = g.ask()
	n, bad := strconv.Atoi(strings.TrimSuffix(line, "."))
	if bad != nil || n < 1 || n > len(of) {
		n = 0
	}
	return line, n - 1, err
}
