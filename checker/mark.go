package checker

import (
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/lines"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/trial"
	"example.org/standstill/checker/wording"
)

// Mark judges one typed text, each of its lines for the stage of the answer. before
// holds the same student's earlier accepted answers, which settle what the component
// letters stand for; what is right in the text joins them for the lines behind it.
func (r *Reference) Mark(a Answer, before []Answer) Report {
	if a.Stage == Diagram {
		return r.markDiagram(a)
	}
	all, ok := r.Lines(a)
	switch {
	case !ok:
		return Report{Verdict: Unread, Code: Unreadable, Stage: a.Stage, Item: a.Item, Message: wording.SaidManyLines}
	case len(all) == 0:
		return r.bestReading(a, before)
	}
	// Clipped, so that append copies instead of writing behind the caller's lines.
	before = slices.Clip(before)
	each := make([]Report, len(all))
	for i := range all {
		each[i] = r.markLine(a, &all[i], before)
		if each[i].Verdict == Right {
			before = append(before, Answer{a.Stage, each[i].Item, each[i].Text})
		}
	}
	return Together(each)
}

// markLine judges one line of a text.
func (r *Reference) markLine(a Answer, l *lines.Line, before []Answer) Report {
	a.Text = l.Text
	if body, _, _ := strings.Cut(a.Item, "."); l.Body != "" && l.Body != body && a.Stage != Solve {
		a.Item = l.Body
	}
	report := r.markInUnits(a, before)
	if report.End > 0 {
		report.Pos, report.End = l.Place(report.Pos), l.Place(report.End-1)+1
	}
	report.Stage, report.Text = a.Stage, l.Text
	report.From, report.To = l.Span()
	report.Concludes = l.Concludes
	if report.Verdict == Unread {
		report.Answers = r.wouldAnswer(a)
	}
	return report
}

// markInUnits judges a line in the problem's own units, or in SI where that is what
// its numbers speak.
func (r *Reference) markInUnits(a Answer, before []Answer) Report {
	if r.si == nil {
		return r.bestReading(a, before)
	}
	// A number that is a given in SI and nothing in the problem's units settles it: both would
	// find mistakes, and the cheaper one need not be the one that was meant.
	if r.speaksSI(a) {
		return r.si.bestReading(a, before)
	}
	report := r.bestReading(a, before)
	if report.Verdict == Right || report.Verdict == Unread {
		return report
	}
	if inSI := r.si.bestReading(a, before); better(inSI, report) {
		return inSI
	}
	return report
}

// bestReading judges one line about one item in each of its readings that is worth it, and reports
// the best.
func (r *Reference) bestReading(a Answer, before []Answer) Report {
	text, turned := a.Text, angleWords{}
	if a.Stage == Solve {
		// Before reading: to the grammar, "from y" behind an angle is a product of letters.
		text, turned = cutAngleWords(expr.Clean(a.Text))
	}
	letters := r.solved.LettersFor(a.Item)
	if a.Stage == Solve && asksForMass(r.solved, a.Item) {
		letters = letters.ExpectingMass()
	}
	reading, err := letters.Read(text)
	var own []coinedLetter
	if err == nil && len(before) > 0 && usesUnknownLetter(reading) {
		// Only for a line that needs it: all earlier lines are read again for their letters.
		if own = r.coinedLetters(before, a.Item); len(own) > 0 {
			letters = withCoined(letters, own)
			reading, err = letters.Read(text)
		}
	}
	if err != nil {
		e := err.(*expr.ReadError)
		return Report{Verdict: Unread, Code: Unreadable, Item: a.Item, Pos: e.Pos, End: e.End, Message: wording.SaidUnreadable(e)}
	}
	var best Report
	bestIsStrange := false // a unit in it does not fit
	markingOf := func(i int) *marking {
		line := reading.Lines[i]
		sides := make([]*expr.Node, len(line.Sides))
		for k, side := range line.Sides {
			sides[k] = insertCoined(side, own)
		}
		line.Sides = sides
		m := r.marking(a.Stage, a.Item, line)
		m.before, m.turned, m.text = before, turned, reading.Text
		return m
	}
	for k, i := range worthExplaining(len(reading.Lines), markingOf) {
		line := reading.Lines[i]
		m := markingOf(i)
		report := r.owned(a, line, m.markReading())
		report.Read = letters.Print(line) + turned.words
		report.Answers = m.answers(&report)
		if k == 0 || better(report, best) || bestIsStrange && !hasOtherUnit(m.solved, m.line) && isExplained(report) && best.Verdict == Wrong || line.Named && report.Code == NoEquation && best.Verdict == Wrong {
			report.Message = wording.Join(report.Message, wording.SaidReading(reading, i, report.Verdict == Right))
			best, bestIsStrange = report, hasOtherUnit(m.solved, m.line)
		}
		// A text that can be read as right is right, however unlikely the reading.
		if best.Verdict == Right {
			break
		}
	}
	return best
}

// mostExplained is how many readings of a line are judged with what is wrong with them.
const mostExplained = 3

// worthExplaining lists the readings that are judged in full: the likeliest, and of the others
// one that is right.
func worthExplaining(readings int, markingOf func(i int) *marking) []int {
	var all []int
	for i := range readings {
		if i < mostExplained {
			all = append(all, i)
			continue
		}
		m := markingOf(i)
		// What is wrong with an unlikely reading is never told, and finding it costs most.
		m.brief = true
		if m.markReading().Verdict == Right {
			return append(all, i)
		}
	}
	return all
}

// asksForMass reports whether a number without a name would be a mass.
func asksForMass(s *solved.System, item string) bool {
	if item == "" && len(s.Find) == 1 {
		item = s.Find[0]
	}
	return s.Readers[""].Kind(item) == expr.Mass
}

// speaksSI reports whether a bare number of the line is a known value in SI and
// none in the problem's own units: 3500 where 3.5 kN is given.
func (r *Reference) speaksSI(a Answer) bool {
	reading, err := r.solved.LettersFor(a.Item).Read(a.Text)
	if err != nil {
		return false
	}
	found := false
	for _, side := range reading.Lines[0].Sides {
		side.Walk(func(n *expr.Node) {
			if n.Op == expr.Number && n.Unit == "" && !trial.Structural(n) {
				own, _ := r.trial.Numbers.Literal(n)
				si, _ := r.si.trial.Numbers.Literal(n)
				found = found || own.Givens == 0 && si.Givens != 0
			}
		})
	}
	return found
}
