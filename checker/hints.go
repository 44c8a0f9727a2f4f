package checker

import (
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/wording"
)

// Hint words a hint about what was typed last; an empty text is no attempt yet.
// level is 1 for a question, 2 for the rule, 3 for the step itself, after which
// the step counts as shown.
func (r *Reference) Hint(a Answer, report Report, level int) string {
	if 0 < level && level <= len(report.hints) {
		return report.hints[level-1]
	}
	s, at := r.hintSubject(a, report)
	if report.used != nil && level < 3 && at == wording.OnSum {
		s.Using(*report.used)
		s.Name(report.About)
	}
	code := report.Code
	if strings.TrimSpace(expr.Clean(a.Text)) == "" {
		code = mistake.NoAttempt
	}
	hint := r.hintFor(s, report.row, code, at)
	// A force that has no component along the axis is not missing there, whatever the code says.
	named := s.Force != nil && !(code.IsAbsent() && at == wording.OnSum && s.Force.Factor(s.Axis()).Sign == 0)
	if named && hint.Slanted && !s.Force.Slanted() {
		named = false
		if at == wording.OnComponent {
			// The row's own hints are all about a triangle that this force does not have.
			hint = r.hintFor(s, nil, Unexplained, at)
		}
	}
	return s.Hint(hint, at, level, named)
}

// hintFor finds the hint of a mistake at a spot, else that of another row of its code; that of
// Unexplained where there is none. Hints about the triangle of a force serve one that lies along
// an axis only if there are no others.
func (r *Reference) hintFor(s *wording.Subject, row *mistake.Row, code Code, at wording.Spot) wording.Hint {
	var rows []*mistake.Row
	if row != nil {
		rows = append(rows, row)
	}
	for _, row := range slices.Concat(rows, r.mistakes.Rows(code), r.mistakes.Rows(Unexplained)) {
		if hint, ok := s.Pick(row.Hints, at); ok {
			return hint
		}
	}
	return wording.Hint{}
}

// hintSubject finds what a hint is about. In the value of an unknown, the
// evidence does not name the force that went wrong.
func (r *Reference) hintSubject(a Answer, report Report) (*wording.Subject, wording.Spot) {
	item := a.Item
	if report.Item != "" {
		item = report.Item
	}
	s := r.subject(a.Stage, item)
	at := map[Stage]wording.Spot{Diagram: wording.OnList, Components: wording.OnComponent, XSum: wording.OnSum, YSum: wording.OnSum, Solve: wording.OnLine}[a.Stage]
	switch a.Stage {
	case Diagram, XSum, YSum:
		if s.Body == nil || hasForce(s.Body, report.About) {
			s.Name(report.About)
		}
		if a.Stage != Diagram {
			s.Typed = r.measuredIn(a, item)
		}
		return s, at
	case Components:
		s.Typed = r.measuredIn(a, item)
		return s, at
	}
	if report.About != "" && r.solved.Model.Has(report.About) {
		s.Unknown = report.About
	}
	line, ok := r.sentenceOf(a, item)
	if !ok {
		return s, at
	}
	typed := line.subject(mistake.Finding{About: report.About, Code: report.Code})
	s.Open = typed.Open
	if typed.Valued {
		s.Unknown = typed.Unknown
		return s, wording.OnValue
	}
	s.Name(report.About)
	return s, at
}

// measuredIn finds what the terms of a typed line measure.
func (r *Reference) measuredIn(a Answer, item string) wording.Measured {
	line, ok := r.sentenceOf(a, item)
	if !ok {
		return wording.Measured{}
	}
	return line.measures()
}

// sentenceOf reads the first line of an answer for what is to be said of it.
func (r *Reference) sentenceOf(a Answer, item string) (line sentence, ok bool) {
	reading, err := r.solved.LettersFor(item).Read(a.Text)
	if err != nil {
		return line, false
	}
	return r.marking(a.Stage, item, reading.Lines[0]).sentence(), true
}
