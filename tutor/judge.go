package tutor

import (
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/lines"
	"example.org/standstill/tutor/record"
)

// LongestText is how many characters of a line are saved; the checker reads far
// fewer, and says so.
const LongestText = 4000

// tidyText is what is saved of a typed text: what acts on a terminal is dropped, and so
// are empty lines and the spaces around a line.
func tidyText(text string) string {
	if runes := []rune(text); len(runes) > LongestText {
		text = string(runes[:LongestText])
	}
	rows := strings.Split(lines.Clean(text), "\n")
	for i, row := range rows {
		rows[i] = strings.TrimSpace(row)
	}
	return strings.Join(slices.DeleteFunc(rows, func(s string) bool { return s == "" }), "\n")
}

// anyOrder is the level from which a student may write the page in any order.
const anyOrder = 3

// placeFor finds the stage and item that a text is for. From the hardest level on it is
// the one that it is about: what is in hand if it is right there, else where it is right,
// else the component that it names.
func (l *Lesson) placeFor(text string, stage checker.Stage, item string) (checker.Stage, string) {
	if l.Problem.Level < anyOrder || l.judgeUnsaved(text, stage, item).Verdict == checker.Right {
		return stage, item
	}
	left, _, found := strings.Cut(text, "=")
	stages := checker.Stages
	if _, states := l.Named(checker.Solve, left); states && found {
		stages = append([]checker.Stage{checker.Solve}, stages...) // T = 20 N may hold in a sum, too
	}
	for _, other := range stages {
		open := l.open(other)
		if other == stage || len(open) == 0 || other == checker.Components && !strings.Contains(text, "=") {
			continue
		}
		if line := l.judgeUnsaved(text, other, open[0]); line.Verdict == checker.Right && len(line.Done) > 0 {
			return other, open[0]
		}
	}
	if stage == checker.Components {
		return stage, item // a component that is named is found there
	}
	if name, ok := l.Named(checker.Components, left); found && ok && slices.Contains(l.open(checker.Components), name) {
		return checker.Components, name
	}
	return stage, item
}

// judgeUnsaved is what a text would come to; nothing is kept of it.
func (l *Lesson) judgeUnsaved(text string, stage checker.Stage, item string) Line {
	return l.judge(record.Entry{Kind: record.Answer, Stage: string(stage), Item: item, Text: text})
}

// judge marks the text of an entry, line by line, and finds out what is done by it. A
// fault of ours leaves a line that could not be judged.
func (g *Page) judge(e record.Entry) Line {
	line := Line{ID: e.ID, Kind: Typed, TypedIn: checker.Stage(e.Stage), AsTyped: e.Text, Time: e.Time}
	at := Place{line.TypedIn, e.Item}
	if fault := Fenced(func() { g.judgeText(&line, at) }); fault != nil {
		line.Fault, line.Done, line.said = fault, nil, nil
		// So that the student can dispute the line and go on.
		line.would = []Place{at}
		line.Report = checker.Report{Verdict: checker.Unread, Code: checker.Unreadable, Item: e.Item, Stage: at.Stage, Text: e.Text, Message: saidFault}
	}
	return line
}

func (g *Page) judgeText(line *Line, at Place) {
	all, ok := g.Ref.Lines(checker.Answer{Stage: at.Stage, Item: at.Item, Text: line.AsTyped})
	// A diagram is one line, whatever stands between its forces.
	if !ok || len(all) == 0 || at.Stage == checker.Diagram {
		all = []lines.Line{lines.Whole(line.AsTyped)}
	}
	open := len(g.open(at.Stage)) > 0
	reports := make([]checker.Report, len(all))
	was := at
	for i := range all {
		answer, report := g.bestPlace(line, was, at, &all[i])
		if i > 0 && report.Verdict == checker.Wrong {
			answer, report = g.orOtherSum(line, answer, report)
		}
		if report.Code.IsElsewhere() {
			g.credit(line, answer, &report)
		}
		report = g.wantingWork(reports[:i], report)
		reports[i] = g.inText(&all[i], answer, report)
		line.take(answer, report)
		was = Place{answer.Stage, answer.Item}
		at = g.following(line, was, open)
	}
	// Before settle: Together marks what two lines of the text answer differently.
	line.Report = checker.Together(reports)
	g.uncredit(line, reports)
	line.settle(reports)
}

