package checker

import (
	"regexp"
	"slices"
	"strings"

	"example.org/standstill/checker/trial"

	"example.org/standstill/checker/expr"
)

// Mark judges one typed text. before holds the same student's earlier accepted
// answers, which settle what the component letters stand for.
func (r *Reference) Mark(a Answer, before []Answer) Report {
	if r.si != nil && r.speaksSI(a) {
		return r.si.markText(a, before)
	}
	report := r.markText(a, before)
	if r.si == nil || report.Verdict == Right || report.Verdict == Unread {
		return report
	}
	if inSI := r.si.markText(a, before); better(inSI, report) {
		return inSI
	}
	return report
}

func (r *Reference) markText(a Answer, before []Answer) Report {
	if a.Stage == Diagram {
		return r.markDiagram(a)
	}
	parts := partsOf(expr.Clean(strings.ReplaceAll(a.Text, "\n", ";")))
	parts = slices.DeleteFunc(parts, func(s string) bool { return strings.TrimSpace(expr.Clean(s)) == "" })
	if len(parts) > 1 && r.isHeading(parts[0], a.Item) {
		parts = parts[1:]
	}
	if len(parts) < 2 {
		if len(parts) == 1 {
			a.Text = parts[0]
		}
		return r.markOne(a, before)
	}
	var each []Report
	for _, p := range parts {
		each = append(each, r.markOne(Answer{a.Stage, a.Item, p}, before))
	}
	return together(each)
}

// isHeading reports whether a line is "ΣFx = 0", which says what the next one is.
func (r *Reference) isHeading(text, item string) bool {
	reading, err := r.LettersFor(item).Read(text)
	if err != nil {
		return false
	}
	line := reading.Lines[0]
	return line.Axis != "" && len(line.Sides) == 1 && trial.IsZero(line.Sides[0])
}

// separators stand between several lines in one text: a semicolon, "and", or a
// comma with a space behind it; a comma inside a number is none. So does an arrow
// behind an equation; behind a letter it is an equals sign.
var (
	separators = regexp.MustCompile(`;|∴|\s+and\s+|,\s+`)
	arrows     = regexp.MustCompile(`⇒|→|=\s*>|[-−–]>`)
)

func partsOf(text string) []string {
	var parts []string
	for _, part := range separators.Split(text, -1) {
		for {
			at := arrows.FindStringIndex(part)
			if at == nil {
				break
			}
			if strings.ContainsAny(part[:at[0]], "=≈") || strings.TrimSpace(part[:at[0]]) == "" {
				parts = append(parts, part[:at[0]])
				part = part[at[1]:]
			} else {
				part = part[:at[0]] + "=" + part[at[1]:]
			}
		}
		parts = append(parts, part)
	}
	return parts
}

// together makes one report of several: right if all are, else what is said of
// the first that is not.
func together(each []Report) Report {
	all := Report{Verdict: Right}
	var read, settles []string
	for _, one := range each {
		read = append(read, one.Read)
		if all.Verdict == Right && one.Verdict != Right {
			all = one
		}
		if one.Settles != nil {
			settles = append(append([]string{}, settles...), one.Settles...)
		}
	}
	all.Settles = settles
	all.Read = strings.Join(read, "; ")
	all.Each = each
	return all
}

// markOne judges a text that is about one item.
func (r *Reference) markOne(a Answer, before []Answer) Report {
	text, turned := a.Text, angleWords{}
	if a.Stage == Solve {
		text, turned = cutAngleWords(expr.Clean(a.Text))
	}
	letters := r.LettersFor(a.Item)
	if a.Stage == Solve && r.asksForMass(a.Item) {
		letters = letters.ExpectingMass()
	}
	reading, err := letters.Read(text)
	if err != nil {
		e := err.(*expr.ReadError)
		return Report{Verdict: Unread, Code: Unreadable, Item: a.Item, Pos: e.Pos, End: e.End, Message: saidUnreadable(e)}
	}
	var best Report
	for i, line := range reading.Lines {
		m := &marking{Reference: r, stage: a.Stage, item: a.Item, line: line, before: before, turned: turned, text: reading.Text}
		report := m.mark()
		report.Read = letters.Print(line) + turned.words
		if i == 0 || better(report, best) || line.Named && report.Code == NoEquation && best.Verdict == Wrong {
			report.Message = joinSentences(report.Message, saidReading(reading, i, report))
			best = report
		}
	}
	return best
}

// better reports whether a later reading is to be preferred: one that is right, or one
// that explains what the first leaves unexplained.
func better(later, first Report) bool {
	return rankOf(later) < rankOf(first) && (later.Verdict == Right || rankOf(first) > rankOf(Report{Verdict: Wrong}))
}

