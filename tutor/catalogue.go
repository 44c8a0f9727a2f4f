package tutor

import (
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
)

// Progress is how a student stands with one problem: the best of all attempts.
// Stage is the one in hand of the attempt that is not finished, "" if there is
// none. The counts are those of the best attempt.
type Progress struct {
	Status     Status
	Stage      checker.Stage
	Attempts   int
	Items      int // answered
	RightFirst int // of these, right first time
	Lines      int // checked
	Refused    int // of these, wrong or almost right
	Hints      int
	StepsShown int
}

// Section is one topic with its problems, in order of level.
type Section struct {
	problems.Topic
	Problems []Listed
}

// Listed is one problem of the list with how the student stands with it.
// Due is the date of a set problem, zero for none.
type Listed struct {
	problems.Heading
	Progress
	Due time.Time
}

// Sections lists every problem of the bank by topic and level, topics without
// problems left out. What is set for the class stands before them once more.
func (d *Desk) Sections() []Section {
	if set, ok := d.setWork(); ok {
		return append([]Section{set}, d.topics()...)
	}
	return d.topics()
}

// topics are the sections of the topics.
func (d *Desk) topics() []Section { return SectionsOf(d.tutor.Bank, d.Progress) }

// SectionsOf are the problems of a bank by topic, with how somebody stands with each; nil
// for nobody.
func SectionsOf(bank *problems.Bank, progress func(id string) Progress) (sections []Section) {
	at := map[string]int{}
	for _, h := range bank.List() {
		if _, known := at[h.Topic]; !known {
			at[h.Topic] = len(sections)
			sections = append(sections, Section{Topic: problems.Topic{ID: h.Topic, Title: TopicTitle(h.Topic)}})
		}
		listed := Listed{Heading: h}
		if progress != nil {
			listed.Progress = progress(h.ID)
		}
		section := &sections[at[h.Topic]]
		section.Problems = append(section.Problems, listed)
	}
	return sections
}

// TopicTitle is what a topic is called; its id where it is not known.
func TopicTitle(id string) string {
	for _, t := range problems.Topics() {
		if t.ID == id {
			return t.Title
		}
	}
	return id
}

// Progress says how the student stands with a problem.
func (d *Desk) Progress(id string) Progress {
	var best Progress
	stage := checker.Stage("")
	for _, a := range d.history.Of(id) {
		page, err := d.pageOf(a)
		if err != nil {
			continue
		}
		// Of equals, the later attempt.
		if now := page.Progress(); now.Status >= best.Status {
			best = now
		}
		stage = ""
		if !page.Over() {
			stage, _, _ = page.InHand()
		}
	}
	best.Stage, best.Attempts = stage, len(d.history.Of(id))
	return best
}

// Progress says how far the page has come.
func (g *Page) Progress() Progress {
	p := Progress{Status: g.status(), Attempts: 1}
	p.Hints, p.StepsShown = g.Hints()
	p.RightFirst, p.Items = g.RightFirst()
	for _, l := range g.lines {
		switch {
		case l.Kind != Typed || l.Verdict == checker.Unread:
		case l.Verdict == checker.Right:
			p.Lines++
		default:
			p.Lines++
			p.Refused++
		}
	}
	if !g.Over() {
		p.Stage, _, _ = g.InHand()
	}
	return p
}
