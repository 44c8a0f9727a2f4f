package tutor

import (
	"slices"
	"strconv"

	"example.org/standstill/checker"
	"example.org/standstill/tutor/record"
)

// lastLevel is the hint that shows the step itself.
const lastLevel = 3

// topic is what hints are about: an item, and the mistake that was made last.
type topic struct {
	Place
	code  checker.Code
	force string
}

// hintLine makes the line of a hint that was given.
func (g *Page) hintLine(e record.Entry) Line {
	l := Line{ID: e.ID, Kind: Hinted, TypedIn: checker.Stage(e.Stage), Level: readLevel(e.Detail), Time: e.Time}
	l.Item = e.Item
	l.Fault = Fenced(func() {
		answer, report := g.subject(l.TypedIn, e.Item)
		l.about = topicOf(answer, report)
		l.Message = g.Ref.Hint(answer, report, l.Level)
	})
	if l.Fault != nil {
		l.Message = saidFaultHint
	}
	return l
}

// subject returns what a hint speaks about: what was typed last for the item if
// it is not right, else the item alone.
func (g *Page) subject(stage checker.Stage, item string) (checker.Answer, checker.Report) {
	general := checker.Answer{Stage: stage, Item: item}
	for i := len(g.lines) - 1; i >= 0; i-- {
		l := &g.lines[i]
		if l.Kind != Typed || l.Fault != nil || !l.isAbout(stage) {
			continue
		}
		if r, ok := l.faulty(stage, item); ok {
			return checker.Answer{Stage: stage, Item: r.Item, Text: r.Text}, r
		}
		// Only the last line counts: what was wrong before it has been corrected since.
		return general, checker.Report{}
	}
	return general, checker.Report{}
}

// isAbout reports whether something in the line was judged for a stage.
func (l *Line) isAbout(stage checker.Stage) bool {
	return slices.ContainsFunc(l.Statements(), func(r checker.Report) bool { return r.Stage == stage })
}

// faulty returns what hints for a stage can speak about in a line: the first that was
// read and is not right. For components it must be about the item.
func (l *Line) faulty(stage checker.Stage, item string) (checker.Report, bool) {
	for _, r := range l.Statements() {
		if r.Stage != stage || r.Verdict == checker.Right || r.Verdict == checker.Unread {
			continue
		}
		if stage != checker.Components || r.Item == item {
			return r, true
		}
	}
	return checker.Report{}, false
}

func topicOf(a checker.Answer, r checker.Report) topic {
	return topic{Place{a.Stage, a.Item}, r.Code, r.About}
}

// nextLevel is the level of the next hint about a topic: one above the last given,
// the last for ever.
func (g *Page) nextLevel(about topic) int {
	level := 1
	for _, l := range g.lines {
		if l.Kind == Hinted && l.about == about {
			level = min(l.Level+1, lastLevel)
		}
	}
	return level
}

// hintedItem is the item of a stage that the next hint is about: the one in hand, or another open
// one for which the last line was refused, unless the student chose the one in hand.
func (g *Page) hintedItem(stage checker.Stage, item string) string {
	last := g.lastTyped()
	if last == nil || g.chosen == (Place{stage, item}) {
		return item
	}
	if _, ok := last.faulty(stage, item); ok {
		return item
	}
	open := g.open(stage)
	for _, t := range last.tries {
		if t.at.Stage == stage && t.Verdict != checker.Right && slices.Contains(open, t.at.Item) {
			return t.at.Item
		}
	}
	return item
}

// Hint gives the next hint for the item in hand, or for the one that was typed instead, and saves
// that it was given. The third shows the step. After it the same hint is given again and nothing
// is saved. The line is nil where nothing is open.
func (l *Lesson) Hint() (*Line, error) {
	stage, item, ok := l.InHand()
	if !ok {
		return nil, nil
	}
	item = l.hintedItem(stage, item)
	about := topicOf(l.subject(stage, item))
	level := l.nextLevel(about)
	for i := len(l.lines) - 1; i >= 0; i-- {
		// Not saved again: the number of hints would grow by reading one twice.
		if last := &l.lines[i]; level == lastLevel && last.Kind == Hinted && last.about == about && last.Level == lastLevel {
			return last, nil
		}
	}
	ref := ""
	if last := l.lastTyped(); last != nil {
		ref = last.ID
	}
	return l.note(record.Entry{Kind: record.Hint, Stage: string(stage), Item: item, Ref: ref, Detail: strconv.Itoa(level)})
}

// lastTyped is the line that was typed last, nil for none.
func (g *Page) lastTyped() *Line {
	for i := len(g.lines) - 1; i >= 0; i-- {
		if g.lines[i].Kind == Typed {
			return &g.lines[i]
		}
	}
	return nil
}
