package checker_test

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"example.org/standstill/checker"
)

// tally counts the judgements of a search.
type tally struct {
	right, wrong, rejects, accepts, almost, panics, slow, unsettled int
	confusion                                                       map[string]map[checker.Code]int
	found                                                           []string
}

func (y *tally) note(format string, a ...any) { y.found = append(y.found, fmt.Sprintf(format, a...)) }

// table prints which code was given for which mistake.
func (y *tally) table() string {
	var b strings.Builder
	b.WriteString("mistake made: codes given\n")
	var names []string
	for name := range y.confusion {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		fmt.Fprintf(&b, "%-22s", name)
		var given []string
		for code := range y.confusion[name] {
			given = append(given, string(code))
		}
		sort.Slice(given, func(i, j int) bool {
			return y.confusion[name][checker.Code(given[i])] > y.confusion[name][checker.Code(given[j])]
		})
		for _, code := range given {
			fmt.Fprintf(&b, " %s %d", code, y.confusion[name][checker.Code(code)])
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// expectRight marks a right text.
func (s *search) expectRight(stage checker.Stage, item, text string, settles []string) {
	report, ok := s.mark(stage, item, text)
	s.tally.right++
	if !ok {
		return
	}
	what := s.told() + fmt.Sprintf("%s %s %s %q: %s %s about %q, settles %v, read %q", s.id, stage, item, text, report.Verdict, report.Code, report.About, report.Settles, report.Read)
	switch {
	case report.Verdict == checker.Almost:
		s.tally.almost++
		s.tally.note("refused(almost) %s", what)
	case report.Verdict != checker.Right:
		s.tally.rejects++
		s.tally.note("refused %s", what)
	case settles != nil && !slices.Equal(report.Settles, settles):
		s.tally.unsettled++
		s.tally.note("settles %s, not %v", what, settles)
	}
}

// told prints the earlier answers, if there are any.
func (s *search) told() string {
	var texts []string
	for _, a := range s.before {
		texts = append(texts, a.Item+" = "+a.Text)
	}
	if texts == nil {
		return ""
	}
	return "after " + strings.Join(texts, "; ") + ": "
}

// expectWrong marks a wrong text.
func (s *search) expectWrong(stage checker.Stage, item, text string, m mistake) {
	report, ok := s.mark(stage, item, text)
	s.tally.wrong++
	if !ok {
		return
	}
	what := s.told() + fmt.Sprintf("%s %s %s %q: %s %s about %q, read %q; made %v about %q", s.id, stage, item, text, report.Verdict, report.Code, report.About, report.Read, m.codes, m.about)
	if report.Verdict == checker.Right || report.Verdict == checker.Almost || report.Verdict == checker.Unread {
		s.tally.accepts++
		s.tally.note("accepted %s", what)
		return
	}
	made := "none of the table"
	if len(m.codes) > 0 {
		made = string(m.codes[0])
	}
	if s.tally.confusion[made] == nil {
		s.tally.confusion[made] = map[checker.Code]int{}
	}
	if slices.Contains(m.codes, report.Code) {
		s.tally.confusion[made]["(as expected)"]++
	} else {
		s.tally.confusion[made][report.Code]++
		s.tally.note("code %s", what)
	}
}
