package tutor

import (
	"slices"

	"example.org/standstill/checker"
	"example.org/standstill/checker/statics"
)

// Item is one thing that a stage asks for. Name is "" where the stage asks for
// one thing only. Disputed says that only a line which the student disputes against our
// judgement stands for it.
type Item struct {
	Name     string
	Done     bool
	Disputed bool
}

// asked lists what a stage asks for. A sum that no force has a part in is not
// asked: there is nothing to write.
func (g *Page) asked(stage checker.Stage) []string {
	items := g.Ref.Items(stage)
	axis, isSum := map[checker.Stage]statics.Axis{checker.XSum: statics.X, checker.YSum: statics.Y}[stage]
	if !isSum {
		return items
	}
	return slices.DeleteFunc(items, func(name string) bool {
		body, ok := g.Problem.System.Body(name)
		return ok && body.Sum(axis) == nil
	})
}

// Items lists what a stage asks for, in order.
func (g *Page) Items(stage checker.Stage) []Item {
	asked := g.asked(stage)
	items := make([]Item, len(asked))
	for i, name := range asked {
		items[i] = Item{Name: name, Disputed: true}
		for _, line := range g.lines {
			if line.covers(Place{stage, name}) {
				items[i].Done = true
				items[i].Disputed = items[i].Disputed && line.onlyDisputed()
			}
		}
		items[i].Disputed = items[i].Disputed && items[i].Done
	}
	return items
}

// open lists the items of a stage that are not done, by name.
func (g *Page) open(stage checker.Stage) []string {
	var names []string
	for _, item := range g.Items(stage) {
		if !item.Done {
			names = append(names, item.Name)
		}
	}
	return names
}

// InHand returns the stage and item that the next line is taken for; ok is false
// once every stage is done.
func (g *Page) InHand() (stage checker.Stage, item string, ok bool) {
	for _, stage := range checker.Stages {
		open := g.open(stage)
		if len(open) == 0 || stage == checker.Components && g.passed {
			continue
		}
		// A choice holds until its item is done or the stage is over.
		if g.chosen.Stage == stage && slices.Contains(open, g.chosen.Item) {
			return stage, g.chosen.Item, true
		}
		return stage, open[0], true
	}
	return "", "", false
}

// StageDone reports whether nothing of a stage is left to do: it is done, or it was
// passed over.
func (g *Page) StageDone(stage checker.Stage) bool {
	return len(g.open(stage)) == 0 || stage == checker.Components && g.passed
}

// PassedOver reports whether Components were passed over.
func (g *Page) PassedOver() bool { return g.passed }

// Nothing reports whether a stage asks for nothing in this problem.
func (g *Page) Nothing(stage checker.Stage) bool { return len(g.asked(stage)) == 0 }

// Choose takes up an open item of the stage in hand out of turn. It reports
// whether there is such an item.
func (g *Page) Choose(item string) bool {
	stage, _, ok := g.InHand()
	if !ok || !slices.Contains(g.open(stage), item) {
		return false
	}
	g.chosen = Place{stage, item}
	return true
}

// Place is one item of one stage.
type Place struct {
	Stage checker.Stage
	Item  string
}
