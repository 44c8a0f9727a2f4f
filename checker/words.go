package checker

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
)

// The first message about a line says where to look: at which force, which part
// of it, which sum. It never says what to write instead, because a student who
// is told "sine for cosine" turns it over without a thought.
//
// Words in braces are filled in from the problem (see phrases in this file);
// {force|each force} has, behind the bar, what is said where the evidence names
// none.

// What is said in cases that no table holds.
const (
	saidCoined         = " is a letter of your own; you can use it from here on."
	saidNoStage        = "There is no such stage."
	saidManyLines      = "This is more than 40 lines at once; check them a few at a time."
	saidTrueElsewhere  = "This is true, but it is no component; it is kept for the solving."
	saidTakenAsSize    = "Taken as a size; %s points {negative}."
	saidSignAsked      = "This is the size of %s. In your class a component is written with its sign."
	saidFigures        = "This value of %s is right as far as it goes. Here it needs %d significant figures."
	saidWorkOut        = "Worked out to a number with its unit, it will count as an answer."
	saidTwoAnswers     = "This text gives two different answers to the same question, so neither of them counts yet."
	saidWhichComponent = "Say which component this is, as in T1x = …"
	saidDiagramEmpty   = "Write the letter of each force and its direction: up, down, left, right, or two of these. Put ; between forces."
	saidStranger       = "What would have to touch or pull {body} to exert {stranger} on it?"
	saidSignTwice      = "You wrote {component} with its own minus sign, so its letter already says which way it points. {In} the direction is counted twice."
	saidSignNever      = "You wrote {component} as a size without a sign, so its letter does not say which way it points. {In} nothing else says it either."
	saidNoCoefficient  = "No coefficient of friction is given here, so the friction has to follow from the equations."
	saidSecond         = "It takes a second mistake as well."
	saidNegative       = "The digits are right, but {unknown} is a size: it says how much, not which way."
	saidBelowBar       = "Everything that follows the slash directly is taken as the denominator here. Next time, put it in brackets."
	saidBesideBar      = "Only the first factor after the slash is taken as the denominator here. Next time, use brackets to show what you mean."
	saidNewton         = "The N after the number is read as the newton, not as the normal force."
	saidNormal         = "The N after the number is read as the normal force, not as the newton."
	saidThousands      = "The comma in %s is read as marking thousands."
	saidDecimal        = "The comma in %s is read as a decimal comma."
	saidNoLetter       = "This problem has no letter %s."
	saidLetters        = "The letters here are %s."
	saidNearLetter     = "Did you mean %s?"
	saidColumn         = "Column %d: %s"
	saidNoSide         = "“%s” does not say which force points in which direction."
)

func saidUnreadable(e *expr.ReadError) string {
	return fmt.Sprintf(saidColumn, e.Pos+1, e.Message)
}

func saidDiagramForm(part string) string {
	return fmt.Sprintf(saidNoSide, shorten(part))
}

// shorten keeps a quoted piece of a student's text to the length of a line.
func shorten(text string) string {
	runes := []rune(strings.TrimSpace(text))
	if len(runes) > 40 {
		return string(runes[:39]) + "…"
	}
	return string(runes)
}

func joinSentences(a, b string) string { return strings.TrimSpace(a + " " + b) }

// saidWrong words the finding: the sentence for its code and for what was typed.
func (m *marking) saidWrong(f mistake.Finding) string {
	s := m.setting(f)
	switch {
	case f.Code == Sign && s.valued && m.minus():
		return s.fill(saidNegative)
	case f.Code == Sign:
		if text := m.saidConvention(s); text != "" {
			return text
		}
	case f.Code == ExtraForce && s.force == nil && s.stranger != "":
		return s.fill(saidStranger)
	}
	said := s.pick(f.Row, f.Code, Unexplained)
	if f.Second {
		said = joinSentences(said, saidSecond)
	}
	return said
}

// minus reports whether the value in the line has a minus sign.
func (m *marking) minus() bool {
	return slices.ContainsFunc(m.line.Sides, func(n *expr.Node) bool { return n.Op == expr.Neg && expr.IsQuantity(n) })
}

// saidAlmost words what must be mended before a right line counts.
func (m *marking) saidAlmost(code Code, about string) string {
	s := m.setting(mistake.Finding{Code: code, About: about})
	return s.pick(nil, code, HoldsAlways)
}

// saidConvention says that a sign is counted twice, or never, because of what the
// student's own component stands for. It is empty where the line has no letter of
// that component or nothing settles it.
func (m *marking) saidConvention(s *setting) string {
	if m.stage != XSum && m.stage != YSum {
		return ""
	}
	named := s.force
	for i := range m.solved.Components {
		c := &m.solved.Components[i]
		concerned := c.Force == named || named == nil && slices.Contains(s.among, c.Force.Name)
		if !concerned || &m.solved.Bodies[c.Body] != s.body || c.Axis != s.axis || !m.types(c.Name) {
			continue
		}
		s.force = c.Force
		switch bound, isSigned := m.convention(c); {
		case bound && isSigned:
			return s.fill(saidSignTwice)
		case bound:
			return s.fill(saidSignNever)
		}
	}
	s.force = named
	return ""
}

