package class

import (
	"cmp"
	"encoding/json"
	"slices"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

// An entry that came again with another content is kept beside the first, in a note:
// which of them counts must not depend on which came first.

// noteOf packs the content that was not kept as the text of a note.
func noteOf(e record.Entry) string {
	if runes := []rune(e.Text); len(runes) > tutor.LongestText {
		e.Text = string(runes[:tutor.LongestText])
	}
	data, err := json.Marshal(e)
	if err != nil {
		return ""
	}
	return string(data)
}

// settled gives a student's entries with one content of each.
func (m *Markbook) settled(student string, entries []record.Entry) []record.Entry {
	return (&sheeting{markbook: m, student: student}).settle(entries)
}

// settle leaves one content of each entry: the earlier by its own time. Of two of the
// same time neither counts as an answer, until the teacher accepts one of them.
func (s *sheeting) settle(entries []record.Entry) []record.Entry {
	contents := map[string][]record.Entry{}
	for _, e := range entries {
		if e.Kind == record.Noted {
			var other record.Entry
			if e.Detail == string(summary.EntryChanged) && json.Unmarshal([]byte(e.Text), &other) == nil && other.ID == e.Ref {
				contents[e.Ref] = append(contents[e.Ref], other)
			}
			continue
		}
		contents[e.ID] = append(contents[e.ID], e)
	}
	chosen := map[string]string{}
	for _, e := range entries {
		// An acceptance with a text chooses one content of an entry.
		if e.Kind == record.Accepted && e.Text != "" && s.markbook.mine[e.Record] {
			chosen[e.Ref] = e.Text
		}
	}
	var settled []record.Entry
	for _, e := range entries {
		all := contents[e.ID]
		switch {
		case e.Kind == record.Noted || len(all) == 1:
			settled = append(settled, e)
		case all != nil:
			// Each entry once, at the place where it was met first.
			delete(contents, e.ID)
			if one, ok := s.choose(all, chosen[e.ID]); ok {
				settled = append(settled, one)
			}
		}
	}
	return settled
}

func (s *sheeting) choose(all []record.Entry, chosen string) (one record.Entry, ok bool) {
	for i := range all {
		all[i].Student = s.student // however the id was written
	}
	slices.SortFunc(all, func(a, b record.Entry) int {
		return cmp.Or(a.Time.Compare(b.Time), cmp.Compare(noteOf(a), noteOf(b)))
	})
	all = slices.Compact(all)
	if len(all) == 1 {
		return all[0], true
	}
	texts := summary.Quoted(all[0].Text) + ", " + summary.Quoted(all[1].Text)
	tied := all[0].Time.Equal(all[1].Time) && all[0].Kind == record.Answer
	if tied {
		for _, e := range all {
			if e.Text == chosen {
				return e, true
			}
		}
		s.remark(summary.EntryUnsettled, all[0].Problem, "", summary.ShortID(all[0].ID)+": "+texts, 1)
		return one, false
	}
	s.remark(summary.EntryChanged, all[0].Problem, "", texts, 1)
	return all[0], true
}
