package checker

import (
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/statics"
)

// Three hints for each mistake, each asked for after the one before: a question
// that makes the student look at the right place; the rule, with the force and
// the side concerned; the step itself. The first two hold no expression, so that
// there is nothing to copy.

// usualSteps are the third hints.
var usualSteps = map[mistake.Spot]string{
	mistake.OnComponent: "{step}",
	mistake.OnSum:       "{Along}{for}: {equation}.",
	mistake.OnLine:      "With the numbers: {numbers}.",
	mistake.OnValue:     "With the numbers: {numbers}.",
	mistake.OnList:      "On {body}: {diagram}.",
}

// Hint words a hint about what was typed last; an empty text is no attempt yet.
// level is 1 for a question, 2 for the rule, 3 for the step itself, after which
// the step counts as shown.
func (r *Reference) Hint(a Answer, report Report, level int) string {
	s, at := r.hintSetting(a, report)
	code := report.Code
	if strings.TrimSpace(expr.Clean(a.Text)) == "" {
		code = mistake.NoAttempt
	}
	row := r.hintFor(code, at)
	named := s.force != nil && !(code == MissingForce && at == mistake.OnSum && s.force.Factor(s.axis).Sign == 0)
	if named && row.Slanted && !s.force.Slanted() {
		named = false
		if at == mistake.OnComponent {
			row = r.hintFor(Unexplained, at)
		}
	}
	if level >= 3 {
		if row.Step != "" {
			return s.fill(row.Step)
		}
		return s.fill(usualSteps[at])
	}
	text := row.Ask
	switch {
	case level == 2 && !named && row.RuleAny != "":
		text = row.RuleAny
	case level == 2:
		text = row.Rule
	case !named && row.AskAny != "":
		text = row.AskAny
	}
	return s.fill(text)
}

// hintFor finds the hint of a code at a spot; that of Unexplained where there is none.
func (r *Reference) hintFor(code Code, at mistake.Spot) mistake.Hint {
	for _, row := range append(r.mistakes.Rows(code), r.mistakes.Rows(Unexplained)...) {
		for _, hint := range row.Hints {
			if hint.At&at != 0 {
				return hint
			}
		}
	}
	return mistake.Hint{}
}

// hintSetting finds what a hint is about. In the value of an unknown, the
// evidence does not name the force that went wrong.
func (r *Reference) hintSetting(a Answer, report Report) (*setting, mistake.Spot) {
	item := a.Item
	if report.Item != "" {
		item = report.Item
	}
	s := r.setting(a.Stage, item)
	at := map[Stage]mistake.Spot{Diagram: mistake.OnList, Components: mistake.OnComponent, XSum: mistake.OnSum, YSum: mistake.OnSum, Solve: mistake.OnLine}[a.Stage]
	switch a.Stage {
	case Diagram, XSum, YSum:
		if s.body == nil || hasForce(s.body, report.About) {
			s.about(report.About)
		}
		return s, at
	case Components:
		return s, at
	}
	if report.About != "" && r.solved.Has(report.About) {
		s.unknown = report.About
	}
	reading, err := r.solved.LettersFor(item).Read(a.Text)
	if err != nil {
		return s, at
	}
	m := r.marking(Solve, item, reading.Lines[0])
	typed := m.setting(mistake.Finding{About: report.About, Code: report.Code})
	s.open = typed.open
	if typed.valued {
		s.unknown = typed.unknown
		return s, mistake.OnValue
	}
	s.about(report.About)
	return s, at
}

func hasForce(b *statics.Body, name string) bool { _, ok := b.Force(name); return ok }
