package tutor

import (
	"time"

	"example.org/standstill/problems"
)

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