func rankOf(a Report) int {
	rank := slices.Index([]Verdict{Right, Almost, Wrong, Unread}, a.Verdict) * 2
	if a.Code == Unexplained || a.Code == DoesNotFollow {
		rank++
	}
	return rank
}

// asksForMass reports whether a number without a name would be a mass.
func (r *Reference) asksForMass(item string) bool {
	if item == "" && len(r.Find) == 1 {
		item = r.Find[0]
	}
	return r.Readers[""].Kind(item) == expr.Mass
}

// marking is the judgement of one reading of one line.
type marking struct {
	*Reference
	stage  Stage
	item   string
	line   expr.Line
	before []Answer
	turned angleWords
	text   string
}

func (m *marking) mark() Report {
	if stranger := m.stranger(); stranger != nil {
		return m.markStranger(stranger)
	}
	if side := m.worthless(); side != nil {
		return Report{Verdict: Unread, Code: Unreadable, Item: m.item, Pos: side.Pos, End: side.End, Message: expr.SaidNoValue}
	}
	switch m.stage {
	case Components:
		return m.markComponent()
	case XSum, YSum:
		return m.markSum()
	case Solve:
		return m.markSolve()
	}
	return Report{Verdict: Unread, Code: Unreadable, Message: saidNoStage}
}

func (m *marking) wrong(f finding) Report {
	report := Report{Verdict: Wrong, Code: f.code, About: f.about, Item: m.item}
	report.Message = m.saidWrong(f)
	report.Pos, report.End = m.where(f)
	return report
}

func (m *marking) almost(code Code, about string) Report {
	return Report{Verdict: Almost, Code: code, About: about, Item: m.item, Message: m.saidAlmost(code, about)}
}

func (m *marking) right() Report {
	report := Report{Verdict: Right, Item: m.item}
	if m.stage == Solve {
		report.Settles = []string{}
	}
	return report
}

// conventions returns what the component letters of the line may stand for: what
// the student's earlier components settle; for the rest sizes throughout, or
// signed components throughout.
func (m *marking) conventions() []trial.Signed {
	uses := false
	for _, side := range m.line.Sides {
		for _, name := range side.Names() {
			if _, ok := m.Component(name); ok {
				uses = true
			}
		}
	}
	if !uses {
		return []trial.Signed{nil}
	}
	sizes, all := make(trial.Signed, len(m.Components)), make(trial.Signed, len(m.Components))
	for i := range m.Components {
		bound, isSigned := m.convention(&m.Components[i])
		sizes[i], all[i] = bound && isSigned, !bound || isSigned
	}
	if slices.Equal(sizes, all) {
		return []trial.Signed{sizes}
	}
	return []trial.Signed{sizes, all}
}

// convention finds what an earlier answer made of a component that points to the
// negative side; a component that points to the positive side leaves it open.
func (m *marking) convention(c *trial.Component) (bound, isSigned bool) {
	for _, a := range m.before {
		if a.Stage != Components || c.Term.Scale >= 0 && c.Term.Angle == nil {
			continue
		}
		for _, part := range strings.Split(a.Text, ";") {
			reading, err := m.LettersFor(a.Item).Read(part)
			if err != nil {
				continue
			}
			sub := &marking{Reference: m.Reference, stage: Components, item: a.Item, line: reading.Lines[0]}
			if found, side := sub.asked(); found == nil || found.Name != c.Name || side == nil {
				continue
			} else if v, same := m.signOf(c, side); same {
				return true, v
			}
		}
	}
	return false, false
}

// signOf reports whether an accepted component was written with its sign; same
// is false where size and signed component are one.
func (m *marking) signOf(c *trial.Component, side *expr.Node) (isSigned, same bool) {
	env := m.Free(0, "", 0)
	m.Fill(env, nil)
	value := c.Term.Value(env)
	if value >= 0 {
		return false, false
	}
	typed := m.ProgramOf(side).Run(env)
	return typed < 0, typed != 0
}

// speaksSI reports whether a bare number of the text is a known value in SI and
// none in the problem's own units: 3500 where 3.5 kN is given.
func (r *Reference) speaksSI(a Answer) bool {
	for _, part := range partsOf(expr.Clean(a.Text)) {
		reading, err := r.LettersFor(a.Item).Read(part)
		if err != nil {
			continue
		}
		for _, side := range reading.Lines[0].Sides {
			found := false
			side.Walk(func(n *expr.Node) {
				if n.Op == expr.Number && n.Unit == "" && !trial.Structural(n) {
					own, _ := r.Literal(n)
					si, _ := r.si.Literal(n)
					found = found || own.Givens == 0 && si.Givens != 0
				}
			})
			if found {
				return true
			}
		}
	}
	return false
}
