package bench

import (
	"strconv"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/problems"
)

// choose has the students choose the problem that is built like their apparatus.
func (g *Guide) choose() (*problems.Problem, error) {
	var topics []string
	byTopic := map[string][]problems.Heading{}
	for _, h := range g.Tutor.Bank.List() {
		if byTopic[h.Topic] == nil {
			topics = append(topics, h.Topic)
		}
		byTopic[h.Topic] = append(byTopic[h.Topic], h)
	}
	for {
		g.say(saidChooseTopic)
		for i, topic := range topics {
			g.say(strconv.Itoa(i+1) + ". " + titleOf(topic))
		}
		line, err := g.ask()
		if err != nil {
			return nil, err
		}
		if p, err := g.Tutor.Bank.Get(line); err == nil {
			return p, nil
		}
		i, err := strconv.Atoi(strings.TrimSuffix(line, "."))
		if err != nil || i < 1 || i > len(topics) {
			continue
		}
		if p, err := g.chooseFrom(byTopic[topics[i-1]]); p != nil || err != nil {
			return p, err
		}
	}
}

func titleOf(topic string) string {
	for _, t := range problems.Topics() {
		if t.ID == topic {
			return t.Title
		}
	}
	return topic
}

func (g *Guide) chooseFrom(list []problems.Heading) (*problems.Problem, error) {
	for i, h := range list {
		g.say(strconv.Itoa(i+1) + ". " + h.Title + " (" + h.ID + ")")
	}
	g.say(saidChooseProblem)
	line, err := g.ask()
	if err != nil {
		return nil, err
	}
	id := expr.Clean(line)
	if i, err := strconv.Atoi(strings.TrimSuffix(line, ".")); err == nil && i >= 1 && i <= len(list) {
		id = list[i-1].ID
	}
	p, err := g.Tutor.Bank.Get(id)
	if err != nil {
		return nil, nil
	}
	return p, nil
}