// inText gives a report of a line alone its place in the text.
func (g *Page) inText(l *lines.Line, a checker.Answer, report checker.Report) checker.Report {
	if report.End > 0 {
		report.Pos, report.End = l.Place(report.Pos), l.Place(report.End-1)+1
	}
	report.Text, report.Stage = a.Text, a.Stage
	report.From, report.To = l.Span()
	report.Concludes = l.Concludes
	return report
}

// bestPlace judges a line of a text for what is in hand, at, or for what it fits better: an
// open body other than that; what the line before it was for, was, of which it may be a
// conclusion.
func (g *Page) bestPlace(line *Line, was, at Place, l *lines.Line) (checker.Answer, checker.Report) {
	if _, ok := g.Problem.System.Body(l.Body); ok && l.Body != "" && at.Stage != checker.Solve && at.Stage != checker.Components {
		at.Item = l.Body
	}
	answer, report := g.bestItem(line, at, l)
	// Otherwise the line before closed its stage, and this one may still belong to it.
	if report.Verdict == checker.Right || was.Stage == at.Stage {
		return answer, report
	}
	before, again := g.bestItem(line, was, l)
	if again.Verdict == checker.Right || l.Concludes && !report.Code.IsElsewhere() {
		return before, again
	}
	return answer, report
}

// orOtherSum takes a line of a text behind another, which is wrong in one sum, for that
// along the other axis where it is right there, or goes wrong in a force and not in the
// axis: who writes both sums in one text means both.
func (g *Page) orOtherSum(line *Line, a checker.Answer, report checker.Report) (checker.Answer, checker.Report) {
	other := map[checker.Stage]checker.Stage{checker.XSum: checker.YSum, checker.YSum: checker.XSum}[a.Stage]
	if !slices.Contains(g.openBeside(line, other), a.Item) {
		return a, report
	}
	b := a
	b.Stage = other
	there := g.askChecker(b, append(g.before(), line.said...))
	if there.Verdict == checker.Right || there.Verdict == checker.Wrong && report.Code.IsOfAxis() && !there.Code.IsOfAxis() {
		return b, there
	}
	return a, report
}

// bestItem judges a line for a place. One that is right for another open body is taken for
// that one.
func (g *Page) bestItem(line *Line, at Place, l *lines.Line) (checker.Answer, checker.Report) {
	before := append(g.before(), line.said...)
	if at.Stage == checker.Solve {
		at.Item = g.lone(line, l)
	}
	a := checker.Answer{Stage: at.Stage, Item: at.Item, Text: l.Text}
	report := g.askChecker(a, before)
	if at.Stage == checker.Components && report.Item != "" {
		a.Item = report.Item
	}
	if at.Stage == checker.Components || at.Stage == checker.Solve || report.Verdict == checker.Right {
		return a, report
	}
	for _, other := range g.open(at.Stage) {
		b := checker.Answer{Stage: at.Stage, Item: other, Text: l.Text}
		if other == at.Item || slices.Contains(line.Done, Place{at.Stage, other}) {
			continue
		}
		if r := g.askChecker(b, before); r.Verdict == checker.Right {
			return b, r
		}
	}
	return a, report
}

// askChecker is where the page asks the checker.
func (g *Page) askChecker(a checker.Answer, before []checker.Answer) checker.Report {
	if g.judgeWith != nil {
		return g.judgeWith(g.Ref, a, before)
	}
	return g.Ref.Mark(a, before)
}

// lone returns the one unknown that is still open, for a number that stands alone.
func (g *Page) lone(line *Line, l *lines.Line) string {
	open := g.openBeside(line, checker.Solve)
	if len(open) == 1 && !l.IsEquation() {
		return open[0]
	}
	return ""
}

// openBeside lists the items of a stage that neither the page nor the line does.
func (g *Page) openBeside(line *Line, stage checker.Stage) []string {
	return slices.DeleteFunc(g.open(stage), func(name string) bool { return slices.Contains(line.Done, Place{stage, name}) })
}

