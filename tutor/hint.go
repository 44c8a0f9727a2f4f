package tutor

import (
	"strconv"

	"example.org/standstill/checker"
	"example.org/standstill/tutor/record"
)

// lastLevel is the hint that shows the step itself.
const lastLevel = 3

// topic is what hints are about: an item, and the mistake that was made last.
type topic struct {
	place
	code  checker.Code
	force string
}

// hintLine makes the line of a hint that was given.
func (g *Page) hintLine(e record.Entry) Line {
	l := Line{ID: e.ID, Kind: Hinted, Stage: checker.Stage(e.Stage), Level: readLevel(e.Detail), Time: e.Time}
	answer, report := g.subject(l.Stage, e.Item)
	l.about = topicOf(answer, report)
	l.Item = e.Item
	l.Message = g.Ref.Hint(answer, report, l.Level)
	return l
}

// subject returns what a hint speaks about: what was typed last for the item if
// it is not right, else the item alone.
func (g *Page) subject(stage checker.Stage, item string) (checker.Answer, checker.Report) {
	general := checker.Answer{Stage: stage, Item: item}
	for i := len(g.lines) - 1; i >= 0; i-- {
		l := &g.lines[i]
		if l.Kind != Typed || l.Stage != stage {
			continue
		}
		part, text, ok := l.faulty(item)
		if !ok {
			return general, checker.Report{}
		}
		return checker.Answer{Stage: stage, Item: part.Item, Text: text}, part
	}
	return general, checker.Report{}
}

// faulty returns the part of a line that hints can speak about: the first that was
// read and is not right. For components it must be about the item.
func (l *Line) faulty(item string) (report checker.Report, text string, ok bool) {
	parts := l.Each
	if parts == nil {
		parts = []checker.Report{l.Report}
	}
	for i, p := range parts {
		if p.Verdict == checker.Right || p.Verdict == checker.Unread {
			continue
		}
		if l.Stage == checker.Components && p.Item != item {
			continue
		}
		return p, l.pieces[i], true
	}
	return checker.Report{}, "", false
}

func topicOf(a checker.Answer, r checker.Report) topic {
	return topic{place{a.Stage, a.Item}, r.Code, r.About}
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

// Hint gives the next hint for the item in hand and keeps that it was given. The
// third shows the step. After it the same hint is given again and nothing is kept.
// The line is nil where nothing is open.
func (l *Lesson) Hint() (*Line, error) {
	stage, item, ok := l.InHand()
	if !ok {
		return nil, nil
	}
	about := topicOf(l.subject(stage, item))
	level := l.nextLevel(about)
	for i := len(l.lines) - 1; i >= 0; i-- {
		if last := &l.lines[i]; level == lastLevel && last.Kind == Hinted && last.about == about && last.Level == lastLevel {
			return last, nil
		}
	}
	return l.note(record.Entry{Kind: record.Hint, Stage: string(stage), Item: item, Ref: l.lastTyped(), Detail: strconv.Itoa(level)})
}

// lastTyped is the entry of the line that was typed last, "" for none.
func (l *Lesson) lastTyped() string {
	for i := len(l.lines) - 1; i >= 0; i-- {
		if l.lines[i].Kind == Typed {
			return l.lines[i].ID
		}
	}
	return ""
}
