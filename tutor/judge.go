package tutor

import (
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor/record"
)

// longestText is how many characters of a line are kept; the checker reads far
// fewer, and says so.
const longestText = 4000

// tidyText drops what acts on a terminal; lines stay lines.
func tidyText(text string) string {
	if runes := []rune(text); len(runes) > longestText {
		text = string(runes[:longestText])
	}
	lines := strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' })
	for i, line := range lines {
		lines[i] = strings.TrimSpace(expr.Clean(line))
	}
	return strings.Join(slices.DeleteFunc(lines, func(s string) bool { return s == "" }), "\n")
}

// judge marks the text of an entry and finds out what is done by it.
func (g *Page) judge(e record.Entry) Line {
	stage := checker.Stage(e.Stage)
	line := Line{ID: e.ID, Kind: Typed, Stage: stage, Text: e.Text, Time: e.Time}
	var reports []checker.Report
	item := e.Item
	line.pieces = g.parts(stage, e.Text)
	for _, part := range line.pieces {
		a, report := g.mark(stage, item, part, &line)
		report = placed(report, part, e.Text)
		reports = append(reports, report)
		line.take(g, a, report)
		item = g.following(stage, report.Item, item, &line)
	}
	line.Report = together(reports)
	return line
}

// placed turns positions in a part into positions in the whole text.
func placed(report checker.Report, part, text string) checker.Report {
	if at := strings.Index(text, part); at > 0 && report.End > 0 {
		before := utf8.RuneCountInString(text[:at])
		report.Pos += before
		report.End += before
	}
	return report
}

// take adds what one part of a line says.
func (l *Line) take(g *Page, a checker.Answer, report checker.Report) {
	l.tried(g, a, report)
	switch {
	case report.Verdict == checker.Right && l.Stage == checker.Solve:
		l.Done = append(l.Done, report.Settles...)
	case report.Verdict == checker.Right:
		l.Done = append(l.Done, a.Item)
	case l.Stage == checker.Solve:
		if name, ok := g.stated(a.Text); ok {
			l.would = append(l.would, name)
		} else if a.Item != "" {
			l.would = append(l.would, a.Item)
		}
	default:
		l.would = append(l.would, a.Item)
	}
	if report.Verdict == checker.Right || report.Code == checker.TrueNotAsked {
		l.parts = append(l.parts, a)
	}
}

// mark judges one part. A part that is right for another open body is taken for
// that one.
func (g *Page) mark(stage checker.Stage, item, part string, line *Line) (checker.Answer, checker.Report) {
	before := append(g.before(), line.parts...)
	if stage == checker.Solve {
		item = g.lone(part, line)
	}
	a := checker.Answer{Stage: stage, Item: item, Text: part}
	report := g.Ref.Mark(a, before)
	if stage == checker.Components && report.Item != "" {
		a.Item = report.Item
	}
	if stage == checker.Components || stage == checker.Solve || report.Verdict == checker.Right {
		return a, report
	}
	for _, other := range g.open(stage) {
		b := checker.Answer{Stage: stage, Item: other, Text: part}
		if r := g.Ref.Mark(b, before); other != item && !slices.Contains(line.Done, other) && r.Verdict == checker.Right {
			return b, r
		}
	}
	return a, report
}

// lone returns the one unknown that is still open, for a number that stands alone.
func (g *Page) lone(part string, line *Line) string {
	open := slices.DeleteFunc(g.open(checker.Solve), func(n string) bool { return slices.Contains(line.Done, n) })
	if len(open) == 1 && !strings.ContainsAny(part, "=≈") {
		return open[0]
	}
	return ""
}

// following returns the open item after one that a part was taken for, so that
// parts without names go down the table. Behind the last there is none.
func (g *Page) following(stage checker.Stage, taken, item string, line *Line) string {
	if taken != "" {
		item = taken
	}
	asked := g.asked(stage)
	for _, name := range asked[slices.Index(asked, item)+1:] {
		if slices.Contains(g.open(stage), name) && !slices.Contains(line.Done, name) {
			return name
		}
	}
	return ""
}

// separators stand between several lines in one text, as the checker has them.
var separators = regexp.MustCompile(`;|\n|\s+and\s+|,\s+`)

// parts takes a text with several items apart. A diagram is one part.
func (g *Page) parts(stage checker.Stage, text string) []string {
	if stage == checker.Diagram {
		return []string{text}
	}
	parts := slices.DeleteFunc(separators.Split(text, -1), func(s string) bool { return strings.TrimSpace(s) == "" })
	switch {
	case len(parts) == 0:
		return []string{text}
	case stage == checker.Components:
		return g.unchained(parts)
	}
	return parts
}

// unchained turns "T1x = wx = 0" into one part for each component.
func (g *Page) unchained(parts []string) []string {
	var out []string
	for _, part := range parts {
		sides := strings.Split(part, "=")
		last := len(sides) - 1
		names := 0
		for _, side := range sides[:last] {
			if _, ok := g.Named(checker.Components, side); ok {
				names++
			}
		}
		if last < 2 || names < last {
			out = append(out, part)
			continue
		}
		for _, side := range sides[:last] {
			out = append(out, strings.TrimSpace(side)+" ="+sides[last])
		}
	}
	return out
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

// stated finds the unknown that a line "X = …" states.
func (g *Page) stated(text string) (string, bool) {
	left, _, found := strings.Cut(text, "=")
	if !found {
		return "", false
	}
	return g.Named(checker.Solve, left)
}

// together makes one report of several: right if all are, else what is said of
// the first that is not.
func together(reports []checker.Report) checker.Report {
	if len(reports) == 1 {
		return reports[0]
	}
	all := checker.Report{Verdict: checker.Right}
	var read []string
	for _, one := range reports {
		if one.Read != "" {
			read = append(read, one.Read)
		}
		if all.Verdict == checker.Right && one.Verdict != checker.Right {
			all = one
		}
	}
	all.Settles = nil
	for _, one := range reports {
		all.Settles = append(all.Settles, one.Settles...)
	}
	all.Read = strings.Join(read, "; ")
	all.Each = reports
	return all
}