// following returns what the next line of a text is for: the open item after the one
// that was answered, so that parts without names go down the table; behind the last
// there is none. Where the text itself has done all that was open of a stage, the next
// stage is in hand.
func (g *Page) following(line *Line, was Place, wasOpen bool) Place {
	if stage := line.TypedIn; wasOpen && len(g.openBeside(line, stage)) == 0 {
		for _, stage := range checker.Stages {
			if open := g.openBeside(line, stage); len(open) > 0 {
				return Place{stage, open[0]}
			}
		}
		return Place{Stage: checker.Solve}
	}
	asked, open := g.asked(was.Stage), g.openBeside(line, was.Stage)
	for _, name := range asked[slices.Index(asked, was.Item)+1:] {
		if slices.Contains(open, name) {
			return Place{was.Stage, name}
		}
	}
	return Place{Stage: was.Stage}
}

// credit keeps a true line that was not asked for here for where it belongs: it answers
// what it would answer in a later stage.
func (g *Page) credit(line *Line, a checker.Answer, report *checker.Report) {
	kept := checker.Answer{Stage: checker.Solve, Text: a.Text}
	before := append(g.before(), line.said...)
	for _, stage := range checker.Stages[slices.Index(checker.Stages, a.Stage)+1:] {
		items := g.openBeside(line, stage)
		if stage == checker.Solve {
			items = []string{""}
		}
		for _, item := range items {
			there := checker.Answer{Stage: stage, Item: item, Text: a.Text}
			r := g.askChecker(there, before)
			if r.Code.IsUnitOnly() {
				report.Message += " " + r.Message
			}
			if r.Verdict != checker.Right || g.lacksWorking(nil, r) {
				continue
			}
			kept = there
			if done := doneBy(there, r); len(done) > 0 {
				line.credited = append(line.credited, done...)
				line.Done = append(line.Done, done...)
				report.Message += " " + saidCredited(stage)
				line.said = append(line.said, kept)
				return
			}
		}
	}
	line.said = append(line.said, kept)
}

// uncredit takes back what a true line would have settled in a later stage where another
// line of the text answers the same otherwise.
func (g *Page) uncredit(line *Line, reports []checker.Report) {
	for _, r := range reports {
		if len(line.credited) == 0 || r.Verdict != checker.Wrong || r.Stage == checker.Solve {
			continue
		}
		there := g.askChecker(checker.Answer{Stage: checker.Solve, Text: r.Text}, g.before())
		line.credited = slices.DeleteFunc(line.credited, func(at Place) bool {
			return at.Stage == checker.Solve && there.Verdict == checker.Wrong && slices.Contains(there.Answers, at.Item)
		})
	}
}

// take adds what one line of a text does and says, for the lines behind it.
func (l *Line) take(a checker.Answer, report checker.Report) {
	if report.Verdict == checker.Right {
		l.Done = append(l.Done, doneBy(a, report)...)
		l.said = append(l.said, a)
	}
}

// settle finds out what is done in the end, and what would be if the line were disputed.
func (l *Line) settle(reports []checker.Report) {
	l.Done = slices.Clone(l.credited)
	for _, r := range reports {
		if r.Verdict == checker.Right {
			l.Done = append(l.Done, doneBy(checker.Answer{Stage: r.Stage, Item: r.Item}, r)...)
			continue
		}
		for _, item := range r.Answers {
			l.would = append(l.would, Place{r.Stage, item})
		}
	}
}

// doneBy lists what a right answer does.
func doneBy(a checker.Answer, report checker.Report) (done []Place) {
	items := report.Answers
	if a.Stage == checker.Solve {
		items = report.Settles
	}
	for _, item := range items {
		if !slices.Contains(report.Void, item) {
			done = append(done, Place{a.Stage, item})
		}
	}
	return done
}

// Named finds the item of a stage that a text names and does no more.
func (g *Page) Named(stage checker.Stage, text string) (item string, ok bool) {
	text = strings.TrimSpace(text)
	if text == "" || len(text) > 40 {
		return "", false
	}
	asked := g.asked(stage)
	if slices.Contains(asked, text) {
		return text, true
	}
	if stage != checker.Components && stage != checker.Solve {
		return "", false
	}
	// A component is read among the letters of its own body.
	read, letter := "", ""
	for i, name := range asked {
		body, _, dotted := strings.Cut(name, ".")
		if !dotted {
			body = ""
		}
		if i == 0 || body != read {
			read = body
			letter, _ = g.Ref.LetterOf(text, name)
		}
		if letter == name {
			return name, true
		}
	}
	return "", false
}