// types reports whether a letter stands in the line.
func (m *marking) types(name string) bool {
	return slices.ContainsFunc(m.line.Sides, func(n *expr.Node) bool { return n.Has(name) })
}

// pick takes the sentence of the mistake for what was typed, else that of another row of its
// code, else that of the fallback.
func (s *setting) pick(row *mistake.Row, code, fallback Code) string {
	var rows []*mistake.Row
	if row != nil {
		rows = append(rows, row)
	}
	rows = append(append(rows, s.ref.mistakes.Rows(code)...), s.ref.mistakes.Rows(fallback)...)
	for _, row := range rows {
		for _, text := range s.sentences(row.Said) {
			if text != "" {
				return s.fill(text)
			}
		}
	}
	return ""
}

// sentences lists a mistake's sentences that may serve, the best first.
func (s *setting) sentences(said mistake.Said) []string {
	switch {
	case s.stage == Diagram:
		return []string{said.List}
	case s.valued:
		return []string{said.Value}
	case s.force == nil || s.stage == Components && len(s.among) > 1:
		return []string{said.Lines, said.Line}
	case s.stage == Components:
		return []string{said.Component, said.Line}
	}
	return []string{said.Line, said.Lines}
}

// saidReading says how a text with two readings was taken.
func saidReading(reading expr.Reading, i int, report Report) string {
	line := reading.Lines[i]
	switch {
	case len(reading.Lines) < 2:
		return ""
	case line.Slash && line.Paper:
		return saidBelowBar
	case line.Slash:
		return saidBesideBar
	}
	if group := oneComma.FindString(reading.Text); group != "" {
		if hasNumber(line, strings.Replace(group, ",", "", 1)) {
			return fmt.Sprintf(saidThousands, group)
		}
		return fmt.Sprintf(saidDecimal, group)
	}
	if newtonOrNormal.MatchString(reading.Text) {
		return saidOfN(line, report)
	}
	return ""
}

// newtonOrNormal finds an N behind a number.
var newtonOrNormal = regexp.MustCompile(`\d\s*N\b`)

// oneComma finds a number such as 1,200, of which the comma has two readings.
var oneComma = regexp.MustCompile(`\b\d{1,3},\d{3}\b`)

func hasNumber(line expr.Line, text string) bool {
	found := false
	for _, side := range line.Sides {
		side.Walk(func(n *expr.Node) { found = found || n.Op == expr.Number && n.Num.Text == text })
	}
	return found
}

// saidOfN says which N was taken, where the line is not right as it was read. In
// "N = 137 N" nobody means anything but the newton.
func saidOfN(line expr.Line, report Report) string {
	newton, alone := false, false
	for _, side := range line.Sides {
		alone = alone || expr.IsQuantity(side)
		side.Walk(func(n *expr.Node) { newton = newton || n.Unit == "N" && !n.Assumed })
	}
	switch {
	case report.Verdict == Right || newton && alone:
		return ""
	case newton:
		return saidNewton
	}
	return saidNormal
}

// saidUnknownName says which letter the problem does not have, offers a near one
// and lists those that there are.
func (m *marking) saidUnknownName(name string) string {
	letter := expr.Set(shorten(name))
	if len([]rune(letter)) > 3 {
		letter = "“" + letter + "”"
	}
	text := fmt.Sprintf(saidNoLetter, letter)
	if near := m.ref.nearLetter(name); near != "" {
		text = joinSentences(text, fmt.Sprintf(saidNearLetter, expr.Set(near)))
	}
	return joinSentences(text, fmt.Sprintf(saidLetters, m.ref.letterList()))
}

// letterList names the givens, then the forces, then what else is unknown.
func (r *Reference) letterList() string {
	var names []string
	add := func(name string) {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, g := range r.solved.Givens {
		add(g.Name)
	}
	for _, b := range r.solved.Bodies {
		for _, f := range b.Forces {
			add(f.Name)
		}
	}
	for _, name := range r.solved.Unknowns() {
		add(name)
	}
	for _, e := range r.solved.Equals {
		add(e.Name)
	}
	return listed(names)
}

// listed joins letters as they stand on paper: "T₁, T₂ and w".
func listed(names []string) string {
	set := make([]string, len(names))
	for i, name := range names {
		set[i] = expr.Set(name)
	}
	if len(set) < 2 {
		return strings.Join(set, "")
	}
	return strings.Join(set[:len(set)-1], ", ") + " and " + set[len(set)-1]
}
